/** Text and bytes, as every runtime has them. */
declare class TextEncoder {
  encode(text: string): Uint8Array<ArrayBuffer>;
}
declare class TextDecoder {
  constructor(label?: string, options?: { readonly fatal?: boolean });
  decode(bytes: Uint8Array): string;
}
declare function atob(base64: string): string;
