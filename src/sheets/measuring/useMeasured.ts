import { useEffect, useLayoutEffect, useState, useSyncExternalStore } from 'react';
import { useStore } from 'zustand';
import { createBench } from '../../jobs/client';
import { closingStateInPieces } from '../../steps/closedMold/state';
import type { MeasureCache } from './measureCache';
import type { DeskProject, DeskState } from './deskState';
import { createMeasuringDesk, type MeasuringDesk } from './measuringDesk';

export interface Measuring extends DeskState {
  readonly desk: MeasuringDesk;
  /** Nothing has been heard of the worker for long, though it has work. */
  readonly isSilent: boolean;
}

/**
 * Keeps the open project measured while the page is mounted. Mount it with the project's id as key: another
 * project gets a worker of its own.
 */
export function useMeasured(project: DeskProject, cache: MeasureCache): Measuring {
  // A client starts its worker with the first job, so one that React throws away has cost nothing.
  const [desk] = useState(() => createMeasuringDesk(createBench(), cache, closingStateInPieces));
  const state = useStore(desk.store);
  const isSilent = useSyncExternalStore(desk.client.onSilence, desk.client.isSilent);
  const { pattern, inputs, packedMesh, setMeshAside } = project;
  // Before the page is painted: answers to an older question never stand beside the new inputs.
  useLayoutEffect(
    () => desk.follow({ pattern, inputs, packedMesh, setMeshAside }),
    [desk, pattern, inputs, packedMesh, setMeshAside],
  );
  useEffect(() => () => desk.dispose(), [desk]);
  return { ...state, desk, isSilent };
}
