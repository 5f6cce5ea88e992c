import { DoubleSide, Vector3, type Plane } from 'three';
import type { DisplayChunk } from '../../pipeline/told';
import type { OrbitView, PartBox } from '../orbitView';
import { ChunkGeometry } from './ChunkGeometry';
import type { DrawnHalves, SceneMarks, StoneView } from './sceneMessages';
import { useKept } from './useKept';

export interface StoneHalvesProps {
  readonly halves: DrawnHalves;
  readonly stone: StoneView;
  readonly marks: SceneMarks;
  readonly box: PartBox;
  readonly view: OrbitView;
}

/** Two tones of stone, told apart in print as well. */
const stoneColor = { negative: '#e6dcc2', positive: '#b9c4c6' } as const;

/** The stone around the pattern, its halves pulled off along the pull: the negative with it, the positive against it. */
export function StoneHalves({ halves, stone, marks, box, view }: StoneHalvesProps) {
  const kept = useKept(marks.plane, view);
  const away = new Vector3(...marks.pull).normalize().multiplyScalar(stone.apartMm);
  return (
    <>
      {stone.shows.negative ? (
        <StoneHalf chunks={halves.negative} color={stoneColor.negative} at={away} box={box} kept={kept} />
      ) : null}
      {stone.shows.positive ? (
        <StoneHalf
          chunks={halves.positive}
          color={stoneColor.positive}
          at={away.clone().negate()}
          box={box}
          kept={kept}
        />
      ) : null}
    </>
  );
}

interface StoneHalfProps {
  readonly chunks: readonly DisplayChunk[];
  readonly color: string;
  readonly at: Vector3;
  readonly box: PartBox;
  readonly kept: Plane[] | null;
}

function StoneHalf({ chunks, color, at, box, kept }: StoneHalfProps) {
  return (
    <group position={at}>
      {chunks.map((chunk) => (
        <mesh key={chunk.firstFacet}>
          <ChunkGeometry args={[chunk, box]} />
          <meshLambertMaterial color={color} flatShading side={DoubleSide} clippingPlanes={kept} />
        </mesh>
      ))}
    </group>
  );
}
