import { integrate } from '../../mesh/integrals';
import type { IndexedMesh } from '../../mesh/types';
import type { Parted } from './parting';
import { solidAboveParting } from './partingSheet';
import type { PourChoices } from './pourChoices';
import { keyPlaces, keySolid, prySlotSolids, type KeyPlace } from './registration';
import { leastStoneMm } from './leastStone';
import { meshOfSolid, SolidBin, type Solid } from './solids';

/** One stone half as a closed mesh in the pull frame. */
export interface CastHalf {
  readonly mesh: IndexedMesh;
  readonly volumeMm3: number;
  /** 1 where the facet is a working face: the pattern's print or a land, not the outside of the block. */
  readonly isFace: Uint8Array;
  /** 1 where the facet lies on the parting: a land or a key. */
  readonly isLand: Uint8Array;
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

/** Whether a piece is more than a film along the parting, by the mean thickness of a plate of its volume and surface. */
const isStone = (piece: Solid) => (2 * piece.volume()) / piece.surfaceArea() > leastStoneMm;

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
    const pattern = patternMesh(bin, bodies);
    onProgress(0.05);
    const block = bin.of(box.mesh).solid;
    const slots = prySlotSolids(box, grid, heights.landMm, choices).map((mesh) => bin.of(mesh).solid);
    const blank = slots.length === 0 ? block : bin.minus(block, bin.joined(slots));
    const prySlotsMm3 = block.volume() - blank.volume();
    // The pattern lies wholly inside the block: turned inside out it is a void in it, without any cutting.
    const { solid: stone, originals } = bin.of(meshOfSolid(blank).mesh, insideOut(pattern));
    const [outside, print] = originals as readonly [number, number];
    onProgress(0.3);
    const keys = keyPlaces(box, grid, open.region, heights.landMm, choices);
    const above = bin.of(solidAboveParting(grid, heights, box.ceilingMm + 1)).solid;
    const sunkMm = keySunk(heights.flatLandMm === null, choices);
    const keyBodies = keys.map((key) => bin.of(keySolid(key, choices, sunkMm)).solid);
    const cutter = keys.length === 0 ? above : bin.minus(above, bin.joined(keyBodies));
    const keysMm3 = keys.length === 0 ? 0 : above.volume() - cutter.volume();
    onProgress(0.4);
    const [upper, lower] = bin.split(stone, cutter);
    upper.volume();
    lower.volume();
    onProgress(0.8);

    const overhead = mainPart(bin, upper, (part) => part.boundingBox().max[2] > box.ceilingMm - 0.5);
    const rest = bin.joined([lower, ...overhead.strays.filter(isStone)]);
    const below = mainPart(bin, rest, (part) => part.boundingBox().min[2] < box.floorMm + 0.5);
    const voids = below.strays.filter((part) =>
      meshOfSolid(part).cameFrom.every((original) => original === print),
    );
    const flakes = below.strays.filter((part) => !voids.includes(part));
    const negative = withoutCrumbs(bin, bin.joined([overhead.main, ...flakes.filter(isStone)]));
    onProgress(0.9);
    return {
      negative: castHalf(negative, outside, print),
      positive: castHalf(below.main, outside, print),
      patternMm3: integrate(pattern).volume,
      voidMm3: voids.reduce((sum, part) => sum + part.volume(), 0),
      prySlotsMm3,
      keysMm3,
      keys,
      strayPieces: overhead.strays.length + flakes.length,
    };
  } finally {
    bin.empty();
  }
}

const isVoid = (body: IndexedMesh) => integrate(body).volume < 0;

/** The pattern's bodies as one closed mesh: bodies that overlap count once. */
function patternMesh(bin: SolidBin, bodies: readonly IndexedMesh[]): IndexedMesh {
  if (bodies.length === 1) return bodies[0]!;
  const filled = bin.joined(bodies.filter((body) => !isVoid(body)).map((body) => bin.of(body).solid));
  const voids = bodies.filter(isVoid).map((body) => bin.of(insideOut(body)).solid);
  return meshOfSolid(voids.length === 0 ? filled : bin.minus(filled, bin.joined(voids))).mesh;
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
    if (isMain(part) || volume < -leastPieceMm3) main.push(part);
    else if (volume > leastPieceMm3) strays.push(part);
  }
  return { main: bin.together(main), strays };
}

/** Cutting along faces that two solids share leaves crumbs of rounding. */
function withoutCrumbs(bin: SolidBin, solid: Solid): Solid {
  return mainPart(bin, solid, (part) => part.volume() > leastPieceMm3).main;
}

function castHalf(solid: Solid, outside: number, print: number): CastHalf {
  const { mesh, cameFrom } = meshOfSolid(solid);
  const isFace = Uint8Array.from(cameFrom, (original) => (original === outside ? 0 : 1));
  const face: number[] = [];
  isFace.forEach((flag, facet) => {
    if (flag === 1) face.push(facet);
  });
  return {
    mesh,
    volumeMm3: solid.volume(),
    isFace,
    isLand: Uint8Array.from(cameFrom, (original) => (original === outside || original === print ? 0 : 1)),
    faceMm2: integrate(mesh, Uint32Array.from(face)).area,
  };
}
