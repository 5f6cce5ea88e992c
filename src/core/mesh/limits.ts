import { mostCounts } from '../counts';

/** What is refused with a reason rather than tried; the browser tab's memory sets them. */
export const limits = {
  triangles: mostCounts.triangles,
  /** Largest diagonal in file units: beyond this the numbers are no drawing of an enclosure in any unit. */
  largestDiagonal: 1e9,
  /** Smallest diagonal in file units: below this single-precision results would vanish. */
  smallestDiagonal: 1e-9,
  /** Bytes that the parts of a 3MF package may unpack to. */
  unpackedBytes: 400 * 2 ** 20,
} as const;
