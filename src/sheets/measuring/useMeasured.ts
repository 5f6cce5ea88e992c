import { useEffect, useLayoutEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { useStore } from 'zustand';
import { createBench } from '../../jobs/client';
import type { AnswerShelf } from '../../pipeline/answerShelf';
import { contextOf } from '../../pipeline/evaluate';
import type { MoldReply } from '../../pipeline/told';
import type { StepContext } from '../../steps/shared/context';
import type { DeskProject, DeskState } from './deskState';
import { MeasuringDesk } from './measuringDesk';

export interface Measuring extends DeskState {
  readonly desk: MeasuringDesk;
  /** What the step reports are given of the answers. */
  readonly found: Omit<StepContext, 'inputs' | 'pattern'>;
  readonly mold: MoldReply | null;
  /** Nothing has been heard of the worker for long, though it has work. */
  readonly isSilent: boolean;
}

/**
 * Keeps the open project worked out while the page is mounted. Mount it with the project's id as key: another
 * project gets a worker of its own.
 */
export function useMeasured(project: DeskProject, shelf: AnswerShelf): Measuring {
  // A client starts its worker with the first job, so one that React throws away has cost nothing.
  const [desk] = useState(() => new MeasuringDesk(createBench(), shelf));
  const state = useStore(desk.store);
  const isSilent = useSyncExternalStore(desk.client.onSilence, desk.client.isSilent);
  const { pattern, inputs, thermocouple, packedMesh, setMeshAside } = project;
  // Before the page is painted: answers to an older question never stand beside the new inputs.
  useLayoutEffect(
    () => desk.follow({ pattern, inputs, thermocouple, packedMesh, setMeshAside }),
    [desk, pattern, inputs, thermocouple, packedMesh, setMeshAside],
  );
  useEffect(() => () => desk.dispose(), [desk]);
  const found = useMemo(() => contextOf(state.answers), [state.answers]);
  return { ...state, desk, found, mold: state.answers.halves?.told ?? null, isSilent };
}
