/** Line pieces that show a cut in the part: 6 numbers each, mm. */
import type { Section, SectionPlane } from '../../core/mesh/types';
import type { PartBox } from '../orbitView';
import { axisNumber, planeAxes, planePoint } from '../sectionFrame';

/** The sheet of the cut as a frame a little larger than the part. */
export function sheetFrame(plane: SectionPlane, { boxMinMm, boxMaxMm }: PartBox): Float32Array {
  const [across, up] = planeAxes[plane.axis];
  const range = (name: 'x' | 'y' | 'z') => {
    const axis = axisNumber[name];
    const margin = 0.06 * (boxMaxMm[axis] - boxMinMm[axis]) + 0.5;
    return [boxMinMm[axis] - margin, boxMaxMm[axis] + margin] as const;
  };
  const [left, right] = range(across);
  const [low, high] = range(up);
  const loop = [
    planePoint(plane, left, low),
    planePoint(plane, right, low),
    planePoint(plane, right, high),
    planePoint(plane, left, high),
  ];
  return new Float32Array(loop.flatMap((point, i) => [...point, ...loop[(i + 1) % 4]!]));
}

/** The outline that the cut leaves in the part. */
export function cutOutline({ plane, lines }: Section): Float32Array {
  const ends: number[] = [];
  for (const { pointsMm, closed } of lines) {
    const count = pointsMm.length / 2;
    for (let i = 0; i < (closed ? count : count - 1); i++) {
      const next = (i + 1) % count;
      ends.push(
        ...planePoint(plane, pointsMm[2 * i]!, pointsMm[2 * i + 1]!),
        ...planePoint(plane, pointsMm[2 * next]!, pointsMm[2 * next + 1]!),
      );
    }
  }
  return new Float32Array(ends);
}
