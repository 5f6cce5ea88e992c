import { describe, expect, it } from 'vitest';
import { findHealth } from '../../src/core/mesh/health';
import { curvedPlate, rehearse } from '../../src/jobs/rehearsal';
import type { WallsHelper } from '../../src/jobs/startWallsHelper';
import { WallsBench } from '../../src/jobs/wallsBench';
import { indexElsewhere } from '../support/indexElsewhere';

const never = () => {
  throw new Error('no helper here');
};

describe('the rehearsal', () => {
  it('is of a sound plate', () => {
    const health = findHealth(curvedPlate(6));
    expect(health.watertight).toBe(true);
    expect(health.bodies).toHaveLength(1);
    // 60 x 40 x 1.5 mm, straight up and down.
    expect(health.bodies[0]?.volume).toBeCloseTo(3600, 6);
  });

  it('runs the helper too, from health to the last slice', async () => {
    const asked: string[] = [];
    let bench: WallsBench | null = null;
    const measured = await rehearse(() => ({
      findHealth: async (mesh) => {
        asked.push('health');
        return findHealth(mesh);
      },
      load: async (_, index) => {
        asked.push('load');
        bench = new WallsBench(indexElsewhere(index));
      },
      measure: async (_, from, to, pull, withWalls) => {
        asked.push('slice');
        bench!.measure(from, to, pull, withWalls);
        return bench!.slice(from, to, withWalls);
      },
      end: () => undefined,
    }));
    expect(asked.slice(0, 2)).toEqual(['health', 'load']);
    expect(asked).toContain('slice');
    expect(measured?.summary.volumeMm3).toBeCloseTo(3600, 3);
    expect(measured?.summary.closing.areaMm2.length).toBeGreaterThan(0);
  });

  it('stops between two passes once something is asked', async () => {
    let asked = 0;
    const helper: WallsHelper = { findHealth: never, load: never, measure: never, end: never };
    const measured = await rehearse(
      () => helper,
      () => {
        asked++;
        return false;
      },
    );
    expect(asked).toBe(1);
    expect(measured).toBeNull();
  });
});
