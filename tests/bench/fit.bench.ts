/** Cost of laying two rims on each other, and of the least scale at which contents fit, on domes of many facets. */
import { placed, type Body } from '../../src/core/fit/bodies';
import { cavityFacets, someFacets } from '../../src/core/fit/cavity';
import { compareRims } from '../../src/core/fit/compareRims';
import { findFit } from '../../src/core/fit/leastScale';
import { findRim } from '../../src/core/fit/rim';
import { triangleTree } from '../../src/core/fit/triangleTree';
import type { Vec3 } from '../../src/core/mesh/types';
import { domeShell } from '../support/meshes';

const up: Vec3 = [0, 0, 1];
const board: Body = {
  name: 'board',
  shape: 'box',
  sizeMm: [50, 30, 8],
  placeMm: [5, 3, 14],
  turnDeg: [0, 0, 20],
};

function secondsOf<Result>(work: () => Result): readonly [number, Result] {
  const before = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(before);
  return [(user + system) / 1e6, result];
}

/** Lines to print. */
export async function benchFit(): Promise<string[]> {
  const lines: string[] = [];
  for (const [rings, sides] of [
    [40, 160],
    [150, 500],
  ] as const) {
    const mesh = domeShell(rings, sides, () => 2);
    const facets = mesh.facets.length / 3;
    const [rimS, found] = secondsOf(() => findRim(mesh, up));
    const [compareS] = secondsOf(() => compareRims({ mesh, found }, { mesh, found }, false));
    const [treeS, core] = secondsOf(() => triangleTree(someFacets(mesh, cavityFacets(mesh, found), null)));
    const { originMm, normal } = found.rim.frame;
    const mouth = { originMm, normal, overMm: 0 };
    const wish = { clearanceMm: 0.5, wallMm: 2, aboutMm: board.placeMm, axis: up, mouth };
    const [searchS, fit] = secondsOf(() => findFit(core, [placed(board)], wish, true));
    lines.push(
      `${facets} facets: rim found in ${rimS.toFixed(2)} s, two rims compared in ${compareS.toFixed(2)} s, core face in ${treeS.toFixed(2)} s`,
      `${facets} facets: least scale ${fit?.scale.toFixed(5) ?? 'none'} in ${searchS.toFixed(2)} s`,
    );
  }
  return lines;
}
