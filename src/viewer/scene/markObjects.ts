/** The chosen place, the pull, the cut, and dots on facets with a finding, as three's objects. */
import {
  ArrowHelper,
  BufferAttribute,
  BufferGeometry,
  Color,
  LineBasicMaterial,
  LineSegments,
  Points,
  PointsMaterial,
  Vector3,
  type Object3D,
} from 'three';
import type { Section, SectionPlane, Vec3 } from '../../core/mesh/types';
import type { PartBox } from '../orbitView';
import { axisNumber, planeAxes, planePoint } from '../sectionFrame';
import type { SceneMarks } from './sceneMessages';

const geometryOf = (pointsMm: Float32Array) =>
  new BufferGeometry().setAttribute('position', new BufferAttribute(pointsMm, 3));

/** Dots of a fixed size on the screen, seen through the part, so that even a sliver of a facet is found. */
function dots(pointsMm: Float32Array, color: string, sizePx: number): Points {
  const points = new Points(
    geometryOf(pointsMm),
    new PointsMaterial({ color, size: sizePx, sizeAttenuation: false, depthTest: false, transparent: true }),
  );
  points.renderOrder = 3;
  return points;
}

/** Line pieces, 6 numbers each, seen through the part. */
function pieces(pointsMm: Float32Array, color: string): LineSegments {
  const lines = new LineSegments(
    geometryOf(pointsMm),
    new LineBasicMaterial({ color, depthTest: false, transparent: true }),
  );
  lines.renderOrder = 2;
  return lines;
}

/** The way the negative leaves the show face, standing on the box. */
function pullArrow(pull: Vec3, { boxMinMm, boxMaxMm }: PartBox, color: string): ArrowHelper {
  const low = new Vector3(...boxMinMm);
  const high = new Vector3(...boxMaxMm);
  const half = high.clone().sub(low).multiplyScalar(0.5);
  const toward = new Vector3(...pull).normalize();
  // Distance from the center to the box's own extent along the pull.
  const reach = Math.abs(toward.x) * half.x + Math.abs(toward.y) * half.y + Math.abs(toward.z) * half.z;
  const length = 0.28 * low.distanceTo(high);
  const foot = low
    .clone()
    .lerp(high, 0.5)
    .addScaledVector(toward, reach * 1.05);
  return new ArrowHelper(toward, foot, length, new Color(color), length * 0.3, length * 0.16);
}

/** The sheet of the cut as a frame a little larger than the part. */
function sheetFrame(plane: SectionPlane, { boxMinMm, boxMaxMm }: PartBox): Float32Array {
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
function cutOutline({ plane, lines }: Section): Float32Array {
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

/** Everything that is drawn over the part. */
export function markObjects(marks: SceneMarks, box: PartBox): Object3D[] {
  const { theme, placeMm, dotsMm, plane, section } = marks;
  const objects: Object3D[] = [pullArrow(marks.pull, box, theme.ink)];
  if (plane !== null) {
    objects.push(pieces(sheetFrame(plane, box), theme.accent));
    if (section !== null && section.plane.axis === plane.axis) {
      objects.push(pieces(cutOutline(section), theme.ink));
    }
  }
  if (dotsMm !== null) objects.push(dots(dotsMm, theme.finding, 9));
  if (placeMm !== null) {
    // A square ring with a dot in it: the later ones are drawn over the earlier ones.
    const at = new Float32Array(placeMm);
    objects.push(dots(at, theme.ink, 17), dots(at, theme.ground, 11), dots(at, theme.ink, 5));
  }
  return objects;
}
