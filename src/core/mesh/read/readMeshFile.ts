import { Problem } from '../../problem';
import type { FileMesh } from '../types';
import { type RawTriangles, finishFileMesh } from './finishFileMesh';
import { foreignKindOf } from './foreignFile';
import { read3mf } from './read3mf';
import { readObj } from './readObj';
import { readStlAscii } from './readStlAscii';
import { isStlBinaryBySize, looksLikeStlBinary, readStlBinary } from './readStlBinary';
import { TextTokens } from './textTokens';
import { utf8Of } from './utf8Of';

/** Bytes looked at to tell text from binary data. */
const bytesToJudge = 4096;

/**
 * Reads a mesh file: STL (binary and text), OBJ and 3MF. What the bytes are decides first, the ending of the name
 * second. The result is exactly what the file holds; oddities that were met stand in its notes.
 *
 * `onProgress` is called with a share from 0 to 1. Throws a `Problem` whose message says what is wrong with the file
 * and what to do.
 */
export function readMeshFile(
  bytes: Uint8Array,
  fileName: string,
  onProgress?: (share: number) => void,
): FileMesh {
  const file = finishFileMesh(readTriangles(bytes, fileName, onProgress));
  onProgress?.(1);
  return file;
}

function readTriangles(
  bytes: Uint8Array,
  fileName: string,
  onProgress?: (share: number) => void,
): RawTriangles {
  if (bytes.length === 0) {
    throw new Problem('file.empty', 'The file is empty (0 bytes). Export or copy it again.');
  }
  const ending = /\.([^.]*)$/.exec(fileName)?.[1]?.toLowerCase() ?? '';
  if (bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4)
    return read3mf(bytes, onProgress);
  if (ending === '3mf') {
    const isStl = isStlBinaryBySize(bytes);
    throw new Problem(
      '3mf.notAPackage',
      isStl
        ? 'The file is named .3mf but holds a binary STL. Rename it to .stl and import it again.'
        : 'The file is named .3mf but is not a 3MF package, or its beginning is damaged. Export or copy it again.',
    );
  }
  if (isStlBinaryBySize(bytes)) return readStlBinary(bytes, onProgress);
  const foreign = foreignKindOf(bytes);
  if (foreign !== null) {
    throw new Problem('file.foreign', `The file is ${foreign}. What can be read here is STL, OBJ and 3MF.`);
  }

  const text = utf8Of(bytes);
  if (looksLikeText(text)) {
    const from = text[0] === 0xef && text[1] === 0xbb && text[2] === 0xbf ? 3 : 0;
    const body = text.subarray(from);
    const first = new TextTokens(body);
    first.next();
    if (first.is('solid') || first.is('facet')) return readStlAscii(body, onProgress);
    if (ending === 'obj' || first.is('v')) return readObj(body, onProgress);
  } else if (looksLikeStlBinary(bytes)) {
    return readStlBinary(bytes, onProgress);
  }
  throw unknownKind(bytes, ending);
}

function unknownKind(bytes: Uint8Array, ending: string): Problem {
  if (ending === 'stl' && bytes.length < 84) {
    return new Problem(
      'stl.tooShort',
      `The file is only ${bytes.length} bytes long, less than the beginning of an STL file. It was cut off; export or copy it again.`,
    );
  }
  return new Problem(
    'file.unknown',
    'The file does not hold a mesh that can be read here (STL, OBJ or 3MF), or it is damaged. Export the part again.',
  );
}

/** No control characters in the first few thousand bytes but tabs and line ends. */
function looksLikeText(bytes: Uint8Array): boolean {
  const end = Math.min(bytes.length, bytesToJudge);
  for (let at = 0; at < end; at++) {
    const byte = bytes[at]!;
    if (byte < 0x20 && byte !== 0x09 && byte !== 0x0a && byte !== 0x0c && byte !== 0x0d) return false;
  }
  return true;
}
