/** A project file from its bytes, checked through to the last corner of its mesh before anything of it is taken over. */
import { preparePack, unpackMesh } from '../core/mesh/pack';
import { Problem } from '../core/problem';
import {
  readProjectFile,
  tooLargeForProjectFile,
  unreadableProjectFile,
  type ProjectFileOutcome,
} from './projectFile';

/** `preparePack` has been awaited before. Never throws; messages are complete sentences for the maker. */
export function readProjectFileBytes(bytes: Uint8Array): ProjectFileOutcome {
  const tooLarge = tooLargeForProjectFile(bytes.length);
  if (tooLarge !== null) return tooLarge;
  const read = readProjectFile(new TextDecoder().decode(bytes));
  if (!('project' in read) || read.packedMesh === null) return read;
  try {
    unpackMesh(read.packedMesh);
    if (read.packedImport !== null) unpackMesh(read.packedImport);
    return read;
  } catch (error) {
    const why = error instanceof Problem ? error.message : 'Its model cannot be unpacked.';
    return { outcome: 'damaged', message: `This project file cannot be used. ${why}` };
  }
}

/** The same of a file as the browser gives it; never rejects. */
export async function readProjectFileBlob(file: Blob): Promise<ProjectFileOutcome> {
  try {
    await preparePack();
    return readProjectFileBytes(new Uint8Array(await file.arrayBuffer()));
  } catch {
    return unreadableProjectFile;
  }
}
