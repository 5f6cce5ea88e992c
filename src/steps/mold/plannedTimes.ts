/** The times that the bench waits for, in the order of the work. */
import type { ProjectInputs } from '../inputs/project';
import { stoneInUse } from '../stone/stoneInUse';

export interface PlannedTime {
  readonly id: string;
  readonly label: string;
  readonly lengthS: number;
}

export function plannedTimes({ mold }: Pick<ProjectInputs, 'mold'>): readonly PlannedTime[] {
  const stone = stoneInUse(mold);
  const inMinutes: readonly (readonly [id: string, label: string, minutes: number])[] = [
    ['mixing', 'Mixing', mold.mixingMin],
    ['working', 'Working time', stone.workingMin.value],
    ['initialSet', 'Initial set', stone.initialSetMin.value],
    ['finalSet', 'Final set', stone.finalSetMin.value],
    ['demold', 'In the box', stone.demoldMin.value],
    ['sealer', 'Sealer, one coat', mold.sealerWaitMin],
    ['release', 'Release, one coat', mold.releaseWaitMin],
  ];
  return inMinutes
    .filter(([, , minutes]) => minutes > 0)
    .map(([id, label, minutes]) => ({ id, label, lengthS: Math.round(minutes * 60) }));
}
