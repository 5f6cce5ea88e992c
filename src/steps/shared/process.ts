/**
 * The one place that reads the oven program, the room and the storage humidity, and says what follows from them: where the
 * resin gels, how long it can flow until then, from where warp and sizes are counted, and how hot the oven gets. An entry
 * of the maker's own goes before what follows, and says that it differs.
 *
 * Where it gels: the gel time of the data sheet, counted along the dial (`core/cure/gelPoint`). The laminate in the stone
 * comes later than the dial; that moves the moment, hardly the temperature, as long as the dwell is longer than the lag.
 */
import { supplierCure, requiredS, type SupplierCure } from '../../core/cure/dose';
import {
  gelAlong,
  gelTimes,
  tellsGelEnergy,
  usualGelEnergiesJPerMol,
  usualGelEnergyJPerMol,
  type GelPoint,
} from '../../core/cure/gelPoint';
import { gentleKPerMin, stagesOnDial, type OvenProgram } from '../../core/cure/ovenProgram';
import { Problem } from '../../core/problem';
import { formatNumber } from '../../core/units/formatNumber';
import type { ProjectInputs } from '../inputs/project';

/** A temperature that follows from another fact unless the maker has entered one. */
export interface Followed {
  readonly valueC: number;
  /** What it is without an entry. */
  readonly followsC: number;
  /** Something was entered. */
  readonly isOwn: boolean;
  /** Where it is from, to be read after the number. */
  readonly how: string;
}

export interface Process {
  readonly roomC: number;
  /** Relative humidity of the air that the open roll lay in. */
  readonly storageHumidityPercent: number;
  /** Of mold and oven, when the program starts. */
  readonly start: Followed;
  /** Hottest stage on the dial; null without a stage. */
  readonly hottestC: number | null;
  /** Hottest that the oven's air gets, what it runs over included; null without a stage. */
  readonly hottestAirC: number | null;
  /** The laminate takes the mold's size, and no void opens any more. */
  readonly gel: Followed;
  /** From the start, on the dial; null where the program ends before. */
  readonly gelAfterS: number | null;
  /** Gels at the usual energies' ends; null where the maker or the supplier's cures know better, or the program ends before. */
  readonly gelBand: readonly [GelPoint, GelPoint] | null;
  /** How long the resin flows as it does at that temperature: its gel time there. */
  readonly flowS: number;
  /** How the gel follows from the program, a sentence. */
  readonly gelWorking: string;
  /**
   * The cured laminate lies as molded there; warp is counted from it. What a gelled laminate gains on the way to a hotter
   * stage it gives back on cooling, so that is where it gelled, as far as it is elastic.
   */
  readonly stressFree: Followed;
  /** As far as it gives way while hotter: the hottest stage; the same as `stressFree` where that was entered. */
  readonly stressFreeFarC: number;
  /** The finished part is looked at. */
  readonly inUse: Followed;
  /** A coat on one face has set. */
  readonly coatSet: Followed;
}

const celsius = (value: number) => `${formatNumber(value, 0)} °C`;

/** "1:41". */
function clock(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}

/** `from`: what it follows, e.g. "the room"; `how`: the same in more words. */
function followed(entry: number | null, followsC: number, from: string, how = `from ${from}`): Followed {
  if (entry === null) return { valueC: followsC, followsC, isOwn: false, how };
  const differs = entry === followsC ? `as ${from}` : `differs from ${from}, ${celsius(followsC)}`;
  return { valueC: entry, followsC, isOwn: true, how: `entered; ${differs}` };
}

const startOf = ({ cure, mold }: Pick<ProjectInputs, 'cure' | 'mold'>): Followed =>
  followed(cure.startC, mold.roomC, 'the room');

export function programOf(inputs: Pick<ProjectInputs, 'cure' | 'mold'>): OvenProgram {
  return {
    startC: startOf(inputs).valueC,
    stages: inputs.cure.stages.map(({ targetC, rampKPerMin, dwellHours }) => ({
      targetC,
      rampKPerMin,
      dwellS: 3600 * dwellHours,
    })),
    coolKPerMin: gentleKPerMin,
    roomC: inputs.mold.roomC,
  };
}

export function processOf(inputs: ProjectInputs): Process {
  const { cure, mold, plies, closing } = inputs;
  const { roomC } = mold;
  const hottestC = cure.stages.length === 0 ? null : Math.max(...cure.stages.map(({ targetC }) => targetC));
  const sheet = { minutes: closing.timeToGelMin, temperatureC: closing.gelTimeAtC };
  const supplier = supplierOf(inputs);
  const times = gelTimes(sheet, supplier);
  const dial = hottestC === null ? null : stagesOnDial(programOf(inputs)).setPoint;
  const found = dial && gelAlong(times, dial);
  const ends = usualGelEnergiesJPerMol.map((energy) => dial && gelAlong(gelTimes(sheet, null, energy), dial));
  const gel = followed(
    cure.gelC,
    found?.temperatureC ?? hottestC ?? sheet.temperatureC,
    'the oven program',
    hottestC === null ? 'the gel time’s own, for want of an oven program' : gelHow(found),
  );
  const energy = tellsGelEnergy(supplier)
    ? 'falling with heat as the supplier’s cures do'
    : `falling with heat by ${formatNumber(usualGelEnergyJPerMol / 1000, 0)} kJ/mol (from memory)`;
  const stressFree = followed(plies.stressFreeC, gel.valueC, 'where it gels', 'where it gels');
  return {
    roomC,
    storageHumidityPercent: closing.humidityPercent,
    start: startOf(inputs),
    hottestC,
    hottestAirC: hottestC === null ? null : hottestC + cure.overshootK,
    gel,
    gelAfterS: found?.timeS ?? null,
    gelBand: ends[0] && ends[1] && !gel.isOwn && !tellsGelEnergy(supplier) ? [ends[0], ends[1]] : null,
    flowS: requiredS(times, gel.valueC),
    gelWorking: `Gel time ${formatNumber(sheet.minutes, 0)} min at ${celsius(sheet.temperatureC)}, ${energy}; ∫ dt / t(T) along the dial reaches 1. The laminate comes later than the dial by its lag.`,
    stressFree,
    stressFreeFarC: stressFree.isOwn ? stressFree.valueC : Math.max(gel.valueC, hottestC ?? gel.valueC),
    inUse: followed(plies.roomTemperatureC, roomC, 'the room'),
    coatSet: followed(plies.coatSetC, roomC, 'the room'),
  };
}

function gelHow(found: GelPoint | null): string {
  return found === null
    ? 'the hottest stage, for the program ends before it gels'
    : `from the oven program, ${clock(found.timeS)} h after its start`;
}

/** null without cures, and for cures that contradict each other, which the cure step says. */
function supplierOf({ cure }: Pick<ProjectInputs, 'cure'>): SupplierCure | null {
  if (cure.supplierCures.length === 0) return null;
  try {
    return supplierCure(cure.supplierCures);
  } catch (error) {
    if (error instanceof Problem) return null;
    throw error;
  }
}
