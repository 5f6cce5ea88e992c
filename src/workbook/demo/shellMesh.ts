/**
 * A closed mesh of a designed shell: the same grid of quads on both skins, joined by a flat rim and, around the window,
 * by a land.
 */
import type { IndexedMesh, Vec3 } from '../../core/mesh/types';
import { planGrid } from './planGrid';
import { shellSkin } from './shellSkin';
import type { CellBlock, PlanGrid } from './planGrid';
import type { ShellDesign } from './shellDesign';
import type { ShellSkin, SkinPoint } from './shellSkin';

const shoulderRows = 5;
const wallRows = 8;
/** Coordinates are drawn to this many parts of a millimeter, as drawings are. */
const partsPerMm = 2000;
/** How far the window's inner edge stands in from its outer edge, so that its land releases with the show face. */
const windowLandInMm = 0.08;

type Grid2 = (column: number, row: number) => number;

export function shellMesh(design: ShellDesign): IndexedMesh {
  const skin = shellSkin(design);
  const plan = planGrid(skin.topHalfLengthMm, skin.topHalfWidthMm, design.cellMm, design.window);
  const outer: number[] = [];
  const inner: number[] = [];
  const addPoint = (point: SkinPoint): number => {
    outer.push(...point.outer);
    inner.push(...point.inner);
    return outer.length / 3 - 1;
  };

  const top = topVertices(plan, skin, addPoint);
  const around = outlineNodes(plan);
  const rings = [around.map(([column, row]) => top(column, row))];
  for (let i = 1; i <= shoulderRows + wallRows; i++) {
    const down = i <= shoulderRows ? i / shoulderRows : 1 + (i - shoulderRows) / wallRows;
    rings.push(around.map((node) => addPoint(skin.side(angleOf(plan, node), down))));
  }

  const quads = [...topQuads(plan, top), ...sideQuads(rings)];
  const vertexCount = outer.length / 3;
  const facets: number[] = [];
  for (const quad of quads) {
    addQuad(facets, quad);
    addQuad(facets, turnedOver(quad, vertexCount));
  }
  addLand(facets, rings.at(-1) as number[], vertexCount);
  if (plan.window !== null) addLand(facets, windowLoop(plan.window, top), vertexCount);
  const positions = Float64Array.from(
    [...outer, ...inner],
    (value) => Math.round(value * partsPerMm) / partsPerMm,
  );
  return withoutUnused(positions, facets);
}

/** Corners counter-clockwise seen from outside, and whether the diagonal runs from the second corner instead. */
interface Quad {
  readonly corners: readonly [number, number, number, number];
  readonly fromSecond: boolean;
}

function addQuad(facets: number[], { corners: [a, b, c, d], fromSecond }: Quad): void {
  if (fromSecond) facets.push(b, c, d, b, d, a);
  else facets.push(a, b, c, a, c, d);
}

/** The quad of the inner skin behind one of the outer skin. */
function turnedOver({ corners: [a, b, c, d], fromSecond }: Quad, shift: number): Quad {
  return { corners: [a + shift, d + shift, c + shift, b + shift], fromSecond };
}

function topVertices(plan: PlanGrid, skin: ShellSkin, addPoint: (point: SkinPoint) => number): Grid2 {
  for (let row = 0; row < plan.rows; row++) {
    for (let column = 0; column < plan.columns; column++) {
      const at = 2 * (row * plan.columns + column);
      const x = plan.nodesMm[at] as number;
      const y = plan.nodesMm[at + 1] as number;
      const point = skin.top(x, y);
      addPoint(onWindowEdge(plan.window, column, row) ? windowEdge(plan, skin, point) : point);
    }
  }
  return (column, row) => row * plan.columns + column;
}

function onWindowEdge(window: CellBlock | null, column: number, row: number): boolean {
  if (window === null) return false;
  const { firstColumn, lastColumn, firstRow, lastRow } = window;
  const within = column >= firstColumn && column <= lastColumn && row >= firstRow && row <= lastRow;
  return within && (column === firstColumn || column === lastColumn || row === firstRow || row === lastRow);
}

/** The inner edge is not the offset of the outer one but stands in a little all around, still on the inner skin. */
function windowEdge(plan: PlanGrid, skin: ShellSkin, { outer }: SkinPoint): SkinPoint {
  const window = plan.window as CellBlock;
  const corner = (column: number, row: number) => {
    const at = 2 * (row * plan.columns + column);
    return [plan.nodesMm[at] as number, plan.nodesMm[at + 1] as number] as const;
  };
  const middleRow = Math.round((window.firstRow + window.lastRow) / 2);
  const [left] = corner(window.firstColumn, middleRow);
  const [right] = corner(window.lastColumn, middleRow);
  const middleX = (left + right) / 2;
  const halfLength = (right - left) / 2;
  const halfWidth = corner(window.firstColumn + 1, window.lastRow)[1];
  const targetX = middleX + (outer[0] - middleX) * (1 - windowLandInMm / halfLength);
  const targetY = outer[1] * (1 - windowLandInMm / halfWidth);
  let x = targetX;
  let y = targetY;
  let inner: Vec3 = outer;
  for (let i = 0; i < 20; i++) {
    ({ inner } = skin.top(x, y));
    x += targetX - inner[0];
    y += targetY - inner[1];
  }
  return { outer, inner };
}

/** Grid nodes on the outline, counter-clockwise seen from above. */
function outlineNodes(plan: PlanGrid): (readonly [number, number])[] {
  const lastColumn = plan.columns - 1;
  const lastRow = plan.rows - 1;
  const nodes: (readonly [number, number])[] = [];
  for (let column = 0; column < lastColumn; column++) nodes.push([column, 0]);
  for (let row = 0; row < lastRow; row++) nodes.push([lastColumn, row]);
  for (let column = lastColumn; column > 0; column--) nodes.push([column, lastRow]);
  for (let row = lastRow; row > 0; row--) nodes.push([0, row]);
  return nodes;
}

function angleOf(plan: PlanGrid, [column, row]: readonly [number, number]): number {
  const at = 2 * (row * plan.columns + column);
  return Math.atan2(plan.nodesMm[at + 1] as number, plan.nodesMm[at] as number);
}

function topQuads(plan: PlanGrid, top: Grid2): Quad[] {
  const quads: Quad[] = [];
  for (let row = 0; row + 1 < plan.rows; row++) {
    for (let column = 0; column + 1 < plan.columns; column++) {
      if (plan.window !== null && inBlock(plan.window, column, row)) continue;
      // Diagonals run towards the middle, so that no facet at a rounded corner is flat.
      const rightHalf = 2 * column + 1 > plan.columns - 1;
      const upperHalf = 2 * row + 1 > plan.rows - 1;
      quads.push({
        corners: [top(column, row), top(column + 1, row), top(column + 1, row + 1), top(column, row + 1)],
        fromSecond: rightHalf !== upperHalf,
      });
    }
  }
  return quads;
}

function inBlock(block: CellBlock, column: number, row: number): boolean {
  return (
    column >= block.firstColumn && column < block.lastColumn && row >= block.firstRow && row < block.lastRow
  );
}

function sideQuads(rings: readonly (readonly number[])[]): Quad[] {
  const quads: Quad[] = [];
  for (let i = 0; i + 1 < rings.length; i++) {
    const upper = rings[i] as readonly number[];
    const lower = rings[i + 1] as readonly number[];
    for (let j = 0; j < upper.length; j++) {
      const next = (j + 1) % upper.length;
      quads.push({
        corners: [lower[j] as number, lower[next] as number, upper[next] as number, upper[j] as number],
        fromSecond: (i + j) % 2 === 1,
      });
    }
  }
  return quads;
}

/** Joins an open edge of the outer skin to the same edge of the inner skin; the skin lies left of the loop. */
function addLand(facets: number[], loop: readonly number[], shift: number): void {
  for (let j = 0; j < loop.length; j++) {
    const here = loop[j] as number;
    const next = loop[(j + 1) % loop.length] as number;
    addQuad(facets, { corners: [next, here, here + shift, next + shift], fromSecond: false });
  }
}

/** The window's edge, clockwise seen from above: the skin then lies left of it. */
function windowLoop({ firstColumn, lastColumn, firstRow, lastRow }: CellBlock, top: Grid2): number[] {
  const loop: number[] = [];
  for (let row = firstRow; row < lastRow; row++) loop.push(top(firstColumn, row));
  for (let column = firstColumn; column < lastColumn; column++) loop.push(top(column, lastRow));
  for (let row = lastRow; row > firstRow; row--) loop.push(top(lastColumn, row));
  for (let column = lastColumn; column > firstColumn; column--) loop.push(top(column, firstRow));
  return loop;
}

/** Leaves out the nodes inside the window. */
function withoutUnused(positions: Float64Array, facets: readonly number[]): IndexedMesh {
  const newNumber = new Map<number, number>();
  const kept: number[] = [];
  const renumbered = Uint32Array.from(facets, (old) => {
    let vertex = newNumber.get(old);
    if (vertex === undefined) {
      vertex = newNumber.size;
      newNumber.set(old, vertex);
      kept.push(...positions.subarray(3 * old, 3 * old + 3));
    }
    return vertex;
  });
  return { positions: Float64Array.from(kept), facets: renumbered };
}
