/** What the workbook needs of a browser beyond what it takes to open the page at all. */

interface Need {
  readonly what: string;
  readonly isThere: () => boolean;
}

/** A browser that knows module workers asks for the worker's type; the address is invalid, so that none is started. */
function knowsModuleWorkers(): boolean {
  let asked = false;
  const options = {
    get type(): WorkerType {
      asked = true;
      return 'module';
    },
  };
  try {
    new Worker('https://:', options).terminate();
  } catch {
    // An invalid address is refused in every browser.
  }
  return asked;
}

/** A module of one function that sets all lanes of a 128-bit vector. */
const vectorModule = Uint8Array.from(
  [
    [0, 97, 115, 109, 1, 0, 0, 0], // magic and version
    [1, 5, 1, 96, 0, 1, 123], // type: nothing to v128
    [3, 2, 1, 0], // function of that type
    [10, 8, 1, 6, 0, 65, 0, 253, 15, 11], // i32.const 0, i8x16.splat
  ].flat(),
);

const isFunction = (value: unknown) => typeof value === 'function';

const needs: readonly Need[] = [
  { what: 'WebAssembly', isThere: () => typeof WebAssembly === 'object' },
  {
    what: 'the 128-bit vectors of WebAssembly (SIMD), by which walls and oven are worked out',
    isThere: () => typeof WebAssembly !== 'object' || WebAssembly.validate(vectorModule),
  },
  { what: 'web workers', isThere: () => typeof Worker !== 'undefined' },
  { what: 'module workers', isThere: () => typeof Worker === 'undefined' || knowsModuleWorkers() },
  {
    what: 'functions of JavaScript of 2022 and 2023 (Array.prototype.at, toSorted, findLast, Object.hasOwn, structuredClone)',
    isThere: () =>
      [
        Reflect.get(Array.prototype, 'at'),
        Reflect.get(Array.prototype, 'toSorted'),
        Reflect.get(Array.prototype, 'findLast'),
        Reflect.get(Object, 'hasOwn'),
        Reflect.get(globalThis, 'structuredClone'),
      ].every(isFunction),
  },
];

/** What this browser lacks, in words; none when the workbook can run. */
export function missingInBrowser(): readonly string[] {
  return needs.filter(({ isThere }) => !isThere()).map(({ what }) => what);
}
