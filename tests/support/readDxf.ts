/** The header and the entities of a DXF of release 12, read as its pairs of group code and value. */
import type { Point2 } from '../../src/core/templates/piece';

export interface ReadDxf {
  readonly header: ReadonlyMap<string, string>;
  readonly layers: readonly string[];
  readonly polylines: readonly {
    readonly layer: string;
    readonly closed: boolean;
    readonly points: Point2[];
  }[];
  readonly texts: readonly string[];
}

export function readDxf(text: string): ReadDxf {
  const lines = text.trimEnd().split('\n');
  const pairs = Array.from(
    { length: lines.length / 2 },
    (_, i) => [Number(lines[2 * i]), lines[2 * i + 1]!] as const,
  );
  const header = new Map<string, string>();
  const layers: string[] = [];
  const polylines: { layer: string; closed: boolean; points: Point2[] }[] = [];
  const texts: string[] = [];
  let entity = '';
  let x = 0;
  pairs.forEach(([code, value], i) => {
    if (code === 9) header.set(value, pairs[i + 1]![1]);
    if (code === 0) {
      entity = value;
      if (value === 'POLYLINE') polylines.push({ layer: '', closed: false, points: [] });
    }
    if (entity === 'LAYER' && code === 2) layers.push(value);
    if (entity === 'TEXT' && code === 1) texts.push(value);
    const last = polylines.at(-1);
    if (last !== undefined && entity === 'POLYLINE' && code === 8) last.layer = value;
    if (last !== undefined && entity === 'POLYLINE' && code === 70) last.closed = value === '1';
    if (entity === 'VERTEX' && code === 10) x = Number(value);
    if (last !== undefined && entity === 'VERTEX' && code === 20) last.points.push([x, Number(value)]);
  });
  return { header, layers, polylines, texts };
}
