/** A sheet as SVG: one unit is one millimeter, so what reads the file reads true size (SVG 1.1, W3C, section 7.7). */
import type { DrawnLine, DrawnSheet, DrawnText, Layer } from './drawing';

/** Shared with the other writers: what is cut stands out, what is not is quiet. */
const colors: Readonly<Record<Layer, string>> = {
  cut: '#000000',
  afterCure: '#9c2b14',
  mark: '#23497f',
  text: '#1d2733',
  sheet: '#6b7280',
};
const layers: readonly Layer[] = ['sheet', 'cut', 'afterCure', 'mark', 'text'];

const num = (value: number) => String(Number(value.toFixed(4)));

export function writeSvg({ widthMm, heightMm, lines, texts }: DrawnSheet): string {
  const groups = layers.map((layer) => {
    const own =
      layer === 'text'
        ? texts.map((text) => textElement(text, heightMm))
        : lines.filter((line) => line.layer === layer).map((line) => pathElement(line, heightMm));
    const style =
      layer === 'text'
        ? `fill="${colors.text}" font-family="sans-serif"`
        : `fill="none" stroke="${colors[layer]}" stroke-linejoin="round"`;
    return `<g id="${layer}" ${style}>\n${own.join('\n')}\n</g>`;
  });
  const [w, h] = [num(widthMm), num(heightMm)];
  return `<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns="http://www.w3.org/2000/svg" width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}">\n${groups.join('\n')}\n</svg>\n`;
}

function pathElement({ points, closed, dashed, widthMm }: DrawnLine, heightMm: number): string {
  const d = points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${num(x)} ${num(heightMm - y)}`).join('');
  const dash = dashed ? ' stroke-dasharray="3 2"' : '';
  return `<path d="${d}${closed ? 'Z' : ''}" stroke-width="${num(widthMm)}"${dash}/>`;
}

function textElement({ text, atMm: [x, y], sizeMm, turnDeg, anchor }: DrawnText, heightMm: number): string {
  const [px, py] = [num(x), num(heightMm - y)];
  const turn = turnDeg === 0 ? '' : ` transform="rotate(${num(-turnDeg)} ${px} ${py})"`;
  return `<text x="${px}" y="${py}" font-size="${num(sizeMm)}" text-anchor="${anchor}"${turn}>${escaped(text)}</text>`;
}

const escaped = (text: string) =>
  text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    // Signs that no XML may hold.
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, ' ');
