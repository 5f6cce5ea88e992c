import { describe, expect, it, vi } from 'vitest';
import { buildSurfaceIndex } from '../../src/core/mesh/surfaceIndex';
import { measureTogether, type SliceHelper } from '../../src/jobs/measureTogether';
import { WallsBench, type SlotTask } from '../../src/pipeline/wallsBench';
import { domeShell } from '../support/meshes';
import { ignore } from './support';

const mesh = domeShell(20, 40);
const index = buildSurfaceIndex(mesh);
const walls: SlotTask = { measure: 'walls' };
const reachAlong = (x: number, z: number): SlotTask => ({ measure: 'reach', pull: [x, 0, z] });
const slices = { least: 128, most: 256 };

/** A helper on the own thread that answers once the event loop has turned, and fails from its `failFrom`th slice on. */
function helperHere(failFrom: number) {
  const bench = new WallsBench(buildSurfaceIndex(structuredClone(mesh)));
  const told = { slices: 0 };
  const helper: SliceHelper = async (from, to, task) => {
    await new Promise((resolve) => setTimeout(resolve, 0));
    if (told.slices >= failFrom) throw new Error('the helper is gone');
    told.slices++;
    bench.measure(from, to, task);
    return bench.slice(from, to, task);
  };
  return { helper, told };
}

async function measured(helper: SliceHelper | null, onShare: (share: number) => void = ignore) {
  const own = new WallsBench(index);
  await measureTogether(own, Promise.resolve(helper), walls, onShare, { slices });
  await measureTogether(own, Promise.resolve(helper), reachAlong(0, 1), ignore, { slices });
  return valuesOf(own);
}

const valuesOf = ({ rayWallMm, rayFacet, ballWallMm, reach }: WallsBench) => ({
  rayWallMm,
  rayFacet,
  ballWallMm,
  reach,
});

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
    const sharing = { slices, silenceMs: 20, onSilence: () => silences++ };
    await measureTogether(own, Promise.resolve(falling), walls, ignore, sharing);
    expect(silences).toBe(1);
    await measureTogether(own, Promise.resolve(null), reachAlong(0, 1), ignore, { slices });
    expect(valuesOf(own)).toEqual(await measured(null));
  });

  it('does the work of its own while the helper takes the part, before any slice', async () => {
    const { helper } = helperHere(Infinity);
    const order: string[] = [];
    const asked: SliceHelper = (...slice) => {
      order.push('asked');
      return helper(...slice);
    };
    const own = new WallsBench(index);
    const measure = vi.spyOn(own, 'measure').mockImplementation(() => void order.push('own slice'));
    const first = () => void order.push('own work');
    await measureTogether(own, Promise.resolve(asked), walls, ignore, { first, slices });
    expect(order.filter((what) => what === 'own work')).toHaveLength(1);
    expect(order[0]).toBe('own work');
    expect(order).toContain('asked');
    expect(measure).toHaveBeenCalled();
  });

  it('tells a share that only grows and ends at 1', async () => {
    const shares: number[] = [];
    await measured(helperHere(2).helper, (share) => shares.push(share));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });

  it('goes on here while the helper still takes the part, and without one that cannot', async () => {
    const { helper } = helperHere(Infinity);
    const later = new Promise<SliceHelper>((resolve) => setTimeout(() => resolve(helper), 1));
    for (const coming of [() => later, () => Promise.reject(new Error('no room for the part'))]) {
      const own = new WallsBench(index);
      await measureTogether(own, coming(), walls, ignore, { slices });
      await measureTogether(own, Promise.resolve(null), reachAlong(0, 1), ignore, { slices });
      expect(valuesOf(own)).toEqual(await measured(null));
    }
  });

  it('leaves the walls alone when only the reach along another pull is asked for', async () => {
    const own = new WallsBench(index);
    await measureTogether(own, Promise.resolve(null), walls, ignore, { slices });
    await measureTogether(own, Promise.resolve(null), reachAlong(0, 1), ignore, { slices });
    const ballWallMm = own.ballWallMm.slice();
    const fromAbove = own.reach.slice();
    const { helper } = helperHere(Infinity);
    await measureTogether(own, Promise.resolve(helper), reachAlong(1, 0), ignore, { slices });
    expect(own.ballWallMm).toEqual(ballWallMm);
    expect(own.reach).not.toEqual(fromAbove);
  });
});
