/** What the kernels use of WebAssembly; browsers, workers and Node all have it, TypeScript tells of it with the DOM only. */
declare namespace WebAssembly {
  type Module = object;
  const Module: new (bytes: Uint8Array) => Module;
  class Instance {
    constructor(module: Module, imports?: Readonly<Record<string, object>>);
    readonly exports: Readonly<Record<string, unknown>>;
  }
  class Memory {
    /** Pages of 64 KiB. */
    constructor(size: { readonly initial: number });
    readonly buffer: ArrayBuffer;
    grow(pages: number): number;
  }
  function validate(bytes: Uint8Array): boolean;
}
