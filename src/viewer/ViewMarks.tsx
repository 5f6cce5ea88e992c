/** What is drawn over the part: the chosen place, the pull, the cut, and dots on facets with a finding. */
import { useThree } from '@react-three/fiber';
import { useEffect, useMemo } from 'react';
import { ArrowHelper, BufferAttribute, BufferGeometry, Color, Vector3 } from 'three';
import type { Section, SectionPlane, Vec3 } from '../core/mesh/types';
import type { PartBox } from './orbitView';
import { axisNumber, planeAxes, planePoint } from './sectionFrame';

function useGeometry(pointsMm: Float32Array): BufferGeometry {
  const invalidate = useThree((state) => state.invalidate);
  const geometry = useMemo(() => {
    const made = new BufferGeometry();
    made.setAttribute('position', new BufferAttribute(pointsMm, 3));
    return made;
  }, [pointsMm]);
  useEffect(() => {
    invalidate();
    return () => {
      geometry.dispose();
      invalidate();
    };
  }, [geometry, invalidate]);
  return geometry;
}

/** Dots of a fixed size on the screen, seen through the part, so that even a sliver of a facet is found. */
export function Dots(props: {
  readonly pointsMm: Float32Array;
  readonly color: string;
  readonly sizePx: number;
}) {
  const geometry = useGeometry(props.pointsMm);
  return (
    <points geometry={geometry} renderOrder={3}>
      <pointsMaterial
        color={props.color}
        size={props.sizePx}
        sizeAttenuation={false}
        depthTest={false}
        transparent
      />
    </points>
  );
}

/** Line pieces, 6 numbers each, seen through the part. */
function Pieces({ pointsMm, color }: { readonly pointsMm: Float32Array; readonly color: string }) {
  const geometry = useGeometry(pointsMm);
  return (
    <lineSegments geometry={geometry} renderOrder={2}>
      <lineBasicMaterial color={color} depthTest={false} transparent />
    </lineSegments>
  );
}

/** A ring with a dot at one place: the dot in front of everything. */
export function PlaceMark({
  atMm,
  color,
  ground,
}: {
  readonly atMm: Vec3;
  readonly color: string;
  readonly ground: string;
}) {
  const pointsMm = useMemo(() => new Float32Array(atMm), [atMm]);
  return (
    <>
      <Dots pointsMm={pointsMm} color={color} sizePx={17} />
      <Dots pointsMm={pointsMm} color={ground} sizePx={11} />
      <Dots pointsMm={pointsMm} color={color} sizePx={5} />
    </>
  );
}

/** The way the negative leaves the show face, standing on the box. */
export function PullArrow({
  pull,
  boxMinMm,
  boxMaxMm,
  color,
}: PartBox & { readonly pull: Vec3; readonly color: string }) {
  const invalidate = useThree((state) => state.invalidate);
  const arrow = useMemo(() => {
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
  }, [pull, boxMinMm, boxMaxMm, color]);
  useEffect(() => {
    invalidate();
    return () => arrow.dispose();
  }, [arrow, invalidate]);
  return <primitive object={arrow} />;
}

function sheetPieces(plane: SectionPlane, { boxMinMm, boxMaxMm }: PartBox): Float32Array {
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

function cutPieces({ plane, lines }: Section): Float32Array {
  const pieces: number[] = [];
  for (const { pointsMm, closed } of lines) {
    const count = pointsMm.length / 2;
    for (let i = 0; i < (closed ? count : count - 1); i++) {
      const next = (i + 1) % count;
      pieces.push(
        ...planePoint(plane, pointsMm[2 * i]!, pointsMm[2 * i + 1]!),
        ...planePoint(plane, pointsMm[2 * next]!, pointsMm[2 * next + 1]!),
      );
    }
  }
  return new Float32Array(pieces);
}

/** The sheet of the cut, and the outline it leaves in the part. */
export function CutMark(
  props: PartBox & {
    readonly plane: SectionPlane;
    readonly section: Section | null;
    readonly color: string;
    readonly sheetColor: string;
  },
) {
  const { plane, section, boxMinMm, boxMaxMm } = props;
  const sheet = useMemo(() => sheetPieces(plane, { boxMinMm, boxMaxMm }), [plane, boxMinMm, boxMaxMm]);
  const cut = useMemo(
    () => (section === null || section.plane.axis !== plane.axis ? null : cutPieces(section)),
    [section, plane.axis],
  );
  return (
    <>
      <Pieces pointsMm={sheet} color={props.sheetColor} />
      {cut === null ? null : <Pieces pointsMm={cut} color={props.color} />}
    </>
  );
}
