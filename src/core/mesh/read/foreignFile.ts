/** A file of another kind, told by how it begins. */
interface ForeignKind {
  readonly begins: readonly number[] | string;
  /** Completes "This is ...". */
  readonly what: string;
}

const foreignKinds: readonly ForeignKind[] = [
  { begins: [0x89, 0x50, 0x4e, 0x47], what: 'a PNG picture' },
  { begins: [0xff, 0xd8, 0xff], what: 'a JPEG picture' },
  { begins: 'gif8', what: 'a GIF picture' },
  { begins: '%pdf', what: 'a PDF document' },
  { begins: [0x1f, 0x8b], what: 'a gzip archive; unpack it first' },
  { begins: [0x37, 0x7a, 0xbc, 0xaf], what: 'a 7z archive; unpack it first' },
  { begins: 'rar!', what: 'a RAR archive; unpack it first' },
  { begins: '<!doctype html', what: 'a web page, probably an error page saved in place of the file' },
  { begins: '<html', what: 'a web page, probably an error page saved in place of the file' },
  { begins: '<', what: 'an XML or web document' },
  {
    begins: 'version https://git-lfs',
    what: 'only a pointer to the file, which is kept elsewhere (Git LFS); download the file itself',
  },
  { begins: 'iso-10303-21', what: 'a STEP drawing; export a mesh from it' },
  { begins: 'ply', what: 'a PLY mesh' },
  { begins: 'gltf', what: 'a glTF scene' },
];

/** What the file is instead of a mesh that can be read, or null when its beginning is not known. */
export function foreignKindOf(bytes: Uint8Array): string | null {
  let from = 0;
  while (from < bytes.length && bytes[from]! <= 0x20) from++;
  for (const { begins, what } of foreignKinds) {
    const isText = typeof begins === 'string';
    const pattern = isText ? Array.from(begins, (letter) => letter.charCodeAt(0)) : begins;
    const start = isText ? from : 0;
    // Letters only differ from lower case by this bit; the patterns hold no byte that it would confuse.
    if (
      pattern.every((byte, i) => bytes[start + i] === byte || (isText && (bytes[start + i]! | 0x20) === byte))
    ) {
      return what;
    }
  }
  return null;
}
