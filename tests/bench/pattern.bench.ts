/**
 * Cost of making a pattern, beside two other ways to a shell of that part in the same process: every vertex moved inward along its
 * normal, and the manifold library's own level set of the same distance. Neither of them gives a wall or a draft; they are the
 * measure for the time.
 */
import Module from 'manifold-3d';
import { facetGeometry } from '../../src/core/mesh/facetGeometry';
import type { IndexedMesh, Vec3 } from '../../src/core/mesh/types';
import { CloseFacets } from '../../src/core/mesh/closeFacets';
import { makePattern, type PatternChoices } from '../../src/core/pattern/makePattern';
import { cornersOf } from '../../src/core/mesh/triangleDistance';
import type { LengthUnit } from '../../src/core/units/length';
import { box } from '../support/meshes';
import { publicPart } from '../support/publicPart';
import { hasSharedMeshes } from '../support/sharedMeshes';

const choices: PatternChoices = {
  pull: [0, 0, 1],
  wallMm: 0.8,
  draftDeg: 3,
  neutralPlane: 'rim',
  insideRadiusMm: 1,
  edges: 'eased',
  keepHolesOverMm: null,
  gridMm: 0.4,
};

const sizes = [
  [80, 60, 25],
  [200, 60, 30],
] as const;

/** Lines to print. */
export async function benchPattern(): Promise<string[]> {
  const library = await Module();
  library.setup();
  const lines: string[] = [];
  for (const [x, y, z] of sizes) {
    const part = box([0, 0, 0], [x, y, z]);
    const name = `pattern ${x} x ${y} x ${z} mm`;
    const [coarseS] = secondsOf(() => makePattern(part, { ...choices, wallMm: 1.1, gridMm: 0.8 }, nothing));
    const [fineS, made] = secondsOf(() => makePattern(part, choices, nothing));
    const [offsetS] = secondsOf(() => movedInward(made.mesh, choices.wallMm));
    const facets = new CloseFacets(cornersOf(part.positions, part.facets), 3);
    const [levelS] = secondsOf(() => {
      const reach = 2 * choices.wallMm;
      // Asked only near the surface; a box is told inside from outside by its sides.
      const depth = ([px, py, pz]: readonly number[]): number => {
        const inside = Math.min(px!, x - px!, py!, y - py!, pz!, z - pz!);
        const off = Math.min(reach, facets.distanceMm(px!, py!, pz!, reach));
        return inside >= 0 ? off : -off;
      };
      const bounds = { min: [-1, -1, -1], max: [x + 1, y + 1, z + 1] } as const;
      const body = library.Manifold.levelSet(
        depth,
        { min: [...bounds.min], max: [...bounds.max] },
        choices.gridMm,
        choices.wallMm,
      );
      body.delete();
    });
    lines.push(
      `${name}: ${fineS.toFixed(1)} s of processor at 0.4 mm, ${coarseS.toFixed(1)} s at 0.8 mm, ${made.triangles} triangles`,
      `${name}: ${(fineS / levelS).toFixed(2)} of one level set of the library, ${(fineS / offsetS).toFixed(0)} times a vertex offset of the result`,
    );
  }
  if (hasSharedMeshes('public'))
    for (const [name, pull, gridMm, unit] of enclosures)
      lines.push(await enclosureLine(name, pull, gridMm, unit));
  return lines;
}

/** The wall that three default plies want. */
const wallMm = 0.67;
/** The panel box is so large that a finer grid would have too many points. */
const enclosures: readonly (readonly [name: string, pull: Vec3, gridMm: number, unit?: LengthUnit])[] = [
  ['handheld_top_ascii.stl', [0, 0, 1], 0.33],
  ['mini_player_top_snap.stl', [0, 0, 1], 0.33],
  ['calculator_front_nonmanifold.stl', [0, 0, -1], 0.33],
  ['adapter_box_snap.stl', [0, 0, -1], 0.33],
  ['switch_box_halves.3mf', [0, 0, -1], 0.33],
  ['remote_control_back.stl', [0, 0, -1], 0.33],
  ['slate_main_case.stl', [0, 0, -1], 0.33],
  ['panel_box_inches.stl', [0, 0, 1], 0.5, 'in'],
];

async function enclosureLine(name: string, pull: Vec3, gridMm: number, unit?: LengthUnit): Promise<string> {
  const part = await publicPart(name, unit);
  const [seconds, made] = secondsOf(() => makePattern(part, { ...choices, pull, wallMm, gridMm }, nothing));
  const { p1, median, p99 } = made.wallMm;
  const walls = [p1, median, p99].map((one) => one.toFixed(3)).join(' / ');
  return `${name}: wall ${walls} mm, least draft ${made.leastDraftDeg.toFixed(2)}°, ${made.triangles} triangles, moved ${made.movedMm.toFixed(3)} mm, ${seconds.toFixed(1)} s of processor`;
}

const nothing = () => undefined;

function secondsOf<Result>(work: () => Result): readonly [number, Result] {
  const before = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(before);
  return [(user + system) / 1e6, result];
}

/** Every vertex moved by the mean of its facets' normals. */
function movedInward({ positions, facets }: IndexedMesh, byMm: number): Float64Array {
  const { normal } = facetGeometry({ positions, facets });
  const sums = new Float64Array(positions.length);
  for (let corner = 0; corner < facets.length; corner++)
    for (let axis = 0; axis < 3; axis++)
      sums[3 * facets[corner]! + axis]! += normal[3 * Math.floor(corner / 3) + axis]!;
  return positions.map((one, at) => {
    const first = at - (at % 3);
    const length = Math.hypot(sums[first]!, sums[first + 1]!, sums[first + 2]!);
    return length > 0 ? one - (byMm * sums[at]!) / length : one;
  });
}
