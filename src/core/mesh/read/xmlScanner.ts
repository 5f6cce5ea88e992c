import { Problem } from '../../problem';
import { DecimalReader } from './decimalReader';

const less = 0x3c;
const greater = 0x3e;
const slash = 0x2f;
const equals = 0x3d;
const colon = 0x3a;
const doubleQuote = 0x22;
const singleQuote = 0x27;

const broken = (what: string) =>
  new Problem('3mf.badXml', `The drawing inside the 3MF package cannot be read: ${what}. Export it again.`);

/**
 * Walks over the tags of an XML document held as bytes (UTF-8) without building anything; text between tags is passed
 * over. Names are given without their prefix. Made for lists of millions of small elements: a general parser that
 * makes strings and events for each attribute took several times as long.
 */
export class XmlScanner {
  /** Current tag. */
  name = '';
  isEnd = false;
  /** `<a/>`: no end tag follows. */
  isSelfClosed = false;

  private at: number;
  private readonly open: string[] = [];
  private readonly decimals = new DecimalReader();
  /** Per attribute of the current tag: name start, name end, value start, value end. */
  private attributes = new Int32Array(4 * 16);
  private attributeCount = 0;
  private readonly text = new TextDecoder();
  private readonly knownNames = new Map<number, string[]>();

  constructor(private readonly bytes: Uint8Array) {
    // A byte order mark may stand first.
    this.at = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  }

  /** Number of elements around the current place, the current start tag included. */
  get depth(): number {
    return this.open.length;
  }

  get offset(): number {
    return this.at;
  }

  /** Moves to the next start or end tag; false at the end of the document. */
  next(): boolean {
    const { bytes } = this;
    if (this.isSelfClosed && !this.isEnd) this.open.pop();
    this.isSelfClosed = false;
    for (;;) {
      const tag = bytes.indexOf(less, this.at);
      if (tag === -1) {
        if (this.open.length > 0) throw broken(`it ends inside <${this.open.at(-1)}>`);
        return false;
      }
      const kind = bytes[tag + 1];
      if (kind === 0x3f) this.at = this.after('?>', tag + 2);
      else if (kind === 0x21) this.skipDeclaration(tag);
      else {
        this.readTag(tag);
        return true;
      }
    }
  }

  /** A number attribute of the current tag; NaN when it is missing or not a number. */
  number(name: string): number {
    const attribute = this.find(name);
    if (attribute === -1) return NaN;
    return this.decimals.read(this.bytes, this.attributes[attribute + 2]!, this.attributes[attribute + 3]!);
  }

  /** A text attribute of the current tag, or null. */
  string(name: string): string | null {
    const attribute = this.find(name);
    if (attribute === -1) return null;
    const value = this.text.decode(
      this.bytes.subarray(this.attributes[attribute + 2], this.attributes[attribute + 3]),
    );
    if (!value.includes('&')) return value;
    return value
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&quot;', '"')
      .replaceAll('&apos;', "'")
      .replaceAll('&amp;', '&');
  }

  /** Offset of the attribute in `attributes`, -1 when the tag has none of that name (prefix left out). */
  private find(name: string): number {
    for (let attribute = 0; attribute < 4 * this.attributeCount; attribute += 4) {
      const start = this.attributes[attribute]!;
      if (this.attributes[attribute + 1]! - start !== name.length) continue;
      let same = true;
      for (let i = 0; i < name.length && same; i++) same = this.bytes[start + i] === name.charCodeAt(i);
      if (same) return attribute;
    }
    return -1;
  }

  private readTag(tag: number): void {
    const { bytes } = this;
    let at = tag + 1;
    this.isEnd = bytes[at] === slash;
    if (this.isEnd) at++;
    const nameStart = at;
    let localStart = at;
    while (at < bytes.length && isNameByte(bytes[at]!)) if (bytes[at++] === colon) localStart = at;
    if (at === nameStart) throw broken('a "<" stands where no tag begins');
    this.name = this.nameOf(localStart, at);
    this.attributeCount = 0;
    for (;;) {
      while (at < bytes.length && bytes[at]! <= 0x20) at++;
      if (at >= bytes.length) throw broken(`it ends inside <${this.name}>`);
      if (bytes[at] === greater) break;
      if (bytes[at] === slash && bytes[at + 1] === greater && !this.isEnd) {
        this.isSelfClosed = true;
        at++;
        break;
      }
      at = this.readAttribute(at);
    }
    this.at = at + 1;
    if (this.isEnd) {
      if (this.open.pop() !== this.name) throw broken(`</${this.name}> closes a tag that is not open`);
    } else {
      if (this.open.length > 256) throw broken('its tags are nested too deeply');
      this.open.push(this.name);
    }
  }

  private readAttribute(from: number): number {
    const { bytes } = this;
    let at = from;
    let localStart = at;
    while (at < bytes.length && isNameByte(bytes[at]!)) if (bytes[at++] === colon) localStart = at;
    const nameEnd = at;
    while (at < bytes.length && bytes[at]! <= 0x20) at++;
    if (nameEnd === from || bytes[at] !== equals)
      throw broken(`<${this.name}> has an attribute without value`);
    at++;
    while (at < bytes.length && bytes[at]! <= 0x20) at++;
    const quote = bytes[at]!;
    if (quote !== doubleQuote && quote !== singleQuote) {
      throw broken(`<${this.name}> has an attribute without quotes`);
    }
    const valueStart = ++at;
    while (at < bytes.length && bytes[at] !== quote) at++;
    if (at >= bytes.length) throw broken(`it ends inside <${this.name}>`);
    const slot = 4 * this.attributeCount++;
    if (slot + 4 > this.attributes.length) {
      const larger = new Int32Array(2 * this.attributes.length);
      larger.set(this.attributes);
      this.attributes = larger;
    }
    this.attributes[slot] = localStart;
    this.attributes[slot + 1] = nameEnd;
    this.attributes[slot + 2] = valueStart;
    this.attributes[slot + 3] = at;
    return at + 1;
  }

  /** Names repeat by the million: compared with those already met, so that no string is made again. */
  private nameOf(start: number, end: number): string {
    const { bytes } = this;
    const key = ((end - start) << 16) | (bytes[start]! << 8) | bytes[end - 1]!;
    const known = this.knownNames.get(key) ?? [];
    for (const name of known) {
      let same = true;
      for (let i = 0; i < name.length && same; i++) same = bytes[start + i] === name.charCodeAt(i);
      if (same) return name;
    }
    const name = this.text.decode(bytes.subarray(start, end));
    this.knownNames.set(key, [...known, name].slice(-8));
    return name;
  }

  private skipDeclaration(tag: number): void {
    const { bytes } = this;
    if (bytes[tag + 2] === 0x2d && bytes[tag + 3] === 0x2d) {
      this.at = this.after('-->', tag + 4);
    } else if (bytes[tag + 2] === 0x5b) {
      this.at = this.after(']]>', tag + 3);
    } else {
      // Definitions can make a short text stand for an endless one, and 3MF forbids them.
      throw new Problem(
        '3mf.definitions',
        'The drawing inside the 3MF package holds text definitions (DOCTYPE), which the format forbids because they can hide a trap. It was not opened; export the part again.',
      );
    }
  }

  private after(mark: string, from: number): number {
    const last = mark.charCodeAt(mark.length - 1);
    for (let at = this.bytes.indexOf(last, from); at !== -1; at = this.bytes.indexOf(last, at + 1)) {
      let same = at - mark.length + 1 >= from;
      for (let i = 0; i < mark.length && same; i++) {
        same = this.bytes[at - mark.length + 1 + i] === mark.charCodeAt(i);
      }
      if (same) return at + 1;
    }
    throw broken('a comment or instruction has no end');
  }
}

/** Everything but blanks and the marks that end a name. */
function isNameByte(byte: number): boolean {
  return byte > 0x20 && byte !== equals && byte !== greater && byte !== slash && byte !== less;
}
