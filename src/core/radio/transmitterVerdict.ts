/** One transmitter inside of a closed carbon shell: what is left of it, and how sure that is. */
import {
  magneticLossDb,
  nearFieldMm,
  openWindowMm,
  planeWaveLossDb,
  sheetOhm,
  skinDepthMm,
  slotLossDb,
  wavelengthMm,
  type Sheet,
} from './shielding';

export interface Transmitter {
  readonly name: string;
  readonly frequencyMHz: number;
  /** A coil works by its magnetic near field, an antenna by the wave that leaves it. */
  readonly works: 'coil' | 'antenna';
  /** Longest way across the window or slot that it looks through; 0 for none. */
  readonly windowMm: number;
}

/** Classes of shielding: 10 dB or less is poor, 30 dB or more is above normal need (Proceedings 63 (2020) 23, abstract). */
export const shieldingClasses = { poorDb: 10, goodDb: 30 } as const;

export interface TransmitterFinding {
  readonly name: string;
  readonly field: 'near' | 'far';
  readonly wavelengthMm: number;
  readonly nearFieldMm: number;
  readonly skinDepthMm: number;
  readonly sheetOhm: number;
  /** Of the shell without the window, at most. */
  readonly closedLossDb: number;
  /** With the window: no more than it lets by. */
  readonly lossDb: number;
  readonly outcome: 'gets out' | 'weakened' | 'blocked';
  /** Window across that lets it out freely; null where the shell itself does. */
  readonly proposedWindowMm: number | null;
}

/** Below this a small device is in its own near field everywhere, and coils are used. */
const mostCoilMHz = 30;

/** @param radiusMm of a ball as wide as the shell is narrow, for the slow magnetic field */
export function transmitterFinding(
  sheet: Sheet,
  radiusMm: number,
  { name, frequencyMHz, works, windowMm }: Transmitter,
): TransmitterFinding {
  const hz = 1e6 * frequencyMHz;
  const isNear = works === 'coil' && frequencyMHz <= mostCoilMHz;
  const closedLossDb = isNear ? magneticLossDb(sheet, hz, radiusMm) : planeWaveLossDb(sheet, hz);
  const lossDb = windowMm > 0 ? Math.min(closedLossDb, slotLossDb(windowMm, hz)) : closedLossDb;
  const outcome =
    lossDb <= shieldingClasses.poorDb
      ? 'gets out'
      : lossDb < shieldingClasses.goodDb
        ? 'weakened'
        : 'blocked';
  return {
    name,
    field: isNear ? 'near' : 'far',
    wavelengthMm: wavelengthMm(hz),
    nearFieldMm: nearFieldMm(hz),
    skinDepthMm: skinDepthMm(sheet.conductivitySPerM, hz),
    sheetOhm: sheetOhm(sheet),
    closedLossDb,
    lossDb,
    outcome,
    proposedWindowMm: outcome === 'gets out' ? null : isNear ? 2 * radiusMm : openWindowMm(hz),
  };
}
