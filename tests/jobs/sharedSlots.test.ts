/** A second worker's hand in walls and reach makes no difference to what is measured, and none of its failures does. */
import { describe, expect, it } from 'vitest';
import { createSharedSlots } from '../../src/jobs/sharedSlots';
import type { WallsHelper } from '../../src/jobs/startWallsHelper';
import { WallsBench } from '../../src/pipeline/wallsBench';
import { buildSurfaceIndex } from '../../src/core/mesh/surfaceIndex';
import { questionWith } from '../pipeline/support';
import { asText } from '../support/asText';
import { domeShell } from '../support/meshes';
import { ignore, measuredBy, meshName, sessionWith, stlBlob } from './support';
import { overMessages } from './wireSupport';

const dome = domeShell(24, 48);
const flipped = { positions: dome.positions, facets: dome.facets.slice() };
flipped.facets.set([flipped.facets[1]!, flipped.facets[0]!], 0);
const sideways = questionWith({ part: { pull: [1, 0, 0] } });

const alone = async (mesh = dome, question = questionWith()) =>
  asText(await measuredBy(await sessionWith(mesh), question));

type Part = keyof Pick<WallsHelper, 'load' | 'measure'>;

/** A helper on the own thread, as the second worker is; it may fail or fall silent in one of its parts. */
function helperHere(wrongIn: Part | null = null, wrong: () => Promise<never> = () => Promise.reject(gone)) {
  const told = { started: 0, ended: 0, slices: 0 };
  const start = (): WallsHelper => {
    told.started++;
    let bench: WallsBench | null = null;
    const helper: WallsHelper = {
      load: async (mesh) => {
        bench = new WallsBench(buildSurfaceIndex(structuredClone(mesh)));
      },
      measure: async (from, to, task) => {
        if (bench === null) throw new Error('no part yet');
        told.slices++;
        bench.measure(from, to, task);
        return structuredClone(bench.slice(from, to, task));
      },
      end: () => void told.ended++,
    };
    return wrongIn === null ? helper : { ...helper, [wrongIn]: wrong };
  };
  return { start, told };
}
const gone = new Error('the helper is gone');
const silence = () => new Promise<never>(() => undefined);

describe('a part measured with a helper', () => {
  it.each([
    ['wound right', dome, 'repair'],
    ['with a flipped facet, repaired', flipped, 'repair'],
    ['with a flipped facet, taken as it is', flipped, 'asFile'],
  ] as const)('is the same as measured alone: %s', async (_, mesh, winding) => {
    const question = questionWith({ part: { winding } });
    const { start, told } = helperHere();
    const session = await sessionWith(mesh, createSharedSlots(start, { over: 0 }));
    expect(asText(await measuredBy(session, question))).toEqual(await alone(mesh, question));
    expect(told.slices).toBeGreaterThan(0);
    expect(told).toMatchObject({ started: 1, ended: 0 });
  });

  it('is the same over messages, and along another pull, with the same helper', async () => {
    const { start, told } = helperHere();
    const { bench, end } = overMessages(await sessionWith(dome, createSharedSlots(start, { over: 0 })));
    expect(asText(await measuredBy(bench))).toEqual(await alone());
    const slices = told.slices;
    expect(asText(await measuredBy(bench, sideways))).toEqual(await alone(dome, sideways));
    expect(told.slices).toBeGreaterThan(slices);
    expect(told.started).toBe(1);
    end();
  });

  it('is measured alone when it is small: no helper is started', async () => {
    const { start, told } = helperHere();
    const session = await sessionWith(dome, createSharedSlots(start));
    expect(asText(await measuredBy(session))).toEqual(await alone());
    expect(told.started).toBe(0);
  });

  it('tells a share that only grows and ends at 1', async () => {
    const session = await sessionWith(dome, createSharedSlots(helperHere().start, { over: 0 }));
    const shares: number[] = [];
    await session.tell('walls', questionWith(), (doing, share) => {
      if (doing === 'measuring walls') shares.push(share);
    });
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });

  it('lets go of the helper once the walls of a large part are measured, and goes on alone', async () => {
    const { start, told } = helperHere();
    const session = await sessionWith(dome, createSharedSlots(start, { over: 0, wallsOnlyFrom: 1 }));
    await session.tell('walls', questionWith(), ignore);
    expect(told).toMatchObject({ started: 1, ended: 1 });
    expect(asText(await measuredBy(session))).toEqual(await alone());
    expect(asText(await measuredBy(session, sideways))).toEqual(await alone(dome, sideways));
    expect(told).toMatchObject({ started: 1, ended: 1 });
  });
});

const noWorker = () => {
  throw new ReferenceError('Worker is not defined');
};

describe('a helper that', () => {
  it.each([
    ['fails when it takes the part', 'load', () => Promise.reject(gone)],
    ['fails at a slice', 'measure', () => Promise.reject(gone)],
    ['falls silent when it takes the part', 'load', silence],
    ['falls silent at a slice', 'measure', silence],
  ] as const)('%s is done without, and another is started for the next part', async (_, part, wrong) => {
    const { start, told } = helperHere(part, wrong);
    const session = await sessionWith(dome, createSharedSlots(start, { over: 0, silenceMs: 20 }));
    expect(asText(await measuredBy(session))).toEqual(await alone());
    expect(asText(await measuredBy(session, sideways))).toEqual(await alone(dome, sideways));
    // One that only fails at slices may still be asked again; it is not told from a busy one.
    const isLeft = part === 'load' || wrong === silence;
    expect(told).toMatchObject({ started: 1, ended: isLeft ? 1 : 0 });
    await session.importFile(stlBlob(dome), 'part.stl', meshName, ignore);
    expect(asText(await measuredBy(session))).toEqual(await alone());
    expect(told.started).toBe(isLeft ? 2 : 1);
  });

  it('a worker cannot start is done without', async () => {
    const session = await sessionWith(dome, createSharedSlots(noWorker, { over: 0 }));
    expect(asText(await measuredBy(session))).toEqual(await alone());
  });
});
