import { facetGeometry } from '../../mesh/facetGeometry';
import type { ColumnGrid } from './columnGrid';
import { columnMaterial, type ColumnMaterial } from './columnMaterial';
import { columnRegion } from './openColumns';
import type { Parted } from './parting';
import type { PourChoices } from './pourChoices';
import { keyPlaces, keyVolumeMm3, wallRoom, type KeyPlace } from './registration';

/** The two pours as volumes alone. */
export interface CastColumns {
  readonly negativeMm3: number;
  readonly positiveMm3: number;
  readonly patternMm3: number;
  readonly prySlotsMm3: number;
  readonly negativeFaceMm2: number;
  readonly positiveFaceMm2: number;
  readonly keysMm3: number;
  readonly keys: readonly KeyPlace[];
  /** As read on the first grid. */
  readonly material: ColumnMaterial;
}

/**
 * Both halves by integration along the pull, for patterns that are no sound solid. Each column of the box is parted as the
 * solids would be: above the first facet that looks along the pull stands the negative, or above the land where the column
 * is open; below it, less the material, the positive. The pattern's own volume comes from a second grid, half a pitch
 * aside, so that the sum of all volumes shows the error of the columns.
 */
export function castByColumns(parted: Parted, choices: PourChoices): CastColumns {
  const { pattern, box, grid, columns, open, heights } = parted;
  const { side, x0Mm, y0Mm, pitchMm } = grid;
  const partedAt = (column: number) =>
    columns.topMm[column]! > -Infinity ? columns.topMm[column]! : heights.heightMm[column]!;
  const [halfX, halfY] = [box.box.innerMm[0] / 2, box.box.innerMm[1] / 2];
  let raisedMm = 0;
  let openColumns = 0;
  for (let column = 0; column < side * side; column++) {
    const x = x0Mm + (column % side) * pitchMm - box.centerMm[0];
    const y = y0Mm + Math.floor(column / side) * pitchMm - box.centerMm[1];
    if (wallRoom(x, y, halfX, halfY, box.box.cornerRadiusMm) < 0) continue;
    const isOpen = open.region[column] !== columnRegion.pattern;
    if (isOpen) openColumns++;
    raisedMm += partedAt(column) - box.partingMm;
  }
  const raisedMm3 = raisedMm * pitchMm ** 2;
  const material = columnMaterial(pattern, grid, box.partingMm);
  const aside: ColumnGrid = { ...grid, x0Mm: x0Mm + pitchMm / 2, y0Mm: y0Mm + pitchMm / 2 };
  const { materialMm3: patternMm3 } = columnMaterial(pattern, aside, box.partingMm);

  const keys = keyPlaces(box, grid, open.region, heights.landMm, choices);
  const keysMm3 = keys.length * keyVolumeMm3(choices);
  const { count, widthMm, depthMm, heightMm } = choices.prySlots;
  const prySlotsMm3 = count * widthMm * depthMm * heightMm;
  const faces = printedFaces();
  const landMm2 = openColumns * pitchMm ** 2;
  return {
    negativeMm3: box.aboveMm3 - raisedMm3 - keysMm3 - prySlotsMm3 / 2,
    positiveMm3: box.belowMm3 + raisedMm3 - material.materialMm3 + keysMm3 - prySlotsMm3 / 2,
    patternMm3,
    prySlotsMm3,
    negativeFaceMm2: faces.negativeMm2 + landMm2,
    positiveFaceMm2: faces.positiveMm2 + landMm2,
    keysMm3,
    keys,
    material,
  };

  /** Area of the facets by the half whose stone stands before them: moved out by a pitch, above or below the parting. */
  function printedFaces(): { negativeMm2: number; positiveMm2: number } {
    const { areaMm2, normal, centerMm } = facetGeometry(pattern);
    let negativeMm2 = 0;
    let positiveMm2 = 0;
    for (let facet = 0; facet < areaMm2.length; facet++) {
      const x = centerMm[3 * facet]! + normal[3 * facet]! * pitchMm;
      const y = centerMm[3 * facet + 1]! + normal[3 * facet + 1]! * pitchMm;
      const z = centerMm[3 * facet + 2]! + normal[3 * facet + 2]! * pitchMm;
      const column = Math.round((y - y0Mm) / pitchMm) * side + Math.round((x - x0Mm) / pitchMm);
      if (z > partedAt(column)) negativeMm2 += areaMm2[facet]!;
      else positiveMm2 += areaMm2[facet]!;
    }
    return { negativeMm2, positiveMm2 };
  }
}
