import { Problem } from '../problem';

const pageBytes = 65_536;

/**
 * A kernel's WebAssembly module from the text that core carries, compiled once per thread.
 * @throws Problem `platform.vectors` without WebAssembly or its 128-bit vectors, or where the page's policy forbids it
 */
export function kernelModule(base64: string): () => WebAssembly.Module {
  let compiled: WebAssembly.Module | undefined;
  return () => (compiled ??= compile(base64));
}

function compile(base64: string): WebAssembly.Module {
  try {
    return new WebAssembly.Module(Uint8Array.from(atob(base64), (character) => character.charCodeAt(0)));
  } catch {
    throw new Problem(
      'platform.vectors',
      'Walls and oven are worked out with WebAssembly and its 128-bit vectors (SIMD), which this browser lacks or has switched off: open the workbook in a current browser, or allow WebAssembly for this page.',
    );
  }
}

/**
 * Memory for a kernel, all zeros.
 * @throws RangeError where there is none, in words that are known for that; those of the engines differ
 */
export function kernelMemory(bytes: number): WebAssembly.Memory {
  try {
    return new WebAssembly.Memory({ initial: Math.ceil(bytes / pageBytes) });
  } catch {
    throw new RangeError('out of memory');
  }
}
