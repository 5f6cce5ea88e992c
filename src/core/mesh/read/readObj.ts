import { Problem } from '../../problem';
import { DecimalReader } from './decimalReader';
import type { RawTriangles } from './finishFileMesh';
import { GrowingNumbers, refuseTooMany } from './growingNumbers';
import { cutPolygon } from './polygon';
import { isLineEnd, lineAt, wordIs } from './textTokens';

const bytesPerReport = 4 << 20;
const backslash = 0x5c;
const hash = 0x23;
const slash = 0x2f;
const minus = 0x2d;

/**
 * Reads the vertices (`v`) and faces (`f`) of an OBJ file; groups, materials, texture and normal entries are passed
 * over. Vertex numbers count from 1, negative ones back from the last vertex. Polygons are cut into triangles. A face
 * that names a vertex which is not there is left out with a note.
 */
export function readObj(bytes: Uint8Array, onProgress?: (share: number) => void): RawTriangles {
  const decimals = new DecimalReader();
  const vertices = new GrowingNumbers();
  const corners = new GrowingNumbers();
  // Faces wait for all vertices: a face may stand before the vertices that it names. Flat lists, one entry per corner
  // and one per face: an object per face took three times the memory.
  const faceVertices: number[] = [];
  const faceStarts: number[] = [];
  const faceOffsets: number[] = [];
  const words = new LineWords(bytes);
  let reported = 0;

  while (words.startLine()) {
    if (!words.next()) continue;
    const offset = words.start;
    if (offset - reported > bytesPerReport) {
      reported = offset;
      onProgress?.(offset / bytes.length);
    }
    if (wordIs(bytes, words.start, words.end, 'v')) {
      const xyz = [NaN, NaN, NaN];
      for (let axis = 0; axis < 3 && words.next(); axis++) {
        xyz[axis] = decimals.read(bytes, words.start, words.end);
      }
      vertices.push3(xyz[0]!, xyz[1]!, xyz[2]!);
    } else if (wordIs(bytes, words.start, words.end, 'f')) {
      faceStarts.push(faceVertices.length);
      faceOffsets.push(offset);
      const vertexCount = vertices.length / 3;
      while (words.next()) {
        const number = vertexNumber(bytes, words.start, words.end);
        faceVertices.push(number < 0 ? vertexCount + number : number - 1);
      }
    }
  }

  const vertexCount = vertices.length / 3;
  let leftOut = 0;
  let firstLeftOut = 0;
  faceStarts.push(faceVertices.length);
  for (let face = 0; face < faceOffsets.length; face++) {
    const numbers = faceVertices.slice(faceStarts[face], faceStarts[face + 1]);
    if (numbers.length < 3 || !numbers.every((n) => n >= 0 && n < vertexCount)) {
      if (leftOut++ === 0) firstLeftOut = faceOffsets[face]!;
      continue;
    }
    const order = numbers.length === 3 ? threeCorners : cutPolygon(pointsOf(vertices, numbers));
    for (const corner of order) {
      const at = 3 * numbers[corner]!;
      corners.push3(vertices.at(at), vertices.at(at + 1), vertices.at(at + 2));
    }
    refuseTooMany(corners.length);
  }

  const notes: string[] = [];
  if (leftOut > 0) {
    const where = `line ${lineAt(bytes, firstLeftOut)}`;
    notes.push(
      leftOut === 1
        ? `The face at ${where} names a vertex that is not in the file and was left out.`
        : `${leftOut} faces name vertices that are not in the file and were left out, the first at ${where}.`,
    );
  }
  if (decimals.sawComma) notes.push('The file writes decimal commas; they were read as decimal points.');
  if (corners.length === 0) {
    throw new Problem(
      'mesh.noTriangles',
      vertexCount === 0
        ? 'The file holds no vertices and no faces: there is nothing to import. Export the part again as a mesh.'
        : `The file holds ${vertexCount} vertices but no usable faces, so there is no surface to import. ${[...notes, 'Export the part again as a mesh.'].join(' ')}`,
    );
  }
  return { format: 'obj', declaredUnit: null, corners: corners.all(), notes };
}

const threeCorners = [0, 1, 2] as const;

const pointsOf = (vertices: GrowingNumbers, numbers: readonly number[]) =>
  numbers.flatMap((n) => [vertices.at(3 * n), vertices.at(3 * n + 1), vertices.at(3 * n + 2)]);

/** Words of one logical line: a backslash before the line end joins the next line on, `#` ends it. */
class LineWords {
  start = 0;
  end = 0;
  private fresh = true;

  constructor(private readonly bytes: Uint8Array) {}

  /** Moves to the start of the next line; false at the end of the file. */
  startLine(): boolean {
    const { bytes } = this;
    if (this.fresh) {
      this.fresh = false;
      return bytes.length > 0;
    }
    while (this.next());
    while (this.end < bytes.length && !isLineEnd(bytes[this.end]!)) this.end++;
    while (this.end < bytes.length && isLineEnd(bytes[this.end]!)) this.end++;
    return this.end < bytes.length;
  }

  next(): boolean {
    const { bytes } = this;
    let at = this.end;
    for (;;) {
      const joined = lineEndAfterBackslash(bytes, at);
      if (joined > 0) at += 1 + joined;
      else if (at < bytes.length && bytes[at]! <= 0x20 && !isLineEnd(bytes[at]!)) at++;
      else break;
    }
    this.start = at;
    if (bytes[at] !== hash) {
      while (at < bytes.length && bytes[at]! > 0x20 && lineEndAfterBackslash(bytes, at) === 0) at++;
    }
    this.end = at;
    return this.start < at;
  }
}

/** Bytes of the line end (1 or 2) that follows a backslash at `at`, 0 when there is none. */
function lineEndAfterBackslash(bytes: Uint8Array, at: number): number {
  if (bytes[at] !== backslash) return 0;
  if (bytes[at + 1] === 0x0d) return bytes[at + 2] === 0x0a ? 2 : 1;
  return bytes[at + 1] === 0x0a ? 1 : 0;
}

/** The vertex number before the first slash of `12/3/4`; NaN when it is not a whole number or is 0. */
function vertexNumber(bytes: Uint8Array, start: number, end: number): number {
  let at = start;
  const negative = bytes[at] === minus;
  if (negative) at++;
  let number = 0;
  const first = at;
  for (; at < end && bytes[at] !== slash; at++) {
    const digit = bytes[at]! - 0x30;
    if (digit < 0 || digit > 9 || number > 1e9) return NaN;
    number = number * 10 + digit;
  }
  if (at === first || number === 0) return NaN;
  return negative ? -number : number;
}
