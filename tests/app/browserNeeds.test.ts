import { afterEach, expect, it, vi } from 'vitest';
import { missingInBrowser } from '../../src/app/browserNeeds';

afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

const ofWebAssembly = () => missingInBrowser().filter((what) => what.includes('WebAssembly'));

it('finds WebAssembly and its vectors where they are', () => {
  expect(ofWebAssembly()).toEqual([]);
});

it('names the vectors where an engine stops at their instructions', () => {
  const usual = WebAssembly.validate.bind(WebAssembly);
  const prefixOfVectors = 0xfd;
  vi.spyOn(WebAssembly, 'validate').mockImplementation(
    (bytes) => usual(bytes) && !bytes.includes(prefixOfVectors),
  );
  expect(ofWebAssembly()).toEqual([
    'the 128-bit vectors of WebAssembly (SIMD), by which walls and oven are worked out',
  ]);
});

it('names WebAssembly alone where all of it is missing', () => {
  vi.stubGlobal('WebAssembly', undefined);
  expect(ofWebAssembly()).toEqual(['WebAssembly']);
});
