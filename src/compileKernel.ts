/** `npm run kernel`: compiles the AssemblyScript of the walls kernel into the module that core carries as text. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';

const folder = join(import.meta.dirname, 'core/mesh/kernel');
const flags = ['-O3', '--runtime', 'stub', '--enable', 'simd', '--importMemory', '--noAssert'];

/** The compiler's own command: importing it would bring its global types along, which are not those of TypeScript. */
function compilerPath(): string {
  const facts = createRequire(import.meta.url).resolve('assemblyscript/package.json');
  return join(dirname(facts), 'bin/asc.js');
}

/** The text of `wallKernelBytes.ts` for the AssemblyScript as it stands. */
export function kernelModuleText(): string {
  const scratch = mkdtempSync(join(tmpdir(), 'workbook-kernel-'));
  try {
    const compiled = join(scratch, 'kernel.wasm');
    execFileSync(process.execPath, [compilerPath(), 'index.ts', ...flags, '--outFile', compiled], {
      cwd: join(folder, 'assembly'),
      stdio: 'pipe',
    });
    return [
      '/** The walls kernel, compiled from assembly/ by `npm run kernel`; a test holds the two together. */',
      `export const wallKernelBase64 =\n  '${readFileSync(compiled).toString('base64')}';\n`,
    ].join('\n');
  } finally {
    rmSync(scratch, { recursive: true });
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  writeFileSync(join(folder, 'wallKernelBytes.ts'), kernelModuleText());
}
