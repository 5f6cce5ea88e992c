/**
 * What stands before a packed mesh: a readable first line with the format's version, then a fixed block of numbers.
 * Little-endian.
 */
import { isFew } from '../counts';
import { Problem } from '../problem';
import { bytesToUnits, unitsFor, unitsToBytes } from './utf16Bits';
import type { Grid } from './quantize';

export interface PackHeader {
  readonly vertexCount: number;
  readonly facetCount: number;
  readonly grid: Grid;
  readonly bits: number;
  readonly errorFileUnits: number;
  /** Length of what follows the header. */
  readonly payloadBytes: number;
  /** First 4 bytes of the SHA-256 of what follows the header. */
  readonly checksum: number;
}

const packVersion = 1;
const firstWord = 'packed-mesh';
const headerBytes = 64;
/** The grids of all models that the reader takes lie well within these; with any other, places would not be numbers. */
const [leastStepsPerUnit, mostStepsPerUnit] = [1e-12, 1e20] as const;

export function packText(header: PackHeader, payload: Uint8Array): string {
  const bytes = new Uint8Array(headerBytes + payload.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, header.vertexCount, true);
  view.setUint32(4, header.facetCount, true);
  view.setUint32(8, header.bits, true);
  view.setUint32(12, header.payloadBytes, true);
  view.setUint32(16, header.checksum, true);
  view.setFloat64(24, header.grid.stepsPerUnit, true);
  header.grid.origin.forEach((count, axis) => view.setFloat64(32 + 8 * axis, count, true));
  view.setFloat64(56, header.errorFileUnits, true);
  bytes.set(payload, headerBytes);
  return `${firstWord} ${packVersion}\n${bytesToUnits(bytes)}`;
}

/**
 * The header alone is cheap to read: counts and error can be shown without unpacking.
 *
 * @throws Problem `pack.notAMesh`, `pack.newer`, `pack.truncated`, `pack.counts`, `pack.damaged`
 */
export function readPackHeader(packed: string): PackHeader {
  const start = bodyStart(packed);
  if (packed.length - start < unitsFor(headerBytes)) throw truncated();
  const bytes = unitsToBytes(packed.slice(start, start + unitsFor(headerBytes)), 0);
  const view = new DataView(bytes.buffer);
  const header: PackHeader = {
    vertexCount: view.getUint32(0, true),
    facetCount: view.getUint32(4, true),
    bits: view.getUint32(8, true),
    payloadBytes: view.getUint32(12, true),
    checksum: view.getUint32(16, true),
    grid: {
      stepsPerUnit: view.getFloat64(24, true),
      origin: [view.getFloat64(32, true), view.getFloat64(40, true), view.getFloat64(48, true)],
    },
    errorFileUnits: view.getFloat64(56, true),
  };
  const units = packed.length - start;
  const wantedUnits = unitsFor(headerBytes + header.payloadBytes);
  if (units < wantedUnits) throw truncated();
  if (units > wantedUnits)
    throw new Problem('pack.damaged', 'The saved model is damaged: it is longer than it says.');
  checkNumbers(header);
  return header;
}

/** The bytes after the header; `readPackHeader` has passed before. */
export function packPayload(packed: string, header: PackHeader): Uint8Array {
  return unitsToBytes(packed, bodyStart(packed)).subarray(headerBytes, headerBytes + header.payloadBytes);
}

function bodyStart(packed: string): number {
  const line = /^packed-mesh (\d{1,9})\n/.exec(packed);
  if (line === null) throw new Problem('pack.notAMesh', 'This is not a saved model of this workbook.');
  if (Number(line[1]) > packVersion) {
    throw new Problem(
      'pack.newer',
      'The model was saved by a newer version of this workbook. Reload the page to get the newer version, then open it again.',
    );
  }
  return line[0].length;
}

function checkNumbers(header: PackHeader): void {
  const { vertexCount, facetCount, grid } = header;
  const countsFit =
    facetCount > 0 && isFew('triangles', facetCount) && vertexCount > 0 && vertexCount <= 3 * facetCount;
  const gridFits =
    grid.stepsPerUnit >= leastStepsPerUnit &&
    grid.stepsPerUnit <= mostStepsPerUnit &&
    grid.origin.every(Number.isSafeInteger);
  if (!countsFit || !gridFits) throw countsDoNotFit();
}

export function countsDoNotFit(): Problem {
  return new Problem(
    'pack.counts',
    'The saved model is damaged: its counts of corners and triangles do not fit what it holds. Import the model file again.',
  );
}

function truncated(): Problem {
  return new Problem(
    'pack.truncated',
    'The saved model is cut short: its end is missing. Import the model file again.',
  );
}
