import { useMemo } from 'react';
import { DoubleSide, type Plane } from 'three';
import type { SectionPlane } from '../../core/mesh/types';
import { colorFacets } from '../colorScales';
import type { DrawnHeat } from '../heatSheet';
import type { Paint } from '../mapColors';
import type { OrbitView, PartBox } from '../orbitView';
import { ChunkGeometry, type OwnChunk } from './ChunkGeometry';
import { useKept, useKeptByHeat } from './useKept';

export interface PartSurfaceProps {
  readonly chunks: readonly OwnChunk[];
  /** Hidden rather than taken away: the corners are on the graphics card alone. */
  readonly isShown: boolean;
  readonly box: PartBox;
  readonly paint: Paint | null;
  readonly plane: SectionPlane | null;
  /** Keeps a side of the split between part and made pattern; null without one. */
  readonly keptBySplit: Plane[] | null;
  readonly heat: DrawnHeat | null;
  readonly view: OrbitView;
}

/** The part's facets; where there is a cut, without the half that stands between it and the eye. */
export function PartSurface(props: PartSurfaceProps) {
  const { chunks, isShown, box, paint, plane, keptBySplit, heat, view } = props;
  const facetColors = useMemo(() => paint && colorFacets(paint.values, paint.scale), [paint]);
  const keptByCut = useKept(plane, view);
  const kept = useKeptByHeat(heat, view) ?? keptByCut ?? keptBySplit;
  return chunks.map((chunk) => (
    <SurfaceChunk
      key={chunk.firstFacet}
      chunk={chunk}
      isShown={isShown}
      box={box}
      facetColors={facetColors}
      kept={kept}
    />
  ));
}

interface SurfaceChunkProps {
  readonly chunk: OwnChunk;
  readonly isShown: boolean;
  readonly box: PartBox;
  readonly facetColors: Uint32Array | null;
  /** Planes that keep what lies on their positive side. */
  readonly kept: Plane[] | null;
}

function SurfaceChunk({ chunk, isShown, box, facetColors, kept }: SurfaceChunkProps) {
  return (
    <mesh visible={isShown}>
      <ChunkGeometry args={[chunk, box, true]} facetColors={facetColors} />
      <meshLambertMaterial vertexColors flatShading side={DoubleSide} clippingPlanes={kept} />
    </mesh>
  );
}
