/** Text of a log file: UTF-8, or the UTF-16 that spreadsheets write as "Unicode text". */
export async function logText(file: Blob): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  return new TextDecoder(encodingOf(bytes)).decode(bytes);
}

/** By the mark at the start, or by the zero byte beside each plain letter. */
function encodingOf(bytes: Uint8Array): 'utf-8' | 'utf-16le' | 'utf-16be' {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first !== 0 && second === 0)) return 'utf-16le';
  if ((first === 0xfe && second === 0xff) || (first === 0 && second !== 0)) return 'utf-16be';
  return 'utf-8';
}
