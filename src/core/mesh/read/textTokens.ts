const space = 0x20;
const lineFeed = 0x0a;
const carriageReturn = 0x0d;

export const isLineEnd = (byte: number) => byte === lineFeed || byte === carriageReturn;

/** Walks over the words of a text held as bytes, whatever its line ends. Nothing is copied. */
export class TextTokens {
  /** First byte of the current word and the one after its last; equal at the end of the text. */
  start = 0;
  end = 0;

  constructor(
    readonly bytes: Uint8Array,
    from = 0,
  ) {
    this.end = from;
  }

  /** Moves to the next word; false at the end of the text. */
  next(): boolean {
    const { bytes } = this;
    let at = this.end;
    while (at < bytes.length && bytes[at]! <= space) at++;
    this.start = at;
    while (at < bytes.length && bytes[at]! > space) at++;
    this.end = at;
    return this.start < at;
  }

  /** True when the current word is `word` (given in lower case), in any case. */
  is(word: string): boolean {
    return wordIs(this.bytes, this.start, this.end, word);
  }
}

/** Case-blind comparison of bytes with a lower-case word of letters. */
export function wordIs(bytes: Uint8Array, start: number, end: number, word: string): boolean {
  if (end - start !== word.length) return false;
  for (let i = 0; i < word.length; i++) if ((bytes[start + i]! | 0x20) !== word.charCodeAt(i)) return false;
  return true;
}

/** 1-based line of an offset, counting LF, CR and CR LF as one line end each. */
export function lineAt(bytes: Uint8Array, offset: number): number {
  let line = 1;
  for (let at = 0; at < offset; at++) {
    if (bytes[at] === lineFeed || (bytes[at] === carriageReturn && bytes[at + 1] !== lineFeed)) line++;
  }
  return line;
}
