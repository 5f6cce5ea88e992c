/**
 * A kernel's WebAssembly module from the text that core carries, compiled once per thread. Null without WebAssembly or its
 * 128-bit vectors, or where the page's policy forbids it: then the TypeScript beside the kernel works, to the same figures.
 */
export function kernelModule(base64: string): () => WebAssembly.Module | null {
  let compiled: WebAssembly.Module | null | undefined;
  return () => {
    if (compiled !== undefined) return compiled;
    compiled = null;
    if (typeof WebAssembly === 'undefined') return compiled;
    const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
    try {
      if (WebAssembly.validate(bytes)) compiled = new WebAssembly.Module(bytes);
    } catch {
      // Stays null.
    }
    return compiled;
  };
}
