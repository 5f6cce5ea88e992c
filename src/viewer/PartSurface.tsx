import { useThree } from '@react-three/fiber';
import { useEffect, useState } from 'react';
import type { DisplayChunk } from '../jobs/protocol';
import type { PartBox } from './orbitView';
import { SurfaceDrawing, type CutAway } from './SurfaceDrawing';

export interface PartSurfaceProps {
  readonly display: readonly DisplayChunk[];
  readonly box: PartBox;
  /** One RGBA word per facet, see `colorFacets`; null draws the part in `plainColor`. */
  readonly facetColors: Uint32Array | null;
  /** RGBA word. */
  readonly plainColor: number;
  readonly cutAway: CutAway | null;
}

/** The part's surface in the scene. */
export function PartSurface({ display, box, facetColors, plainColor, cutAway }: PartSurfaceProps) {
  const invalidate = useThree((state) => state.invalidate);
  const [drawing] = useState(() => new SurfaceDrawing(invalidate));
  useEffect(() => drawing.show(display, box), [drawing, display, box]);
  useEffect(() => drawing.paint(facetColors, plainColor), [drawing, facetColors, plainColor]);
  useEffect(() => drawing.cut(cutAway), [drawing, cutAway]);
  useEffect(() => () => drawing.dispose(), [drawing]);
  return <primitive object={drawing.group} />;
}
