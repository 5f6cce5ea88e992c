/** What a PDF draws, read back by a general library: each page's paths in mm, and its texts. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Point2 } from '../../src/core/templates/piece';

export interface ReadPath {
  readonly points: readonly Point2[];
  readonly closed: boolean;
  /** As the file holds it, "#rrggbb". */
  readonly color: string;
  readonly dashed: boolean;
}

export interface ReadPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly paths: readonly ReadPath[];
  readonly texts: readonly string[];
}

const mm = (points: number) => (points * 25.4) / 72;

export async function readPdf(bytes: Uint8Array): Promise<{ pages: ReadPage[]; printScaling: unknown }> {
  const file = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const preferences: { PrintScaling?: unknown } | null = await file.getViewerPreferences();
  const pages: ReadPage[] = [];
  for (let number = 1; number <= file.numPages; number++) {
    const page = await file.getPage(number);
    const [left = 0, low = 0, right = 0, high = 0] = page.view;
    const { fnArray, argsArray } = await page.getOperatorList();
    const texts = await page.getTextContent();
    pages.push({
      widthMm: mm(right - left),
      heightMm: mm(high - low),
      paths: pathsOf(fnArray, argsArray as readonly unknown[][]),
      texts: texts.items.flatMap((item) => ('str' in item && item.str !== '' ? [item.str] : [])),
    });
  }
  await file.destroy();
  return { pages, printScaling: preferences?.PrintScaling };
}

function pathsOf(operators: readonly number[], args: readonly unknown[][]): ReadPath[] {
  const paths: ReadPath[] = [];
  let color = '';
  let dashed = false;
  operators.forEach((operator, i) => {
    const given = args[i] as unknown[];
    if (operator === OPS.setStrokeRGBColor) color = String(given[0]);
    if (operator === OPS.setDash) dashed = (given[0] as number[]).length > 0;
    if (operator !== OPS.constructPath) return;
    const data = (given[1] as (Float32Array | null)[])[0];
    if (data === null || data === undefined) return;
    paths.push({ ...pathIn([...data]), color, dashed });
  });
  return paths;
}

/** Runs of: 0 x y begins, 1 x y goes on, 4 closes. */
function pathIn(data: readonly number[]): { points: Point2[]; closed: boolean } {
  const points: Point2[] = [];
  let closed = false;
  for (let at = 0; at < data.length;) {
    const kind = data[at]!;
    if (kind === 4) {
      closed = true;
      at += 1;
    } else if (kind === 0 || kind === 1) {
      points.push([mm(data[at + 1]!), mm(data[at + 2]!)]);
      at += 3;
    } else throw new Error(`a path holds ${kind}`);
  }
  return { points, closed };
}
