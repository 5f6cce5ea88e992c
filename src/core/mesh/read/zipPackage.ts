import { inflateSteps } from '../../inflateSteps';
import { Problem } from '../../problem';
import { limits } from '../limits';

interface Entry {
  readonly method: number;
  readonly packedBytes: number;
  readonly headerAt: number;
}

const endSignature = 0x06054b50;
const entrySignature = 0x02014b50;
const localSignature = 0x04034b50;
const zip64EndLocator = 0x07064b50;
/** The end record is at most this far from the end of the file: its own 22 bytes and a comment. */
const longestEndRecord = 22 + 0xffff;
/** A part that grows more than this is not a drawing but a trap; drawings grow 5 to 20 times. */
const mostGrowth = 100;
const growthWatchedFrom = 16 << 20;

const damaged = (what: string) =>
  new Problem('3mf.damaged', `The 3MF package is damaged: ${what}. Copy or export the file again.`);

/**
 * The parts of a zip package (ZIP application note, sections 4.3 and 4.5). Sizes that the package declares are not
 * believed: unpacking stops as soon as the limit is passed, whatever was declared.
 */
export class ZipPackage {
  private readonly entries = new Map<string, Entry>();
  private unpackedBytes = 0;
  private readonly view: DataView;

  constructor(private readonly bytes: Uint8Array) {
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    try {
      this.readDirectory();
    } catch (error) {
      if (error instanceof RangeError) throw damaged('its directory points outside the file');
      throw error;
    }
  }

  /** Names of all parts, as the package writes them. */
  names(): string[] {
    return [...this.entries.keys()];
  }

  /** The unpacked part, or null when there is none of that name (upper and lower case count as the same). */
  read(name: string): Uint8Array | null {
    const key = this.names().find((known) => known.toLowerCase() === name.toLowerCase());
    const entry = key === undefined ? undefined : this.entries.get(key);
    if (entry === undefined) return null;
    const { view, bytes } = this;
    const at = entry.headerAt;
    if (at + 30 > bytes.length || view.getUint32(at, true) !== localSignature) {
      throw damaged(`the part ${name} is missing`);
    }
    const start = at + 30 + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
    const end = start + entry.packedBytes;
    if (end > bytes.length) throw damaged(`the part ${name} is cut off`);
    const packed = bytes.subarray(start, end);
    if (entry.method === 0) {
      this.count(packed.length, packed.length);
      return packed;
    }
    if (entry.method !== 8) throw damaged(`the part ${name} is packed in a way that 3MF does not use`);
    return this.inflate(name, packed);
  }

  private inflate(name: string, packed: Uint8Array): Uint8Array {
    let whole: Uint8Array | null;
    try {
      whole = inflateSteps(packed, (added, partBytes) => this.count(added, packed.length, partBytes));
    } catch (error) {
      if (error instanceof Problem) throw error;
      throw damaged(`the part ${name} cannot be unpacked`);
    }
    if (whole === null) throw damaged(`the part ${name} is cut off`);
    return whole;
  }

  /** Adds to the running total and stops when the package unpacks to more than it may. */
  private count(added: number, packedBytes: number, partBytes = added): void {
    this.unpackedBytes += added;
    const grownTooMuch = partBytes > growthWatchedFrom && partBytes > mostGrowth * packedBytes;
    if (this.unpackedBytes <= limits.unpackedBytes && !grownTooMuch) return;
    throw new Problem(
      '3mf.tooLarge',
      `The 3MF package unpacks to far more than a drawing holds, so it was not opened. Export it with a coarser mesh, or as binary STL.`,
    );
  }

  private readDirectory(): void {
    const { bytes, view } = this;
    let end = bytes.length - 22;
    const least = Math.max(0, bytes.length - longestEndRecord);
    while (end >= least && view.getUint32(end, true) !== endSignature) end--;
    if (end < least) throw damaged('its directory is missing, so the file was probably cut off');
    let count = view.getUint16(end + 10, true);
    let at = view.getUint32(end + 16, true);
    if (end >= 20 && view.getUint32(end - 20, true) === zip64EndLocator) {
      const wideEnd = Number(view.getBigUint64(end - 12, true));
      count = Number(view.getBigUint64(wideEnd + 32, true));
      at = Number(view.getBigUint64(wideEnd + 48, true));
    }
    const names = new TextDecoder();
    for (let i = 0; i < count; i++) {
      if (view.getUint32(at, true) !== entrySignature) throw damaged('its directory cannot be read');
      if ((view.getUint16(at + 8, true) & 1) === 1) {
        throw new Problem(
          '3mf.locked',
          'The 3MF package is protected with a password. Export it again without one.',
        );
      }
      const nameBytes = view.getUint16(at + 28, true);
      const extraBytes = view.getUint16(at + 30, true);
      const name = names.decode(bytes.subarray(at + 46, at + 46 + nameBytes)).replaceAll('\\', '/');
      const wide = this.wideSizes(at, at + 46 + nameBytes, extraBytes);
      this.entries.set(name.replace(/^\//, ''), { method: view.getUint16(at + 10, true), ...wide });
      at += 46 + nameBytes + extraBytes + view.getUint16(at + 32, true);
    }
  }

  /** Packed size and place of an entry; 32-bit fields full of ones are found in the zip64 extra field instead. */
  private wideSizes(
    at: number,
    extraAt: number,
    extraBytes: number,
  ): { packedBytes: number; headerAt: number } {
    const { view } = this;
    const full = 0xffffffff;
    let packedBytes = view.getUint32(at + 20, true);
    let headerAt = view.getUint32(at + 42, true);
    for (
      let field = extraAt;
      field + 4 <= extraAt + extraBytes;
      field += 4 + view.getUint16(field + 2, true)
    ) {
      if (view.getUint16(field, true) !== 1) continue;
      let value = field + 4;
      if (view.getUint32(at + 24, true) === full) value += 8;
      if (packedBytes === full) {
        packedBytes = Number(view.getBigUint64(value, true));
        value += 8;
      }
      if (headerAt === full) headerAt = Number(view.getBigUint64(value, true));
    }
    return { packedBytes, headerAt };
  }
}
