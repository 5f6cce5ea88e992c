/** Nothing is offered that nobody takes. */
import { join, relative } from 'node:path';
import { expect, it } from 'vitest';
import { codeOf, resolveImport, sourceFiles } from './support/sources';

const root = join(import.meta.dirname, '..');
const paths = [
  ...['src', 'tests'].flatMap((folder) => sourceFiles(join(root, folder))),
  join(root, 'vite.config.ts'),
];
const code = new Map(paths.map((path) => [relative(root, path), codeOf(path)]));
const known = new Set(code.keys());

/** `file#name` for each name that a file imports or hands on; `file#*` where all of a file is taken. */
function takenBy(file: string, text: string): string[] {
  const target = (specifier: string) => resolveImport(known, file, specifier);
  const named = [...text.matchAll(/\b(?:import|export)\s+([^'"`;]*?)\s*\bfrom\s*['"](\.[^'"]+)['"]/g)];
  const lazy = [...text.matchAll(/\bimport\(\s*['"](\.[^'"]+)['"]\s*\)/g)];
  return [
    ...named.flatMap(([, names = '', specifier = '']) =>
      (names.includes('*')
        ? ['*']
        : names
            .replace(/[{}]/g, ',')
            .split(',')
            .map((name) => name.trim().replace(/^type\s+/, ''))
      ).map((name) => `${target(specifier)}#${name.split(/\s+as\s+/)[0]}`),
    ),
    ...lazy.map(([, specifier = '']) => `${target(specifier)}#*`),
  ];
}

const taken = new Set([...code].flatMap(([file, text]) => takenBy(file, text)));

/** What a file of src exports under a name of its own. */
const exported = [...code]
  .filter(([file]) => file.startsWith('src/') && !file.includes('/assembly/'))
  .flatMap(([file, text]) =>
    [
      ...text.matchAll(
        /^export\s+(?:async\s+|abstract\s+)?(const|let|function|class|enum|interface|type)\s*\*?\s*(\w+)/gm,
      ),
    ].map(([, kind = '', name = '']) => ({ file, kind, name })),
  );
const untaken = exported.filter(({ file, name }) => !taken.has(`${file}#${name}`) && !taken.has(`${file}#*`));
const isType = (kind: string) => kind === 'interface' || kind === 'type';

const timesNamed = (file: string, name: string) =>
  code.get(file)?.match(new RegExp(`\\b${name}\\b`, 'g'))?.length ?? 0;

it('reads exports and imports', () => {
  expect(exported.length).toBeGreaterThan(1000);
  expect(taken).toContain('src/core/problem.ts#Problem');
});

it('has no exported value that no other file imports', () => {
  expect(untaken.filter(({ kind }) => !isType(kind)).map(({ file, name }) => `${file}: ${name}`)).toEqual([]);
});

it('has no exported type that nothing names, not even its own file', () => {
  expect(
    untaken
      .filter(({ file, kind, name }) => isType(kind) && timesNamed(file, name) < 2)
      .map(({ file, name }) => `${file}: ${name}`),
  ).toEqual([]);
});
