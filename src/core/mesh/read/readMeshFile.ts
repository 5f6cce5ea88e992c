import { Problem } from '../../problem';
import type { FileMesh } from '../types';
import { finishFileMesh } from './finishFileMesh';
import { isStlBinaryBySize, looksLikeStlBinary, readStlBinary } from './readStlBinary';

export function readMeshFile(
  bytes: Uint8Array,
  fileName: string,
  onProgress?: (share: number) => void,
): FileMesh {
  if (bytes.length === 0) throw new Problem('file.empty', `${fileName} is empty.`);
  if (isStlBinaryBySize(bytes) || looksLikeStlBinary(bytes)) {
    return finishFileMesh(readStlBinary(bytes, onProgress));
  }
  throw new Problem('file.unknown', `${fileName} is not a mesh that can be read here.`);
}
