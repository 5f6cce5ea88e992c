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

const isFunction = (value: unknown) => typeof value === 'function';

const needs: readonly Need[] = [
  { what: 'WebAssembly', isThere: () => typeof WebAssembly === 'object' },
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
