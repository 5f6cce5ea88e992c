/** A sheet at true size that says where the covered holes are cut: the outline at the rim and each hole, seen from the show face. */
import type { Shell } from './facetLeans';
import type { Hole } from './holes';

export interface CutTemplate {
  /** Lines of the outline at the rim, 4 numbers each: x and y of both ends; mm, in the frame of the pattern. */
  readonly outlineMm: readonly number[];
  /** Width of the runs that the holes are given in. */
  readonly stepMm: number;
  /** Covered ones, in the order of the list. */
  readonly holes: readonly { readonly number: number; readonly runsMm: Hole['runsMm'] }[];
}

export function cutTemplate(
  { mesh: { positions, facets }, coreFrom, rimMm }: Shell,
  holes: readonly Hole[],
  stepMm: number,
): CutTemplate {
  const isRim = (vertex: number) => vertex < coreFrom && Math.abs(positions[3 * vertex + 2]! - rimMm) < 1e-5;
  const outlineMm: number[] = [];
  for (let at = 0; at < facets.length; at++) {
    const a = facets[at]!;
    const b = facets[at % 3 === 2 ? at - 2 : at + 1]!;
    const c = facets[at % 3 === 0 ? at + 2 : at - 1]!;
    if (!isRim(a) || !isRim(b) || c >= coreFrom || isRim(c)) continue;
    outlineMm.push(positions[3 * a]!, positions[3 * a + 1]!, positions[3 * b]!, positions[3 * b + 1]!);
  }
  return {
    outlineMm,
    stepMm,
    holes: holes.flatMap(({ plugged, runsMm }, at) => (plugged ? [{ number: at + 1, runsMm }] : [])),
  };
}

/** Around everything, mm. */
const marginMm = 10;
const barMm = 100;
const squareMm = 50;

const rangeOf = (values: readonly number[]): readonly [number, number] =>
  values.reduce<readonly [number, number]>(
    ([low, high], one) => [Math.min(low, one), Math.max(high, one)],
    [Infinity, -Infinity],
  );

/** The sheet as SVG whose units are millimeters; a bar and a square to measure after printing stand under the drawing. */
export function cutTemplateSvg({ outlineMm, stepMm, holes }: CutTemplate): string {
  const of = (axis: number) => outlineMm.filter((_, at) => at % 2 === axis);
  const [lowX, highX] = rangeOf(of(0));
  const [lowY, highY] = rangeOf(of(1));
  const widthMm = Math.max(highX - lowX, barMm + squareMm + marginMm) + 2 * marginMm;
  const heightMm = highY - lowY + squareMm + 3 * marginMm;
  const x = (one: number) => (one - lowX + marginMm).toFixed(3);
  // Paper runs down, the part's second axis up.
  const y = (one: number) => (highY - one + marginMm).toFixed(3);
  const lines: string[] = [];
  for (let at = 0; at < outlineMm.length; at += 4)
    lines.push(
      `M${x(outlineMm[at]!)} ${y(outlineMm[at + 1]!)}L${x(outlineMm[at + 2]!)} ${y(outlineMm[at + 3]!)}`,
    );
  const shapes = holes.map(({ number, runsMm }) => {
    const rows = runsMm.map(
      ([fromX, atY, lengthMm]) =>
        `M${x(fromX - stepMm / 2)} ${y(atY + stepMm / 2)}h${lengthMm.toFixed(3)}v${stepMm.toFixed(3)}h${(-lengthMm).toFixed(3)}z`,
    );
    const [firstX, firstY] = runsMm[Math.floor(runsMm.length / 2)]!;
    return `<path d="${rows.join('')}" fill="#bbb"/><text x="${x(firstX)}" y="${y(firstY)}">${number}</text>`;
  });
  const footMm = highY - lowY + 2 * marginMm;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm.toFixed(3)}mm" height="${heightMm.toFixed(3)}mm" viewBox="0 0 ${widthMm.toFixed(3)} ${heightMm.toFixed(3)}" font-family="sans-serif" font-size="4">`,
    ...shapes,
    `<path d="${lines.join('')}" fill="none" stroke="#000" stroke-width="0.2"/>`,
    `<path d="M${marginMm} ${footMm}h${squareMm}v${squareMm}h${-squareMm}z" fill="none" stroke="#000" stroke-width="0.2"/>`,
    `<path d="M${2 * marginMm + squareMm} ${footMm + marginMm}h${barMm}" stroke="#000" stroke-width="0.4"/>`,
    `<text x="${2 * marginMm + squareMm}" y="${footMm + 2 * marginMm}">Print at 100 %: the bar is 100 mm, the square 50 mm. Show face up.</text>`,
    '</svg>',
  ].join('\n');
}
