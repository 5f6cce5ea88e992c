/**
 * Two halves by somebody else, drawn to meet, in one file of four bodies (the switch box of the public collection); our own pair from
 * one plan where the collection is absent. Their author drew both rims from one outline: what stands between them is ours.
 */
import { describe, expect, it } from 'vitest';
import { compareRims } from '../../src/core/fit/compareRims';
import { joined } from '../../src/core/fit/cavity';
import { findRim } from '../../src/core/fit/rim';
import { findHealth } from '../../src/core/mesh/health';
import { partFromSaved } from '../../src/core/mesh/partFromSaved';
import { unpackMesh } from '../../src/core/mesh/pack';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { loadMate } from '../../src/report/mateFile';
import { parseArguments } from '../../src/report/parseArguments';
import { defaultProjectInputs } from '../../src/steps/inputs/project';
import { boxShell } from '../core/fit/shells';
import { codeOf } from '../support/codeOf';
import { hasSharedMeshes, sharedMesh } from '../support/sharedMeshes';

const isHere = hasSharedMeshes('public');
const name = isHere ? 'switch_box_halves.3mf' : 'pair.stl';

function ownPair(): Uint8Array<ArrayBuffer> {
  const beside = boxShell(60, 40, 12, 1);
  const moved = { ...beside, positions: beside.positions.map((one, at) => (at % 3 === 0 ? one + 80 : one)) };
  return new Uint8Array(writeStlBinary(joined(boxShell(60, 40, 20, 1), moved)));
}
const bytes = isHere ? sharedMesh(`public/${name}`).slice() : ownPair();

async function bodyOf(body: number) {
  const { mate } = await loadMate(name, bytes, defaultProjectInputs, body, () => undefined);
  const mesh = unpackMesh(mate.packed);
  return partFromSaved(mesh, findHealth(mesh), mate.part).partMesh;
}

describe('two halves in one file', { timeout: 60_000 }, () => {
  it('meet: one length of rim, no step, no scale, nothing scraped', async () => {
    const [one, other] = [await bodyOf(1), await bodyOf(2)];
    const sides = [one, other].map((mesh) => ({ mesh, found: findRim(mesh, null) }));
    const rims = compareRims(sides[0]!, sides[1]!, false);
    expect(sides[0]!.found.rim.lengthMm / sides[1]!.found.rim.lengthMm).toBeCloseTo(1, 5);
    expect(rims.stepMaxMm).toBeLessThan(0.01);
    expect(rims.mateScale).toBeCloseTo(1, 4);
    expect(rims.scrapedMm).toBe(0);
  });

  it('a body that the file has not is refused', async () => {
    const code = await bodyOf(99).then(
      () => null,
      (error: unknown) =>
        codeOf(() => {
          throw error;
        }),
    );
    expect(code).toBe('part.noSuchBody');
  });

  it('the command takes the number of the body, with a mate only', () => {
    expect(parseArguments(['--stl', name, '--mate', name, '--mate-body', '2']).mateBody).toBe(2);
    expect(codeOf(() => parseArguments(['--stl', name, '--mate-body', '2']))).toBe('arguments');
    expect(codeOf(() => parseArguments(['--stl', name, '--split', '12']))).toBe('arguments');
  });
});
