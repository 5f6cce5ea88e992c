import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { kernelModuleText, kernels, kernelTextPath } from '../../src/compileKernel';

it.each(kernels)(
  '$what in core is compiled from the AssemblyScript beside it',
  (kernel) => {
    expect(kernelModuleText(kernel)).toBe(readFileSync(kernelTextPath(kernel), 'utf8'));
  },
  60_000,
);
