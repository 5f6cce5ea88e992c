import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/core/mesh/types';
import { buildSurfaceIndex } from '../../src/core/mesh/surfaceIndex';
import { measureTogether, type SliceHelper } from '../../src/jobs/measureTogether';
import { WallsBench } from '../../src/pipeline/wallsBench';
import { indexElsewhere } from '../support/indexElsewhere';
import { domeShell } from '../support/meshes';
import { ignore } from './support';

const index = buildSurfaceIndex(domeShell(20, 40));
const up: Vec3 = [0, 0, 1];
const slices = { least: 128, most: 256 };

/** A helper on the own thread that answers once the event loop has turned, and fails from its `failFrom`th slice on. */
function helperHere(failFrom: number) {
  const bench = new WallsBench(indexElsewhere(index));
  const told = { slices: 0 };
  const helper: SliceHelper = async (from, to, pull, withWalls) => {
    await new Promise((resolve) => setTimeout(resolve, 0));
    if (told.slices >= failFrom) throw new Error('the helper is gone');
    told.slices++;
    bench.measure(from, to, pull, withWalls);
    return bench.slice(from, to, withWalls);
  };
  return { helper, told };
}

async function measured(helper: SliceHelper | null, onShare: (share: number) => void = ignore) {
  const own = new WallsBench(index);
  await measureTogether(own, helper, up, true, onShare, { slices });
  const { rayWallMm, rayFacet, ballWallMm, reach } = own;
  return { rayWallMm, rayFacet, ballWallMm, reach };
}

describe('walls shared with a helper', () => {
  it.each([
    ['that works', Infinity, 1],
    ['that fails at its second slice', 1, 1],
    ['that fails at once', 0, 0],
  ])('are identical with a helper %s', async (_, failFrom, leastSlices) => {
    const { helper, told } = helperHere(failFrom);
    expect(await measured(helper)).toEqual(await measured(null));
    expect(told.slices).toBeGreaterThanOrEqual(leastSlices);
  });

  it('are identical with a helper that falls silent, which is waited for only so long', async () => {
    const { helper } = helperHere(Infinity);
    let asked = 0;
    const falling: SliceHelper = (...slice) =>
      asked++ < 3 ? helper(...slice) : new Promise(() => undefined);
    const own = new WallsBench(index);
    let silences = 0;
    await measureTogether(own, falling, up, true, ignore, {
      slices,
      silenceMs: 20,
      onSilence: () => silences++,
    });
    const { rayWallMm, rayFacet, ballWallMm, reach } = own;
    expect({ rayWallMm, rayFacet, ballWallMm, reach }).toEqual(await measured(null));
    expect(silences).toBe(1);
  });

  it('gives the helper its slices before the work of its own that comes first', async () => {
    const { helper } = helperHere(Infinity);
    const order: string[] = [];
    const asked: SliceHelper = (...slice) => {
      order.push('asked');
      return helper(...slice);
    };
    const own = new WallsBench(index);
    await measureTogether(own, asked, up, true, ignore, { first: () => order.push('own work'), slices });
    expect(order.slice(0, 5)).toEqual(['asked', 'asked', 'asked', 'asked', 'own work']);
  });

  it('tells a share that only grows and ends at 1', async () => {
    const shares: number[] = [];
    await measured(helperHere(2).helper, (share) => shares.push(share));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });

  it('leaves the walls alone when only the reach along another pull is asked for', async () => {
    const own = new WallsBench(index);
    await measureTogether(own, null, up, true, ignore, { slices });
    const walls = own.ballWallMm.slice();
    const fromAbove = own.reach.slice();
    await measureTogether(own, helperHere(Infinity).helper, [1, 0, 0], false, ignore, { slices });
    expect(own.ballWallMm).toEqual(walls);
    expect(own.reach).not.toEqual(fromAbove);
  });
});
