/**
 * Only what is known to choose by the shared meshes does so: those unit tests and browser tests are run once more where the
 * meshes are absent (`npm test -- --choosing`, which `.ci/run` does in a clone of its own).
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { choosingTests } from './choosingTests';

const folder = import.meta.dirname;
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) =>
  /\.tsx?$/u.test(path),
);
const textOf = (path: string) => readFileSync(join(folder, path), 'utf8');

test('two files alone know where the shared meshes are', () => {
  const naming = files.filter((path) => /shared\/meshes\//u.test(textOf(path)));
  expect(naming.toSorted()).toEqual(['browser/support/models.ts', 'support/sharedMeshes.ts']);
});

test('every unit test that asks them is run without them', () => {
  const asking = files.filter((path) =>
    /from '[./]*support\/(?:shared|public)Meshes'|from '[./]*support\/brokenFiles'/u.test(textOf(path)),
  );
  expect(choosingTests()).toEqual(
    asking
      .filter((path) => path.endsWith('.test.ts'))
      .map((path) => join('tests', path))
      .toSorted(),
  );
  expect(choosingTests().length).toBeGreaterThan(4);
});

test('every browser test that asks them is named @model', () => {
  const blocks = files
    .filter((path) => path.endsWith('.spec.ts'))
    .flatMap((path) =>
      textOf(path)
        .split(/^(?=test\()/mu)
        .slice(1),
    );
  const asking = blocks.filter((block) => /realShell\(\)\.|\bshell\.|brokenFile\(/u.test(block));
  expect(asking.length).toBeGreaterThan(5);
  expect(asking.filter((block) => !/^test\(.* @model['`], async/u.test(block))).toEqual([]);
});
