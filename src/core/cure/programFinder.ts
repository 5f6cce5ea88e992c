/**
 * Programs that really cure this mold, side by side: low and long ones that keep the stone under its dehydration beside
 * those that go to 120 °C. For each, the dwell that the coldest place needs over the whole band, and what it costs the stone.
 */
import { dehydrationTreatments, type DehydrationTreatment } from './dehydration';
import { isExtrapolated } from './dose';
import { usualHeatOptions, type HeatCase } from './heatCase';
import { laminateAnswers } from './laminateAnswers';
import { moldAfter, type MoldAfter } from './moldAfter';
import { neededDwell } from './neededDwell';
import type { OvenBehavior } from './ovenAir';
import { programOnDial, type OvenProgram, type OvenStage } from './ovenProgram';

export interface ProgramTry {
  readonly treatment: DehydrationTreatment;
  /** Of the last stage; null: not within a day and a half. */
  readonly dwellS: number | null;
  readonly totalS: number | null;
  readonly laminatePeakC: number;
  readonly stonePeakC: number;
  readonly crystalWaterLostPercent: number;
}

export interface ProgramFound {
  readonly name: string;
  readonly mold: MoldAfter;
  /** With the longest dwell that the band asks for, rounded up to a quarter of an hour; null when one of it never cures. */
  readonly program: OvenProgram | null;
  readonly totalS: number | null;
  /** Goes to a temperature outside the supplier's own cures: its dose is extrapolated. */
  readonly extrapolated: boolean;
  /** Longest over shortest total time of the band; 1 when dehydration does not matter. */
  readonly spread: number | null;
  readonly tries: readonly ProgramTry[];
}

/** Stages before the last one, and the temperature of the last one whose dwell is sought. */
export interface ProgramCandidate {
  readonly name: string;
  readonly before: readonly OvenStage[];
  readonly lastC: number;
}

const warmThrough: OvenStage = { targetC: 70, rampKPerMin: null, dwellS: 10_800 };

/** Holds from 65 to 95 °C, and 70 °C for 3 h before 100 to 120 °C. */
const usualCandidates: readonly ProgramCandidate[] = [
  ...[65, 70, 75, 80, 85, 90, 95].map((lastC) => ({ name: `hold at ${lastC} °C`, before: [], lastC })),
  ...[100, 110, 120].map((lastC) => ({
    name: `70 °C for 3 h, then ${lastC} °C`,
    before: [warmThrough],
    lastC,
  })),
];

const quarterHourS = 900;
/** Coarse voxels and long steps are enough to rank programs. */
const searchOptions = { ...usualHeatOptions, longestStepS: 300, toleranceK: 1, recordEveryS: 600 };

/**
 * Candidates that go over `mostC` are left out. First those that keep the stone, the shortest of them before the others (that
 * is 80, then 75 °C); then by the stone they cost and by time; those that never cure last.
 * @param one its voxels should be coarse (about 4 mm): three runs per candidate
 * @throws Problem `cure.noSupplierPoint`
 */
export function findPrograms(
  one: HeatCase,
  frame: Pick<OvenProgram, 'startC' | 'coolKPerMin' | 'roomC'>,
  oven: OvenBehavior,
  candidates: readonly ProgramCandidate[] = usualCandidates,
  mostC = 130,
  onProgress?: (share: number) => void,
): readonly ProgramFound[] {
  const allowed = candidates.filter(({ lastC, before }) =>
    [lastC, ...before.map(({ targetC }) => targetC)].every((c) => c <= mostC),
  );
  const found = allowed.map((candidate, i) => {
    const program = programOf(candidate, frame, quarterHourS);
    const tries = dehydrationTreatments.map((treatment, j): ProgramTry => {
      const treated: HeatCase = { ...one, dehydration: { ...one.dehydration, treatment } };
      const { dwellS, totalS, run } = neededDwell(treated, program, oven, searchOptions);
      const answers = laminateAnswers(treated, run, programOnDial(program).dwells);
      onProgress?.((i + (j + 1) / dehydrationTreatments.length) / allowed.length);
      return {
        treatment,
        dwellS,
        totalS,
        laminatePeakC: answers.hottest.peakC,
        stonePeakC: answers.stonePeakC,
        crystalWaterLostPercent: answers.crystalWaterLostPercent,
      };
    });
    return foundFrom(candidate, frame, tries, one);
  });
  const cost = ({ mold, tries }: ProgramFound) =>
    mold === 'kept' ? 0 : 1 + Math.round(worstLossPercent(tries));
  return found.sort((a, b) => {
    if ((a.totalS === null) !== (b.totalS === null)) return a.totalS === null ? 1 : -1;
    return cost(a) - cost(b) || (a.totalS ?? 0) - (b.totalS ?? 0);
  });
}

const worstLossPercent = (tries: readonly ProgramTry[]) =>
  Math.max(...tries.map((each) => each.crystalWaterLostPercent));

function programOf(
  { before, lastC }: ProgramCandidate,
  frame: Pick<OvenProgram, 'startC' | 'coolKPerMin' | 'roomC'>,
  dwellS: number,
): OvenProgram {
  return { ...frame, stages: [...before, { targetC: lastC, rampKPerMin: null, dwellS }] };
}

function foundFrom(
  candidate: ProgramCandidate,
  frame: Pick<OvenProgram, 'startC' | 'coolKPerMin' | 'roomC'>,
  tries: readonly ProgramTry[],
  one: HeatCase,
): ProgramFound {
  const dwells = tries.map(({ dwellS }) => dwellS);
  const totals = tries.flatMap(({ totalS }) => (totalS === null ? [] : [totalS]));
  const curesAlways = dwells.every((dwellS) => dwellS !== null);
  const dwellS = curesAlways ? quarterHourS * Math.ceil(Math.max(...dwells) / quarterHourS) : null;
  const program = dwellS === null ? null : programOf(candidate, frame, dwellS);
  return {
    name: candidate.name,
    mold: moldAfter(
      Math.max(candidate.lastC, ...candidate.before.map(({ targetC }) => targetC)),
      worstLossPercent(tries),
    ),
    program,
    totalS: program === null ? null : programOnDial(program).heatedS,
    extrapolated: one.supplier !== null && isExtrapolated(one.supplier, candidate.lastC),
    spread: curesAlways ? Math.max(...totals) / Math.min(...totals) : null,
    tries,
  };
}
