import type { IndexedMesh } from '../../mesh/types';
import { stacked, type BoxSolid } from './boxSolid';
import type { ColumnGrid } from './columnGrid';
import { columnRegion } from './openColumns';
import type { PourChoices } from './pourChoices';

/** Where a registration key stands, in the pull frame. */
export interface KeyPlace {
  readonly xMm: number;
  readonly yMm: number;
  readonly partingMm: number;
}

/** Stone that must stay between a key and the pattern or the box wall. */
const keyMarginMm = 1;
/** Keys let go by this much draft: common practice, no source. */
const keyDraftDeg = 15;
const keySteps = 48;
const placesAlongSide = 120;

/**
 * Places for keys on the land: the box is cut into as many sectors as there are keys, starting at the corners, and each
 * key takes the place of its sector that lies furthest from pattern and wall. A sector without room gets none.
 */
export function keyPlaces(
  { centerMm, box }: BoxSolid,
  grid: ColumnGrid,
  region: Uint8Array,
  landMm: Float32Array,
  { keys }: Pick<PourChoices, 'keys'>,
): KeyPlace[] {
  if (keys.count === 0) return [];
  const { side, x0Mm, y0Mm, pitchMm } = grid;
  const [halfX, halfY] = [box.innerMm[0] / 2, box.innerMm[1] / 2];
  const step = Math.max(2 * halfX, 2 * halfY) / placesAlongSide;
  const cells = placesAlongSide + 2;
  const isOpen = new Uint8Array(cells * cells);
  const placeOf = (cell: number): readonly [number, number] => [
    ((cell % cells) - 0.5) * step - halfX,
    (Math.floor(cell / cells) - 0.5) * step - halfY,
  ];
  for (let cell = 0; cell < isOpen.length; cell++) {
    const [x, y] = placeOf(cell);
    const i = Math.round((centerMm[0] + x - x0Mm) / pitchMm);
    const j = Math.round((centerMm[1] + y - y0Mm) / pitchMm);
    if (i < 0 || j < 0 || i >= side || j >= side) continue;
    isOpen[cell] = region[j * side + i] === columnRegion.outside ? 1 : 0;
  }
  const places: (readonly [number, number])[] = [];
  const edge: (readonly [number, number])[] = [];
  for (let cell = cells; cell < isOpen.length - cells; cell++) {
    if (isOpen[cell] === 1) places.push(placeOf(cell));
    else if ([cell - 1, cell + 1, cell - cells, cell + cells].some((other) => isOpen[other] === 1)) {
      edge.push(placeOf(cell));
    }
  }
  const best: { place: [number, number]; room: number }[] = Array.from({ length: keys.count }, () => ({
    place: [0, 0],
    room: 0,
  }));
  for (const [x, y] of places) {
    const wall = wallRoom(x, y, halfX, halfY, box.cornerRadiusMm);
    const sector = sectorOf(x / halfX, y / halfY, keys.count);
    if (wall <= best[sector]!.room) continue;
    let square = Infinity;
    for (const [ex, ey] of edge) square = Math.min(square, (ex - x) ** 2 + (ey - y) ** 2);
    const room = Math.min(wall, Math.sqrt(square) - step);
    if (room > best[sector]!.room) best[sector] = { place: [x, y], room };
  }
  return best
    .filter(({ room }) => room >= keys.diameterMm / 2 + keyMarginMm)
    .map(({ place: [x, y] }) => {
      const xMm = centerMm[0] + x;
      const yMm = centerMm[1] + y;
      const column = Math.round((yMm - y0Mm) / pitchMm) * side + Math.round((xMm - x0Mm) / pitchMm);
      return { xMm, yMm, partingMm: landMm[column]! };
    });
}

/** Sectors are equal turns, the middle of the first one at 45 degrees. */
function sectorOf(x: number, y: number, count: number): number {
  const turn = (Math.atan2(y, x) / (2 * Math.PI) - 1 / 8 + 1 / (2 * count) + 2) % 1;
  return Math.min(count - 1, Math.floor(turn * count));
}

/** Distance to the box wall at the parting from a place counted from the middle of the box; below 0 outside. */
export function wallRoom(x: number, y: number, halfX: number, halfY: number, cornerRadiusMm: number): number {
  const inX = Math.abs(x) - (halfX - cornerRadiusMm);
  const inY = Math.abs(y) - (halfY - cornerRadiusMm);
  if (inX > 0 && inY > 0) return cornerRadiusMm - Math.hypot(inX, inY);
  return cornerRadiusMm - Math.max(inX, inY);
}

/** Height of a key above the land, never higher than its flanks allow. */
function keySize({ keys }: Pick<PourChoices, 'keys'>): {
  readonly bottomRadiusMm: number;
  readonly topRadiusMm: number;
} {
  const bottomRadiusMm = keys.diameterMm / 2;
  const topRadiusMm = Math.max(
    bottomRadiusMm * 0.3,
    bottomRadiusMm - keys.heightMm * Math.tan((keyDraftDeg * Math.PI) / 180),
  );
  return { bottomRadiusMm, topRadiusMm };
}

/** @param sunkMm how far the foot of the key reaches below the land, so that it meets a land that is not level */
export function keySolid(
  { xMm, yMm, partingMm }: KeyPlace,
  choices: PourChoices,
  sunkMm: number,
): IndexedMesh {
  const { bottomRadiusMm, topRadiusMm } = keySize(choices);
  const ring = (radius: number) =>
    Array.from({ length: keySteps }, (_, step) => {
      const angle = (2 * Math.PI * step) / keySteps;
      return [xMm + radius * Math.cos(angle), yMm + radius * Math.sin(angle)] as const;
    });
  return stacked([
    [ring(bottomRadiusMm), partingMm - sunkMm],
    [ring(bottomRadiusMm), partingMm],
    [ring(topRadiusMm), partingMm + choices.keys.heightMm],
  ]);
}

/** Volume of one key above the land: a frustum of a 48-sided pyramid. */
export function keyVolumeMm3(choices: PourChoices): number {
  const { bottomRadiusMm, topRadiusMm } = keySize(choices);
  const share = (keySteps / 2) * Math.sin((2 * Math.PI) / keySteps);
  return (
    (share *
      choices.keys.heightMm *
      (bottomRadiusMm ** 2 + bottomRadiusMm * topRadiusMm + topRadiusMm ** 2)) /
    3
  );
}

/** Bodies that are taken out of the block's outside, level with the land, evenly around it, the first on the long side. */
export function prySlotSolids(
  { box, centerMm }: BoxSolid,
  { side, x0Mm, y0Mm, pitchMm }: ColumnGrid,
  landMm: Float32Array,
  { prySlots }: PourChoices,
): IndexedMesh[] {
  const { count, widthMm, depthMm, heightMm } = prySlots;
  const [halfX, halfY] = [box.innerMm[0] / 2, box.innerMm[1] / 2];
  // Past the wall, wherever its draft has it.
  const pastMm = 1 + heightMm * Math.tan((box.wallDraftDeg * Math.PI) / 180);
  return Array.from({ length: count }, (_, slot) => {
    const along = halfX >= halfY ? Math.PI / 2 : 0;
    const angle = along + (2 * Math.PI * slot) / count;
    const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
    // Where the ray from the middle meets the nominal wall.
    const away =
      box.shape === 'cup'
        ? halfX
        : Math.min(
            Math.abs(dx) > 1e-9 ? halfX / Math.abs(dx) : Infinity,
            Math.abs(dy) > 1e-9 ? halfY / Math.abs(dy) : Infinity,
          );
    const [wallX, wallY] = [centerMm[0] + dx * away, centerMm[1] + dy * away];
    const [nx, ny] =
      box.shape === 'cup'
        ? [dx, dy]
        : Math.abs(dx) * halfY > Math.abs(dy) * halfX
          ? [Math.sign(dx), 0]
          : [0, Math.sign(dy)];
    const corner = (out: number, sideways: number) =>
      [wallX + nx * out - ny * sideways, wallY + ny * out + nx * sideways] as const;
    const outline = [
      corner(-depthMm, -widthMm / 2),
      corner(pastMm, -widthMm / 2),
      corner(pastMm, widthMm / 2),
      corner(-depthMm, widthMm / 2),
    ];
    const column = Math.round((wallY - y0Mm) / pitchMm) * side + Math.round((wallX - x0Mm) / pitchMm);
    const partingMm = landMm[column]!;
    return stacked([
      [outline, partingMm - heightMm / 2],
      [outline, partingMm + heightMm / 2],
    ]);
  });
}
