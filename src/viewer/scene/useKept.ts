import { useMemo } from 'react';
import { Plane, Vector3 } from 'three';
import type { SectionPlane } from '../../core/mesh/types';
import { viewAxes, type OrbitView } from '../orbitView';
import { axisNumber, axisVector } from '../sectionFrame';

/** Clipping planes that keep what lies behind a cut as the eye sees it; null without a cut. */
export function useKept(plane: SectionPlane | null, view: OrbitView): Plane[] | null {
  const side = plane === null ? 0 : viewAxes(view).toEye[axisNumber[plane.axis]] >= 0 ? 1 : -1;
  return useMemo(
    () =>
      plane === null
        ? null
        : [new Plane(new Vector3(...axisVector[plane.axis]).multiplyScalar(-side), side * plane.atMm)],
    [plane, side],
  );
}
