/** How rough the layers of a print leave the show face, by how the pattern stands on the bed. */
import { facetLeans, onRim, type Shell } from './facetLeans';

/** Mean over the area of the show face of the layer step as a share of the layer height, 0 to 1. */
export interface LayerSteps {
  readonly onRim: number;
  readonly onLongSide: number;
  readonly onShortSide: number;
}

/** A face as level as this is one layer and has no steps. Our own judgement. */
const levelCosine = Math.cos((0.05 * Math.PI) / 180);

/**
 * Layer step = layer height × cos(angle of the face to the layers), which is the cosine between its normal and the direction that the
 * print grows in.
 */
export function layerSteps(shell: Shell): LayerSteps {
  const { mesh, coreFrom } = shell;
  const { positions, facets } = mesh;
  const { areaMm2, isCore, draftDeg } = facetLeans(shell);
  const low = [Infinity, Infinity];
  const high = [-Infinity, -Infinity];
  for (let at = 0; at < 3 * coreFrom; at++) {
    if (at % 3 === 2) continue;
    low[at % 3] = Math.min(low[at % 3]!, positions[at]!);
    high[at % 3] = Math.max(high[at % 3]!, positions[at]!);
  }
  const sums = [0, 0, 0];
  let whole = 0;
  for (let f = 0; f < areaMm2.length; f++) {
    if (isCore[f] === 1 || draftDeg[f] === onRim) continue;
    whole += areaMm2[f]!;
    const [a, b, c] = [3 * facets[3 * f]!, 3 * facets[3 * f + 1]!, 3 * facets[3 * f + 2]!];
    for (let axis = 0; axis < 3; axis++) {
      const [i, j] = [(axis + 1) % 3, (axis + 2) % 3];
      // Twice the facet's shadow along the axis.
      const shadow = Math.abs(
        (positions[b + i]! - positions[a + i]!) * (positions[c + j]! - positions[a + j]!) -
          (positions[b + j]! - positions[a + j]!) * (positions[c + i]! - positions[a + i]!),
      );
      if (shadow < 2 * areaMm2[f]! * levelCosine) sums[axis]! += shadow / 2;
    }
  }
  const [alongX, alongY, alongZ] = sums.map((sum) => (whole > 0 ? sum / whole : 0)) as [
    number,
    number,
    number,
  ];
  const isLongX = high[0]! - low[0]! >= high[1]! - low[1]!;
  return {
    onRim: alongZ,
    onLongSide: isLongX ? alongY : alongX,
    onShortSide: isLongX ? alongX : alongY,
  };
}
