import { useMemo } from 'react';
import { Plane, Vector3 } from 'three';
import type { SectionPlane, Vec3 } from '../../core/mesh/types';
import type { DrawnHeat } from '../heatSheet';
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

/** Clipping planes that keep the made pattern up to the split, and the part past it; both null without a split. */
export function useSplit(split: SectionPlane | null): {
  readonly made: Plane[] | null;
  readonly part: Plane[] | null;
} {
  return useMemo(() => {
    if (split === null) return { made: null, part: null };
    const past = new Plane(new Vector3(...axisVector[split.axis]), -split.atMm);
    return { made: [past.clone().negate()], part: [past] };
  }, [split]);
}

/** The same for the cut through the mold in the oven, which may stand at any angle to the part's axes. */
export function useKeptByHeat(heat: DrawnHeat | null, view: OrbitView): Plane[] | null {
  const normal = heat?.normal ?? null;
  const throughMm = heat?.throughMm ?? null;
  const toEye = viewAxes(view).toEye;
  const faces = normal !== null && dot(normal, toEye) >= 0;
  return useMemo(() => {
    if (normal === null || throughMm === null) return null;
    const away = new Vector3(...normal).multiplyScalar(faces ? -1 : 1);
    return [new Plane(away, -away.dot(new Vector3(...throughMm)))];
  }, [normal, throughMm, faces]);
}

const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
