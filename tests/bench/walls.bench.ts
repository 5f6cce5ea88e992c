/**
 * Cost of walls and reach on one thread, on our index and on three-mesh-bvh: the same rays and the same points in the
 * same process. The ball of the comparison is one closest-point query at half the ray wall, less than a whole ball.
 */
import { BufferAttribute, BufferGeometry, DoubleSide, Ray, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { measureBallWalls } from '../../src/core/mesh/ballWall';
import { canonicalMesh } from '../../src/core/mesh/canonicalMesh';
import { facetGeometry } from '../../src/core/mesh/facetGeometry';
import { preparePack } from '../../src/core/mesh/pack';
import { measureRayWalls } from '../../src/core/mesh/rayWall';
import { measureReach } from '../../src/core/mesh/reach';
import { findSelfTouching } from '../../src/core/mesh/selfTouching';
import { buildSurfaceIndex } from '../../src/core/mesh/surfaceIndex';
import { allSlots } from '../support/allSlots';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { shellOfTriangles } from '../support/meshes';
import { roundedShell } from '../support/roundedShell';

const sizes = [50_000, 300_000, 1_000_000];
const runs = 3;
/** The comparison is slow: it is timed on every so many facets. */
const comparisonStride = 8;

interface Rates {
  readonly rays: number;
  readonly balls: number;
}

/** Lines to print. */
export async function benchWalls(): Promise<string[]> {
  await preparePack(); // canonicalMesh needs it
  const lines: string[] = [];
  for (const [name, shellOf] of [
    ['box shell', roundedShell],
    ['dome shell', shellOfTriangles],
  ] as const) {
    const rates = sizes.map((size) => {
      const mesh = canonicalMesh(shellOf(size)).mesh;
      const { line, rate } = lineFor(name, mesh);
      lines.push(line);
      return rate;
    });
    const [first, last] = [rates[0]!, rates.at(-1)!];
    const growth = (what: keyof Rates) => (first[what] / last[what]).toFixed(2);
    lines.push(
      `walls ${name}: cost per facet from 50k to 1M grows ${growth('rays')} times (rays), ${growth('balls')} times (balls)`,
    );
  }
  return lines;
}

function lineFor(name: string, mesh: IndexedMesh): { line: string; rate: Rates } {
  const [index, buildMs] = fastest(() => buildSurfaceIndex(mesh));
  const { facetCount } = index;
  const rayWallMm = new Float32Array(facetCount);
  const rayFacet = new Int32Array(facetCount);
  const ballWallMm = new Float32Array(facetCount);
  const reach = new Uint8Array(facetCount);
  const [, rayMs] = fastest(() => measureRayWalls(index, allSlots(index), rayWallMm, rayFacet));
  const [, ballMs] = fastest(() => measureBallWalls(index, allSlots(index), rayWallMm, ballWallMm));
  const [, reachMs] = fastest(() => measureReach(index, [0, 0, 1], allSlots(index), reach));
  const [, touchMs] = fastest(() => findSelfTouching(index, mesh), 1);
  const rays = facetCount / rayMs / 1000;
  const balls = facetCount / ballMs;
  const other = comparison(mesh, rayWallMm);
  const line = [
    `walls ${name}, ${facetCount} triangles: rays ${rays.toFixed(2)} M/s (${(rays / other.rays).toFixed(1)} x three-mesh-bvh)`,
    `balls ${balls.toFixed(0)} k/s (${(balls / other.balls).toFixed(1)} x its closest point)`,
    `index ${buildMs.toFixed(0)} ms (${(other.buildMs / buildMs).toFixed(1)} x faster), ${(index.points.buffer.byteLength / 1e6).toFixed(0)} MB`,
    `reach ${reachMs.toFixed(0)} ms`,
    `self-contact ${touchMs.toFixed(0)} ms`,
    `largest difference of the two ray walls ${other.worstMm.toExponential(1)} mm`,
  ].join(', ');
  return { line, rate: { rays, balls } };
}

/** Seconds that three-mesh-bvh takes for one ray per facet on one thread, without building its tree. */
export function comparisonRaysS(mesh: IndexedMesh): number {
  const facetCount = mesh.facets.length / 3;
  return facetCount / (1e6 * comparison(mesh, new Float32Array(facetCount)).rays);
}

function comparison(mesh: IndexedMesh, rayWallMm: Float32Array) {
  const { centerMm, normal } = facetGeometry(mesh);
  const [bvh, buildMs] = fastest(() => {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(Float32Array.from(mesh.positions), 3));
    geometry.setIndex(new BufferAttribute(mesh.facets.slice(), 1));
    return new MeshBVH(geometry, { indirect: true });
  }, 1);
  const stands: { ray: Ray; facet: number }[] = [];
  for (let facet = 0; facet < rayWallMm.length; facet += comparisonStride) {
    const at = 3 * facet;
    const inward = new Vector3(-normal[at]!, -normal[at + 1]!, -normal[at + 2]!);
    const center = new Vector3(centerMm[at], centerMm[at + 1], centerMm[at + 2]);
    stands.push({ ray: new Ray(center, inward), facet });
  }
  const nearestMm = 1e-3;
  let worstMm = 0;
  const [, rayMs] = fastest(() => {
    for (const { ray, facet } of stands) {
      const hit = bvh.raycastFirst(ray, DoubleSide, nearestMm);
      if (hit && rayWallMm[facet]! > 2 * nearestMm) {
        worstMm = Math.max(worstMm, Math.abs(hit.distance - rayWallMm[facet]!));
      }
    }
  }, 2);
  const middle = new Vector3();
  const found = { point: new Vector3(), distance: 0, faceIndex: 0 };
  const [, pointMs] = fastest(() => {
    for (const { ray, facet } of stands) {
      if (rayWallMm[facet]! > 0) bvh.closestPointToPoint(ray.at(rayWallMm[facet]! / 2, middle), found);
    }
  }, 1);
  return { rays: stands.length / rayMs / 1000, balls: stands.length / pointMs, buildMs, worstMm };
}

function fastest<Result>(work: () => Result, times = runs): [Result, number] {
  let best = Infinity;
  let result = work();
  for (let run = 0; run < times; run++) {
    const start = performance.now();
    result = work();
    best = Math.min(best, performance.now() - start);
  }
  return [result, best];
}
