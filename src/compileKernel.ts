/** `npm run kernel`: compiles the AssemblyScript of the kernels into the modules that core carries as text. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** Folder in core, file of the text, name of the constant in it. */
export const kernels = [
  {
    folder: 'core/mesh/kernel',
    file: 'wallKernelBytes.ts',
    name: 'wallKernelBase64',
    what: 'The walls kernel',
  },
  {
    folder: 'core/cure/kernel',
    file: 'heatKernelBytes.ts',
    name: 'heatKernelBase64',
    what: 'The heat kernel',
  },
] as const;

export type Kernel = (typeof kernels)[number];

/** Path of the text that core carries. */
export const kernelTextPath = ({ folder, file }: Kernel): string => join(import.meta.dirname, folder, file);

const flags = ['-O3', '--runtime', 'stub', '--enable', 'simd', '--importMemory', '--noAssert'];

/** The compiler's own command: importing it would bring its global types along, which are not those of TypeScript. */
function compilerPath(): string {
  const facts = createRequire(import.meta.url).resolve('assemblyscript/package.json');
  return join(dirname(facts), 'bin/asc.js');
}

/** That text for the AssemblyScript as it stands. */
export function kernelModuleText({ folder, name, what }: Kernel): string {
  const scratch = mkdtempSync(join(tmpdir(), 'workbook-kernel-'));
  try {
    const compiled = join(scratch, 'kernel.wasm');
    execFileSync(process.execPath, [compilerPath(), 'index.ts', ...flags, '--outFile', compiled], {
      cwd: join(import.meta.dirname, folder, 'assembly'),
      stdio: 'pipe',
    });
    return [
      `/** ${what}, compiled from assembly/ by \`npm run kernel\`; a test holds the two together. */`,
      `export const ${name} =\n  '${readFileSync(compiled).toString('base64')}';\n`,
    ].join('\n');
  } finally {
    rmSync(scratch, { recursive: true });
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  for (const kernel of kernels) writeFileSync(kernelTextPath(kernel), kernelModuleText(kernel));
}
