import { useMemo } from 'react';
import { DoubleSide } from 'three';
import type { DrawnHeat } from '../heatSheet';
import type { PartBox } from '../orbitView';
import { ChunkGeometry } from './ChunkGeometry';
import { PointGeometry } from './PointGeometry';

export interface HeatSheetProps {
  readonly heat: DrawnHeat;
  readonly box: PartBox;
  /** Seen on dark and on light alike. */
  readonly outline: string;
}

/** The cut through the mold in its temperatures, unlit so that the legend's colors hold, with the laminate outlined. */
export function HeatSheet({ heat, box, outline }: HeatSheetProps) {
  const chunk = useMemo(() => ({ firstFacet: 0, corners: heat.corners }), [heat.corners]);
  return (
    <>
      <mesh>
        <ChunkGeometry args={[chunk, box]} facetColors={heat.colors} />
        <meshBasicMaterial vertexColors side={DoubleSide} />
      </mesh>
      <lineSegments renderOrder={2}>
        <PointGeometry args={[heat.outlineMm]} />
        <lineBasicMaterial color={outline} depthTest={false} transparent />
      </lineSegments>
    </>
  );
}
