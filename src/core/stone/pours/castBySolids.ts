import { integrate } from '../../mesh/integrals';
import type { IndexedMesh } from '../../mesh/types';
import type { BoxSolid } from './boxSolid';
import type { Parted } from './parting';
import { solidAboveParting } from './partingSheet';
import type { PourChoices } from './pourChoices';
import { keyPlaces, keySolid, prySlotSolids, type KeyPlace } from './registration';
import { meshOfSolid, SolidBin, type Solid } from './solids';

/** One stone half as a closed mesh in the pull frame. */
export interface CastHalf {
  readonly mesh: IndexedMesh;
  readonly volumeMm3: number;
  /** 1 where the facet is a working face: the pattern's print or a land, not the outside of the block. */
  readonly isFace: Uint8Array;
  readonly faceMm2: number;
}

export interface CastSolids {
  readonly negative: CastHalf;
  readonly positive: CastHalf;
  readonly patternMm3: number;
  /** Voids inside the pattern, which no pour reaches. */
  readonly voidMm3: number;
  readonly prySlotsMm3: number;
  readonly keysMm3: number;
  readonly keys: readonly KeyPlace[];
  /** Pieces of stone that hang together with neither half's back; they went to the half they lean on. */
  readonly strayPieces: number;
}

/** Parts of stone smaller than this are rounding. */
const leastPieceMm3 = 1e-6;

/**
 * Both halves by solid booleans. The stone is the box less the pattern. It is cut along the parting; of what lies above,
 * the negative is the part that reaches the ceiling, and everything else is positive: so a stray flake cut off where a wall
 * is thinner than the columns of the parting goes back to the half that it lies in.
 * @param bodies closed bodies of the pattern in the pull frame, outsides first, voids (inside out) among them
 */
export function castBySolids(
  bodies: readonly IndexedMesh[],
  parted: Parted,
  choices: PourChoices,
  onProgress: (share: number) => void,
): CastSolids {
  const { box, grid, heights, open } = parted;
  const bin = new SolidBin();
  try {
    onProgress(0);
    const pattern = patternSolid(bin, bodies);
    onProgress(0.2);
    const block = bin.of(box.mesh);
    const slots = prySlotSolids(box, choices).map((mesh) => bin.of(mesh));
    const blank = slots.length === 0 ? block : bin.minus(block, bin.joined(slots));
    const stone = bin.minus(blank, pattern);
    const prySlotsMm3 = block.volume() - blank.volume();
    const patternMm3 = pattern.volume();
    onProgress(0.4);

    const keys = keyPlaces(box, grid, open.region, heights.landMm, choices);
    const above = bin.of(solidAboveParting(grid, heights, box.ceilingMm + 1));
    const sunkMm = keySunk(heights.flatLandMm === null, choices);
    const cutter =
      keys.length === 0
        ? above
        : bin.minus(above, bin.joined(keys.map((key) => bin.of(keySolid(key, choices, sunkMm)))));
    const keysMm3 = keys.length === 0 ? 0 : above.volume() - cutter.volume();
    const [upper, lower] = bin.split(stone, cutter);
    onProgress(0.65);

    const { main: negativeFirst, strays } = mainPart(
      bin,
      upper,
      (part) => part.boundingBox().max[2] > box.ceilingMm - 0.5,
    );
    const rest = strays.length === 0 ? lower : bin.minus(stone, negativeFirst);
    onProgress(0.8);
    const below = mainPart(bin, rest, (part) => part.boundingBox().min[2] < box.floorMm + 0.5);
    const voids = below.strays.filter((part) => isInside(part, pattern, box));
    const flakes = below.strays.filter((part) => !voids.includes(part));
    const negative =
      flakes.length === 0
        ? negativeFirst
        : bin.minus(
            bin.minus(stone, below.main),
            voids.length === 0 ? bin.minus(stone, stone) : bin.joined(voids),
          );
    onProgress(0.9);
    const outside = block.originalID();
    const slotIds = new Set(slots.map((slot) => slot.originalID()));
    const half = (solid: Solid) => castHalf(solid, outside, slotIds);
    return {
      negative: half(negative),
      positive: half(below.main),
      patternMm3,
      voidMm3: voids.reduce((sum, part) => sum + part.volume(), 0),
      prySlotsMm3,
      keysMm3,
      keys,
      strayPieces: strays.length + flakes.length,
    };
  } finally {
    bin.empty();
  }
}

/** The pattern's bodies as one solid: bodies that overlap count once, voids are taken out. */
function patternSolid(bin: SolidBin, bodies: readonly IndexedMesh[]): Solid {
  const outsides: Solid[] = [];
  const voids: Solid[] = [];
  for (const body of bodies) {
    const isVoid = integrate(body).volume < 0;
    (isVoid ? voids : outsides).push(bin.of(isVoid ? insideOut(body) : body));
  }
  const filled = outsides.length === 1 ? outsides[0]! : bin.joined(outsides);
  return voids.length === 0 ? filled : bin.minus(filled, bin.joined(voids));
}

function insideOut({ positions, facets }: IndexedMesh): IndexedMesh {
  const turned = facets.slice();
  for (let at = 0; at < turned.length; at += 3) {
    turned[at + 1] = facets[at + 2]!;
    turned[at + 2] = facets[at + 1]!;
  }
  return { positions, facets: turned };
}

/** On a land that rises and falls a key reaches deeper, so that no gap opens under its rim. */
function keySunk(isUneven: boolean, { keys }: PourChoices): number {
  return isUneven ? keys.heightMm : keys.heightMm / 2;
}

/** The parts that `isMain` names with the surfaces of voids, and the other parts. */
function mainPart(bin: SolidBin, solid: Solid, isMain: (part: Solid) => boolean) {
  const parts = bin.parts(solid);
  if (parts.length <= 1) return { main: solid, strays: [] as Solid[] };
  const main: Solid[] = [];
  const strays: Solid[] = [];
  for (const part of parts) {
    const volume = part.volume();
    if (isMain(part) || volume < 0) main.push(part);
    else if (volume > leastPieceMm3) strays.push(part);
  }
  return { main: bin.together(main), strays };
}

/** Whether a piece of stone lies wholly inside the pattern: its surface is the pattern's alone. */
function isInside(part: Solid, pattern: Solid, box: BoxSolid): boolean {
  const { cameFrom } = meshOfSolid(part);
  const own = new Set(cameFrom);
  const { min, max } = part.boundingBox();
  if (min[2] <= box.floorMm || max[2] >= box.ceilingMm) return false;
  return [...own].every((original) => patternOriginals(pattern).has(original));
}

function patternOriginals(pattern: Solid): Set<number> {
  const original = pattern.originalID();
  return original >= 0 ? new Set([original]) : new Set(pattern.getMesh().runOriginalID);
}

function castHalf(solid: Solid, outside: number, slotIds: ReadonlySet<number>): CastHalf {
  const { mesh, cameFrom } = meshOfSolid(solid);
  const isFace = Uint8Array.from(cameFrom, (original) =>
    original === outside || slotIds.has(original) ? 0 : 1,
  );
  const face: number[] = [];
  isFace.forEach((flag, facet) => {
    if (flag === 1) face.push(facet);
  });
  return {
    mesh,
    volumeMm3: integrate(mesh).volume,
    isFace,
    faceMm2: integrate(mesh, Uint32Array.from(face)).area,
  };
}
