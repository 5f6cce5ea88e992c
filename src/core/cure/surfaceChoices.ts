/** How heat gets from the oven into the mold. */
import { Problem } from '../problem';

/** Outside faces by where they look: z is along the pull. */
export type FaceSide = 'low z' | 'high z' | 'sides';

export interface SurfaceChoices {
  /** Air film by convection alone, W/(m² K). */
  readonly filmWPerM2K: number;
  /** For radiation against walls as hot as the air; 0 leaves it out. */
  readonly emissivity: number;
  /** The face that stands on a tray; null: on a rack, air all round. */
  readonly trayUnder: 'low z' | 'high z' | null;
  /** Conductance into the tray, W/(m² K), the tray being as hot as the air; in place of film and radiation. */
  readonly trayWPerM2K: number;
  /** Faces that let no water out: sealed, taped, or against the box. A face on a tray lets none out either. */
  readonly sealed: readonly FaceSide[];
  /** Vapor in the oven's air, Pa; 1200 is a vented oven in a room at 20 °C and half humidity. */
  readonly airVaporPa: number;
}

/** Air films: still 5 to 12, small fan oven 10 to 30 W/(m² K) (`airFilms` in core/sources). */
export const airFilmsWPerM2K = { still: 8, fan: 18 } as const;

/** Air at rest in a gap: its conductivity over the gap, W/(m K). */
const airConductivityWPerMK = 0.029;
/** Solid contact never conducts better than this with dry stone on sheet metal (assumption). */
const bestContactWPerM2K = 300;

/**
 * Conductance from the oven through a tray into the mold: the film under the tray in series with the contact or the air
 * gap over it. The tray's own metal and its heat are left out.
 */
export function trayConductance(gapMm: number, filmUnderWPerM2K: number): number {
  const over =
    gapMm > 0 ? Math.min(bestContactWPerM2K, airConductivityWPerMK / (gapMm / 1000)) : bestContactWPerM2K;
  return 1 / (1 / over + 1 / filmUnderWPerM2K);
}

export const surfaceDefaults: SurfaceChoices = {
  filmWPerM2K: airFilmsWPerM2K.fan,
  emissivity: 0.9,
  trayUnder: null,
  trayWPerM2K: trayConductance(0.2, airFilmsWPerM2K.fan + 8),
  sealed: [],
  airVaporPa: 1200,
};

const stefanBoltzmann = 5.670374e-8;

/** h_r = ε σ (T1² + T2²)(T1 + T2), W/(m² K), from kelvins. */
export function radiationWPerM2K(emissivity: number, oneK: number, otherK: number): number {
  return emissivity * stefanBoltzmann * (oneK * oneK + otherK * otherK) * (oneK + otherK);
}

/** @throws Problem `cure.surface` */
export function checkSurface({ filmWPerM2K, emissivity, trayWPerM2K, airVaporPa }: SurfaceChoices): void {
  const fits = filmWPerM2K > 0 && emissivity >= 0 && emissivity <= 1 && trayWPerM2K > 0;
  if (!fits || !Number.isFinite(filmWPerM2K) || !(airVaporPa >= 0 && airVaporPa < 50_000))
    throw new Problem(
      'cure.surface',
      'The air film and the tray contact must be above zero, the emissivity from 0 to 1, and the vapor in the air below half an atmosphere.',
    );
}
