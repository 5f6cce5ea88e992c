/** The source files as text, for the tests that read imports and exports. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

/** Every TypeScript file under a folder. */
export function sourceFiles(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return sourceFiles(path);
    return /\.tsx?$/.test(name) ? [path] : [];
  });
}

/** Its text without comments. */
export const codeOf = (path: string): string =>
  readFileSync(path, 'utf8').replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '');

/** The file among `known` that a relative specifier in `file` means; null for none. */
export function resolveImport(known: ReadonlySet<string>, file: string, specifier: string): string | null {
  const base = normalize(join(dirname(file), specifier));
  const candidates = [base, `${base}.ts`, `${base}.tsx`, join(base, 'index.ts'), join(base, 'index.tsx')];
  return candidates.find((path) => known.has(path)) ?? null;
}
