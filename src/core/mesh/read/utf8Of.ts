/** The same text as UTF-8: files that begin with a UTF-16 byte order mark are decoded, others stay as they are. */
export function utf8Of(bytes: Uint8Array): Uint8Array {
  const encoding =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? 'utf-16le'
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? 'utf-16be'
        : null;
  if (encoding === null) return bytes;
  return new TextEncoder().encode(new TextDecoder(encoding).decode(bytes));
}
