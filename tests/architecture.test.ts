/**
 * The house rules, proved from the imports themselves: which folder may know which, that core stays plain, that
 * nothing goes in circles, and that nothing in the app reaches for the network.
 */
import { readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { steps } from '../src/steps/registry';
import { codeOf, resolveImport, sourceFiles } from './support/sources';

const root = join(import.meta.dirname, '..', 'src');

const files = sourceFiles(root).map((path) => relative(root, path));
const known = new Set(files);

const workerEntry = /new URL\(\s*['"](\.[^'"]+)['"]\s*,\s*import\.meta\.url/g;
const importPatterns = [
  /\b(?:import|export)\s[^'"`;]*?\bfrom\s*['"]([^'"]+)['"]/g,
  /\bimport\s*['"]([^'"]+)['"]/g,
  /\bimport\(\s*['"]([^'"]+)['"]\s*\)/g,
  workerEntry,
];
const inOrder = (a: string, b: string) => (a < b ? -1 : 1);

/** Module specifiers a file imports or re-exports, statically or lazily, and worker URLs. */
function importsOf(file: string, patterns: readonly RegExp[] = importPatterns): string[] {
  const text = codeOf(join(root, file));
  return patterns.flatMap((pattern) => [...text.matchAll(pattern)].map((match) => match[1] as string));
}

const resolve = (file: string, specifier: string) => resolveImport(known, file, specifier);

/** Every import of one of our files by another. */
const arrows = files.flatMap((from) =>
  importsOf(from).flatMap((specifier) => {
    const to = specifier.startsWith('.') ? resolve(from, specifier) : null;
    return to === null ? [] : [{ from, to }];
  }),
);
const told = ({ from, to }: (typeof arrows)[number]) => `${from} -> ${to}`;

/** Ways through the graph that come back to where they began. */
function circlesIn(graph: ReadonlyMap<string, readonly string[]>): string[] {
  const circles: string[] = [];
  const state = new Map<string, 'open' | 'done'>();
  const visit = (node: string, trail: readonly string[]): void => {
    if (state.get(node) === 'done') return;
    if (state.get(node) === 'open') {
      circles.push([...trail.slice(trail.indexOf(node)), node].join(' -> '));
      return;
    }
    state.set(node, 'open');
    for (const next of graph.get(node) ?? []) visit(next, [...trail, node]);
    state.set(node, 'done');
  };
  for (const node of graph.keys()) visit(node, []);
  return circles;
}

/** The room of the house a file stands in: its top folder, or its own name at the top of src. */
const roomOf = (file: string) =>
  file.includes('/') ? (file.split('/')[0] as string) : file.replace(/\.tsx?$/, '');

const lineCount = (file: string) => readFileSync(join(root, file), 'utf8').split('\n').length;

/** Each room and the rooms it may import from (besides itself). */
const mayImport: Record<string, readonly string[]> = {
  core: [],
  steps: ['core'],
  pipeline: ['core', 'steps', 'paper'],
  jobs: ['core', 'pipeline'],
  ui: ['core'],
  workbook: ['core', 'steps'],
  viewer: ['core', 'pipeline', 'ui'],
  checklist: ['core', 'steps', 'ui'],
  // Drawings of core as files.
  paper: ['core'],
  sheets: ['core', 'steps', 'pipeline', 'jobs', 'ui', 'viewer', 'workbook', 'checklist', 'paper'],
  app: ['core', 'steps', 'pipeline', 'jobs', 'ui', 'viewer', 'workbook', 'checklist', 'paper', 'sheets'],
  report: ['core', 'steps', 'pipeline', 'checklist', 'paper', 'workbook'],
  compileKernel: [],
  // Declarations of what every runtime has.
  types: [],
};

/**
 * The folders inside steps, lowest first: the kit (rows of a table, figures), the tables of inputs, what all steps share,
 * the poured stone and the closed mold that more than one step asks about, then the steps in the order of the work, and
 * the registry in the folder of them all. Each knows only those before it.
 */
const foldersOfSteps = [
  'kit',
  'inputs',
  'shared',
  'stone',
  'closedMold',
  ...steps.map(({ id }) => id),
  'bench',
  '.',
];

const floorInSteps = (file: string) => foldersOfSteps.indexOf(dirname(file).replace(/^steps\/?/, '') || '.');

/** The folder of a file in core; a kernel belongs to the folder that calls it. */
const folderInCore = (file: string) => dirname(file).replace(/\/kernel$/, '');

/** Folders of core that must know nothing of the trade, and what of core they may import. */
const lowFolders: Readonly<Record<string, readonly string[]>> = {
  'core/units': [],
  'core/numeric': ['core'],
  'core/mesh': ['core', 'core/numeric', 'core/units', 'core/mesh'],
  'core/mesh/read': ['core', 'core/numeric', 'core/units', 'core/mesh'],
};

/** core computes; these kept libraries are all it may lean on. */
const corePackages = ['fflate', 'earcut', 'meshoptimizer', 'manifold-3d', '@noble/hashes'];

/** The package of an import, with its scope. */
const packageOf = (specifier: string) =>
  specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');

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
    const wrong = arrows.filter(({ from, to }) => {
      const [own, other] = [roomOf(from), roomOf(to)];
      return own !== other && !mayImport[own]?.includes(other);
    });
    expect(wrong.map(told)).toEqual([]);
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
          (specifier) => !specifier.startsWith('.') && !corePackages.includes(packageOf(specifier)),
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

  it('lets arrows run one way only inside steps', () => {
    const inSteps = arrows.filter(({ from, to }) => roomOf(from) === 'steps' && roomOf(to) === 'steps');
    expect(files.filter((file) => roomOf(file) === 'steps' && floorInSteps(file) < 0)).toEqual([]);
    expect(inSteps.filter(({ from, to }) => floorInSteps(to) > floorInSteps(from)).map(told)).toEqual([]);
  });

  it('lets arrows run one way only from folder to folder inside core', () => {
    const between = arrows
      .filter(({ from, to }) => roomOf(from) === 'core' && roomOf(to) === 'core')
      .map((arrow) => ({ ...arrow, fromFolder: folderInCore(arrow.from), toFolder: folderInCore(arrow.to) }))
      .filter(({ fromFolder, toFolder }) => fromFolder !== toFolder);
    const wrong = between.filter(
      ({ fromFolder, toFolder }) => !(lowFolders[fromFolder]?.includes(toFolder) ?? true),
    );
    expect(wrong.map(told)).toEqual([]);
    const graph = new Map<string, string[]>();
    for (const { fromFolder, toFolder } of between)
      graph.set(fromFolder, [...(graph.get(fromFolder) ?? []), toFolder]);
    expect(circlesIn(graph)).toEqual([]);
  });

  it('has no import circles', () => {
    const graph = new Map(
      files.map((file) => [file, arrows.filter(({ from }) => from === file).map(({ to }) => to)]),
    );
    expect(circlesIn(graph)).toEqual([]);
  });

  it('compiles each runtime with what that runtime has: core without page or worker, every worker without the page', () => {
    const config = (name: string) =>
      JSON.parse(readFileSync(join(root, `tsconfig.${name}.json`), 'utf8')) as {
        readonly compilerOptions: { readonly lib: readonly string[]; readonly types: readonly string[] };
        readonly include: readonly string[];
      };
    const [core, worker] = [config('core'), config('worker')];
    expect([...core.compilerOptions.lib, ...core.compilerOptions.types]).toEqual(['ES2023']);
    expect(worker.compilerOptions.lib.filter((name) => name.startsWith('DOM'))).toEqual([]);
    const started = files.flatMap((file) =>
      importsOf(file, [workerEntry]).map((entry) => `./${join(dirname(file), entry)}`),
    );
    expect(worker.include.filter((file) => !file.startsWith('./types/')).sort(inOrder)).toEqual(
      started.sort(inOrder),
    );
    const scripts = (
      JSON.parse(readFileSync(join(root, '..', 'package.json'), 'utf8')) as {
        readonly scripts: Readonly<Record<string, string>>;
      }
    ).scripts;
    for (const name of ['core', 'worker', 'page', 'node'])
      expect(scripts['check:types']).toContain(`tsc -p src/tsconfig.${name}.json`);
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
