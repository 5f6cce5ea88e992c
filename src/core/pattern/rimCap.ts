/**
 * The land of the rim: what lies in the rim plane between show face and core face. Cut square by square of the grid by the same
 * rule as the faces, so that every point of the rim stays and nothing is left open.
 */
import { layerInside, type LevelSet } from './levelSet';
import type { PatternGrid } from './grid';
import type { IndexedMesh } from '../mesh/types';

export interface FaceLevel {
  readonly fieldMm: Float32Array;
  readonly levelMm: number;
  readonly sign: 1 | -1;
}

/** A point on the border of a square, in counter-clockwise order. */
interface BorderPoint {
  readonly vertex: number;
  /** Which face the border crosses here; null at a corner of the square. */
  readonly face: 'show' | 'core' | null;
  /** Whether the land begins here, going round. */
  readonly enters: boolean;
}

/** Show face, core face turned around, and the land between them, as one closed mesh. */
export function closeRim(
  grid: PatternGrid,
  show: LevelSet,
  core: LevelSet,
  showLevel: FaceLevel,
  coreLevel: FaceLevel,
): IndexedMesh {
  const { countX, countY, rimLayer, stepMm, lowXMm, lowYMm, lowZMm, layerMm } = grid;
  const plane = countX * countY;
  const coreFrom = show.positions.length / 3;
  const first = coreFrom + core.positions.length / 3;
  const corners: number[] = [];
  const cap: number[] = [];
  const showIn = layerInside(showLevel.fieldMm, showLevel.levelMm, showLevel.sign, rimLayer * plane, plane);
  const coreIn = layerInside(coreLevel.fieldMm, coreLevel.levelMm, coreLevel.sign, rimLayer * plane, plane);
  const cornerVertex = new Int32Array(plane).fill(-1);
  const vertexAt = (node: number): number => {
    if (cornerVertex[node]! < 0) {
      cornerVertex[node] = first + corners.length / 3;
      const i = node % countX;
      const j = (node - i) / countX;
      corners.push(lowXMm + i * stepMm, lowYMm + j * stepMm, lowZMm + rimLayer * layerMm);
    }
    return cornerVertex[node]!;
  };
  for (let j = 0; j + 1 < countY; j++) {
    for (let i = 0; i + 1 < countX; i++) {
      const at = j * countX + i;
      const nodes = [at, at + 1, at + countX + 1, at + countX] as const;
      const kinds = nodes.map((node) => showIn[node]! + coreIn[node]!);
      if (kinds.every((kind) => kind === 0) || kinds.every((kind) => kind === 2)) continue;
      const border: BorderPoint[] = [];
      for (let side = 0; side < 4; side++) {
        const node = nodes[side]!;
        const [here, there] = [kinds[side]!, kinds[(side + 1) % 4]!];
        if (here === 1) border.push({ vertex: vertexAt(node), face: null, enters: false });
        const [alongX, edge] = [side % 2 === 0, side < 2 ? nodes[side]! : nodes[(side + 1) % 4]!];
        const onShow = (alongX ? show.onX : show.onY)[edge]!;
        const onCore = coreFrom + (alongX ? core.onX : core.onY)[edge]!;
        if (here === 0 && there > 0) border.push({ vertex: onShow, face: 'show', enters: true });
        if (here < 2 && there === 2) border.push({ vertex: onCore, face: 'core', enters: false });
        if (here === 2 && there < 2) border.push({ vertex: onCore, face: 'core', enters: true });
        if (here > 0 && there === 0) border.push({ vertex: onShow, face: 'show', enters: false });
      }
      for (const polygon of landsOf(border))
        for (let tip = 1; tip + 1 < polygon.length; tip++)
          cap.push(polygon[0]!, polygon[tip + 1]!, polygon[tip]!);
    }
  }
  return joined(show, core, coreFrom, corners, cap);
}

/** The polygons of land in a square, from the points on its border. */
function landsOf(border: readonly BorderPoint[]): readonly (readonly number[])[] {
  const count = border.length;
  const seen = new Uint8Array(count);
  const lands: number[][] = [];
  const across = (at: number): number => {
    const { face } = border[at]!;
    // Where the land ends at the show face it goes on where that run began; at the core face, where the core's run ends.
    const step = face === 'show' ? count - 1 : 1;
    let other = (at + step) % count;
    while (border[other]!.face !== face) other = (other + step) % count;
    return other;
  };
  for (let start = 0; start < count; start++) {
    if (seen[start] === 1) continue;
    const land: number[] = [];
    for (let at = start; seen[at] === 0;) {
      seen[at] = 1;
      land.push(border[at]!.vertex);
      const { face, enters } = border[at]!;
      at = face !== null && !enters ? across(at) : (at + 1) % count;
    }
    lands.push(land);
  }
  return lands;
}

function joined(
  show: LevelSet,
  core: LevelSet,
  coreFrom: number,
  corners: readonly number[],
  cap: readonly number[],
): IndexedMesh {
  const positions = new Float64Array(show.positions.length + core.positions.length + corners.length);
  positions.set(show.positions);
  positions.set(core.positions, show.positions.length);
  positions.set(corners, show.positions.length + core.positions.length);
  const facets = new Uint32Array(show.facets.length + core.facets.length + cap.length);
  facets.set(show.facets);
  for (let at = 0; at < core.facets.length; at += 3) {
    const to = show.facets.length + at;
    facets[to] = coreFrom + core.facets[at]!;
    facets[to + 1] = coreFrom + core.facets[at + 2]!;
    facets[to + 2] = coreFrom + core.facets[at + 1]!;
  }
  facets.set(cap, show.facets.length + core.facets.length);
  return { positions, facets };
}
