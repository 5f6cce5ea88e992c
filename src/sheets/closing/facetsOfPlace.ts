/** The drawn facets behind a ranked place, for marking it on the view. */
import { noClosingClass, type ClosingMaps } from '../../core/closing/closingMaps';
import type { ClosingSamples } from '../../core/closing/closingTypes';
import { closingPlaceName } from '../../core/closing/places';
import type { PartFrame } from '../../core/mesh/place';
import type { DisplayChunk } from '../../pipeline/told';

/**
 * Facets of the place that carry; all of its facets where none does.
 * @param faces one sample per drawn facet
 */
export function facetsOfPlace(
  place: string,
  frame: PartFrame,
  display: readonly DisplayChunk[],
  faces: ClosingSamples,
  maps: ClosingMaps,
): Uint32Array {
  const all: number[] = [];
  const carrying: number[] = [];
  for (const { firstFacet, corners } of display) {
    for (let at = 0; at < corners.length; at += 9) {
      const facet = firstFacet + at / 9;
      if (maps.closingClass[facet] === noClosingClass) continue;
      const middle = (axis: number) =>
        (corners[at + axis]! + corners[at + axis + 3]! + corners[at + axis + 6]!) / 3;
      const name = closingPlaceName(frame, [middle(0), middle(1), middle(2)], faces.pullCosine[facet]!);
      if (name !== place) continue;
      all.push(facet);
      if (maps.pressureKpa[facet]! > 0) carrying.push(facet);
    }
  }
  return Uint32Array.from(carrying.length > 0 ? carrying : all);
}
