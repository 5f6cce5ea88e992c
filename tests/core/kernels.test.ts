import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { kernelModuleText, kernels, kernelTextPath } from '../../src/compileKernel';
import { kernelMemory, kernelModule } from '../../src/core/numeric/kernelModule';
import { failureOf } from '../../src/jobs/failureOf';

afterEach(() => vi.unstubAllGlobals());

it.each(kernels)(
  '$what in core is compiled from the AssemblyScript beside it',
  (kernel) => {
    expect(kernelModuleText(kernel)).toBe(readFileSync(kernelTextPath(kernel), 'utf8'));
  },
  60_000,
);

describe('a platform that cannot run the kernels', () => {
  const emptyModule = 'AGFzbQEAAAA=';
  const saysSo = expect.objectContaining({
    code: 'platform.vectors',
    message: expect.stringMatching(/WebAssembly.*128-bit vectors.*open the workbook in a current browser/),
  });

  it('is told what it lacks, and what to do', () => {
    const notKnown = btoa(`${atob(emptyModule)}\u00ff`);
    expect(() => kernelModule(notKnown)()).toThrow(saysSo);
    expect(kernelModule(emptyModule)()).toBeInstanceOf(WebAssembly.Module);
    vi.stubGlobal('WebAssembly', undefined);
    expect(() => kernelModule(emptyModule)()).toThrow(saysSo);
  });

  it('without memory left says the same as for any other array', () => {
    // More than 32-bit addresses reach.
    expect(() => kernelMemory(2 ** 40)).toThrow(RangeError);
    let failure: unknown;
    try {
      kernelMemory(2 ** 40);
    } catch (error) {
      failure = failureOf(error);
    }
    expect(failure).toMatchObject({ code: 'job.memory' });
  });
});
