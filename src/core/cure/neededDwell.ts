/** The dwell that really cures: the last stage held until the coldest place has the supplier's minimum. */
import { Problem } from '../problem';
import type { HeatCase, HeatOptions } from './heatCase';
import { runHeat, type HeatRun } from './heatRun';
import { ovenAirCurve, type OvenBehavior } from './ovenAir';
import { programOnDial, type OvenProgram } from './ovenProgram';

export interface NeededDwell {
  /** Of the last stage, from when the dial reaches it; 0 when it is met before. null: not within the longest. */
  readonly dwellS: number | null;
  /** From the start to the end of that dwell. */
  readonly totalS: number | null;
  readonly run: HeatRun;
}

/** Nobody keeps an oven on for longer, s. */
const longestDwellS = 36 * 3600;

/** The same program with another last dwell. */
export function withLastDwell(program: OvenProgram, dwellS: number): OvenProgram {
  const last = program.stages.length - 1;
  return {
    ...program,
    stages: program.stages.map((stage, i) => (i === last ? { ...stage, dwellS } : stage)),
  };
}

/**
 * One run with the last stage held on and stopped when the dose is met; what the laminate would still gain while cooling
 * is left as a reserve. The case's own air is replaced.
 * @throws Problem `cure.noSupplierPoint` without a supplier's cure, and those of `runHeat`
 */
export function neededDwell(
  one: HeatCase,
  program: OvenProgram,
  oven: OvenBehavior,
  options: Omit<HeatOptions, 'untilS' | 'stopWhen'>,
  doseWanted = 1,
): NeededDwell {
  if (one.supplier === null)
    throw new Problem(
      'cure.noSupplierPoint',
      "Enter the supplier's cures first: without them no dwell can be called enough.",
    );
  const held = withLastDwell(program, longestDwellS);
  const { dwells, heatedS } = programOnDial(held);
  const run = runHeat(
    { ...one, air: ovenAirCurve(held, oven, heatedS) },
    { ...options, untilS: heatedS, stopWhen: ({ coldestDose }) => coldestDose >= doseWanted },
  );
  if (!run.stoppedEarly) return { dwellS: null, totalS: null, run };
  const fromS = dwells.at(-1)!.fromS;
  return { dwellS: Math.max(0, run.endS - fromS), totalS: run.endS, run };
}
