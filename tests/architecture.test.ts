/**
 * The house rules, proved from the imports themselves: which folder may know which, that core stays plain, that
 * nothing goes in circles, and that nothing in the app reaches for the network.
 */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '..', 'src');

function sourceFiles(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return sourceFiles(path);
    return /\.tsx?$/.test(name) ? [path] : [];
  });
}

const files = sourceFiles(root).map((path) => relative(root, path));
const known = new Set(files);

/** Module specifiers a file imports or re-exports, statically or lazily, and worker URLs. */
function importsOf(file: string): string[] {
  const text = readFileSync(join(root, file), 'utf8').replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '');
  const patterns = [
    /\b(?:import|export)\s[^'"`;]*?\bfrom\s*['"]([^'"]+)['"]/g,
    /\bimport\s*['"]([^'"]+)['"]/g,
    /\bimport\(\s*['"]([^'"]+)['"]\s*\)/g,
    /new URL\(\s*['"](\.[^'"]+)['"]\s*,\s*import\.meta\.url/g,
  ];
  return patterns.flatMap((pattern) => [...text.matchAll(pattern)].map((match) => match[1] as string));
}

function resolve(file: string, specifier: string): string | null {
  const base = normalize(join(dirname(file), specifier));
  const candidates = [base, `${base}.ts`, `${base}.tsx`, join(base, 'index.ts'), join(base, 'index.tsx')];
  return candidates.find((path) => known.has(path)) ?? null;
}

/** The room of the house a file stands in: its top folder, or its own name at the top of src. */
const roomOf = (file: string) =>
  file.includes('/') ? (file.split('/')[0] as string) : file.replace(/\.tsx?$/, '');

const lineCount = (file: string) => readFileSync(join(root, file), 'utf8').split('\n').length;

/** Each room and the rooms it may import from (besides itself). */
const mayImport: Record<string, readonly string[]> = {
  core: [],
  steps: ['core'],
  pipeline: ['core', 'steps'],
  jobs: ['core', 'pipeline'],
  ui: ['core'],
  workbook: ['core', 'steps', 'jobs'],
  viewer: ['core', 'pipeline', 'ui'],
  checklist: ['core', 'steps', 'ui'],
  sheets: ['core', 'steps', 'pipeline', 'jobs', 'ui', 'viewer', 'workbook', 'checklist'],
  app: ['core', 'steps', 'pipeline', 'jobs', 'ui', 'viewer', 'workbook', 'checklist', 'sheets'],
  report: ['core', 'steps', 'pipeline', 'checklist', 'workbook'],
  compileKernel: [],
};

/** core computes; these kept libraries are all it may lean on. */
const corePackages = ['fflate', 'earcut', 'meshoptimizer', 'manifold-3d'];

describe('the house', () => {
  it('has only the rooms of the map', () => {
    expect([...new Set(files.map(roomOf))].filter((room) => !(room in mayImport))).toEqual([]);
  });

  it('resolves every relative import of a source file', () => {
    const lost = files.flatMap((file) =>
      importsOf(file)
        .filter((specifier) => specifier.startsWith('.') && !/\.(css|svg|json|wasm)(\?.*)?$/.test(specifier))
        .filter((specifier) => resolve(file, specifier) === null)
        .map((specifier) => `${file} -> ${specifier}`),
    );
    expect(lost).toEqual([]);
  });

  it('lets arrows run one way only, room to room', () => {
    const wrong = files.flatMap((file) =>
      importsOf(file).flatMap((specifier) => {
        const target = specifier.startsWith('.') ? resolve(file, specifier) : null;
        if (target === null) return [];
        const [from, to] = [roomOf(file), roomOf(target)];
        return from === to || mayImport[from]?.includes(to) ? [] : [`${file} -> ${target}`];
      }),
    );
    expect(wrong).toEqual([]);
  });

  it('lets the report work out nothing of its own: what is known of a mesh comes through the pipeline', () => {
    const wrong = files
      .filter((file) => roomOf(file) === 'report')
      .flatMap((file) =>
        importsOf(file)
          .filter((specifier) => resolve(file, specifier)?.startsWith(join('core', 'mesh')) === true)
          .map((specifier) => `${file} -> ${specifier}`),
      );
    expect(wrong).toEqual([]);
  });

  it('keeps core plain: no React, three, DOM, clock, random or storage, and only the named libraries', () => {
    const wrong = files
      .filter((file) => roomOf(file) === 'core')
      .flatMap((file) => {
        const packages = importsOf(file).filter(
          (specifier) =>
            !specifier.startsWith('.') && !corePackages.includes(specifier.split('/')[0] as string),
        );
        const text = readFileSync(join(root, file), 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');
        const reach =
          text.match(
            /\b(?:document\.|window\.|localStorage|sessionStorage|Date\.now|new Date|performance\.now|Math\.random|crypto\.|fetch\(|setTimeout|process\.)/g,
          ) ?? [];
        return [...packages, ...reach].map((what) => `${file}: ${what}`);
      });
    expect(wrong).toEqual([]);
  });

  it('has no import circles', () => {
    const graph = new Map(
      files.map((file) => [
        file,
        importsOf(file)
          .filter((specifier) => specifier.startsWith('.'))
          .map((specifier) => resolve(file, specifier))
          .filter((target): target is string => target !== null),
      ]),
    );
    const circles: string[] = [];
    const state = new Map<string, 'open' | 'done'>();
    const visit = (file: string, trail: readonly string[]): void => {
      if (state.get(file) === 'done') return;
      if (state.get(file) === 'open') {
        circles.push([...trail.slice(trail.indexOf(file)), file].join(' -> '));
        return;
      }
      state.set(file, 'open');
      for (const target of graph.get(file) ?? []) visit(target, [...trail, file]);
      state.set(file, 'done');
    };
    for (const file of files) visit(file, []);
    expect(circles).toEqual([]);
  });

  it('never reaches for the network or runs text as code', () => {
    const wrong = files.flatMap((file) => {
      const text = readFileSync(join(root, file), 'utf8');
      const found =
        text.match(/\b(?:fetch\(|XMLHttpRequest|WebSocket|EventSource|sendBeacon|eval\(|new Function)/g) ??
        [];
      return found.map((what) => `${file}: ${what}`);
    });
    expect(wrong).toEqual([]);
  });

  it('keeps files small enough to hold one idea', () => {
    const tooLong = files
      .filter((file) => lineCount(file) > 400)
      .map((file) => `${file}: ${lineCount(file)}`);
    expect(tooLong).toEqual([]);
  });
});
