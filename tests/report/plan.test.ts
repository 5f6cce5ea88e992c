/** `--plan` and `--apply-plan`, and a model that must be answered for first, through the command's own entry. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { StepReport, VerdictWord } from '../../src/core/figure';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { worstWord } from '../../src/core/figure';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { runReport } from '../../src/report/runReport';
import { ignore } from '../pipeline/support';
import { box, tray } from '../support/meshes';

const folder = mkdtempSync(join(tmpdir(), 'plan-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Content {
  readonly steps: Readonly<Record<string, StepReport>>;
  readonly plan?: {
    readonly outcome: string;
    readonly now: Readonly<Record<string, VerdictWord>>;
    readonly after: Readonly<Record<string, VerdictWord>>;
    readonly changes: readonly { readonly id: string; readonly what: string }[];
    readonly anew: { readonly what: string; readonly mends: readonly string[] } | null;
    readonly left: readonly string[];
  };
}

/** Bricks so large that the oven run takes no time worth saving. */
const coarse = ['--set', 'cure.voxelMm=8', '--unit', 'mm', '--json'];

async function reportOn(name: string, mesh: IndexedMesh, ...words: string[]) {
  const path = join(folder, name);
  writeFileSync(path, writeStlBinary(mesh));
  const { output, exitCode } = await runReport(['--stl', path, ...words, ...coarse], {
    appVersion: '0',
    date: '2030-01-01',
    onProgress: ignore,
  });
  return { content: JSON.parse(output) as Content, exitCode };
}

const wordsOf = ({ steps }: Content) =>
  Object.fromEntries(
    Object.entries(steps)
      .filter(([id]) => id !== 'checklist')
      .map(([id, { verdicts }]) => [id, worstWord(verdicts)]),
  );

describe('a shell with the wanted wall and 3° of draft', { timeout: 240_000 }, () => {
  const shell = tray([40, 30, 10], 0.67, 3);

  it('is cleared but for what nobody has read yet, with no stop and exit code 0', async () => {
    const { content, exitCode } = await reportOn('right.stl', shell, '--plan');
    expect(exitCode).toBe(0);
    expect(content.plan?.outcome).not.toBe('cannot be cleared');
    expect(content.plan?.anew).toBeNull();
    expect(Object.values(content.plan!.now)).not.toContain('stop');
    expect(wordsOf(content)).toEqual(content.plan!.now);
  });

  it('with one ply too few gets a plan that names the stack; applied, the exit code is 0', async () => {
    const twoPlies = `plies.stack=${JSON.stringify(
      ['a', 'b'].map((id) => ({
        id,
        materialId: 'twill-200',
        angleDeg: 0,
        faceDown: false,
        mirroredPair: false,
      })),
    )}`;
    const asIs = await reportOn('two.stl', shell, '--set', twoPlies, '--plan');
    expect(asIs.exitCode).toBe(1);
    expect(asIs.content.plan?.changes.map(({ what }) => what)).toContain('Lay 3 plies.');
    const applied = await reportOn('two.stl', shell, '--set', twoPlies, '--apply-plan');
    expect(applied.exitCode).toBe(0);
    expect(wordsOf(applied.content)).toEqual(asIs.content.plan!.after);
  });
});

describe('a wall that no stack fits', { timeout: 240_000 }, () => {
  it('is no reason to lay other plies where draft is missing too: the pattern is proposed anew, and it stays a stop', async () => {
    const { content, exitCode } = await reportOn('upright.stl', tray([40, 30, 10], 0.3, 0), '--plan');
    expect(exitCode).toBe(1);
    expect(content.plan?.outcome).toBe('cannot be cleared');
    expect(content.plan?.anew?.mends).toContain('walls.draft');
    expect(content.plan?.anew?.what).toContain('Pattern');
    expect(content.plan?.changes.some(({ id }) => id === 'plies.stack')).toBe(false);
  });
});

describe('a model whose shape does not tell which face people see', { timeout: 120_000 }, () => {
  const block = box([0, 0, 0], [70, 40, 12]);

  it('reads "not yet known" at every step after Part, until the pull is given', async () => {
    const asked = await reportOn('block.stl', block, '--plan');
    expect(asked.exitCode).toBe(0);
    const { part, ...others } = wordsOf(asked.content);
    expect(part).not.toBe('stop');
    expect(new Set(Object.values(others))).toEqual(new Set(['not yet known']));
    expect(asked.content.plan?.changes).toEqual([]);
    expect(asked.content.plan?.outcome).toBe('not yet known');
    const told = await reportOn('block.stl', block, '--pull', '0,0,1');
    expect(
      Object.values(told.content.steps).flatMap(({ verdicts }) => verdicts.map(({ id }) => id)),
    ).not.toContain('walls.held');
  });
});
