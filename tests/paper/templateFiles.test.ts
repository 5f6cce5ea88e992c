import { describe, expect, it } from 'vitest';
import { clippedLine } from '../../src/core/templates/clip';
import { lineOf } from '../../src/core/templates/drawing';
import { nestPieces, type FabricRoll, type NestChoices } from '../../src/core/templates/nest';
import { borderDistanceMm, boundsOf, posed, signedAreaMm2 } from '../../src/core/templates/outline';
import type { Outline, PlyPiece, Point2 } from '../../src/core/templates/piece';
import { papers } from '../../src/core/templates/sheetFrame';
import { templatePages } from '../../src/core/templates/templatePages';
import { nestAndDraw, templateFiles } from '../../src/paper/templateFiles';
import { codeOf } from '../support/codeOf';
import { crossed, flatPiece, oval, rectangle, tenPieces } from '../support/flatPieces';
import { readDxf } from '../support/readDxf';
import { readPdf, type ReadPage, type ReadPath } from '../support/readPdf';

const roll: FabricRoll = {
  fabric: 'twill 200 g',
  widthMm: 500,
  remnantsMm: [],
  arealWeightGsm: 340,
  pricePerM2: null,
};
const choices: NestChoices = { gapMm: 4, fiberToleranceDeg: 0, halfTurns: true, seed: 1 };

/** One with everything on it, one larger than A4 and Letter, and the ten. */
const marked = flatPiece('3B', crossed(180, 110, 20), {
  holesMm: [[...oval(24, 16, 20)].toReversed().map(([x, y]): Point2 => [x + 60, y + 70])],
  marks: [
    { atMm: [20, 10], into: [1, 0], label: 'a' },
    { atMm: [90, 0], into: [0, 1], label: 'b' },
  ],
  fiberDeg: 45,
  upGoesToMold: false,
  mirrored: true,
});
const large = flatPiece('11A', crossed(430, 300, 30));
const pieces: readonly PlyPiece[] = [...tenPieces, marked, large];

const black = '#000000';
const lengthMm = (points: readonly Point2[], closed: boolean) =>
  points.reduce((sum, [x, y], i) => {
    if (i === 0 && !closed) return sum;
    const [px, py] = points[(i + points.length - 1) % points.length]!;
    return sum + Math.hypot(x - px, y - py);
  }, 0);
const perimeterMm = (outline: Outline) => lengthMm(outline, true);
const isLevel = ({ points: [a, b], closed }: ReadPath) =>
  !closed && a !== undefined && b !== undefined && a[1] === b[1];
const cutPaths = (page: ReadPage) => page.paths.filter(({ color }) => color === black);

const sideLengthsMm = (points: readonly Point2[]) =>
  points.map(([x, y], i) => {
    const [px, py] = points[(i + points.length - 1) % points.length]!;
    return Math.hypot(x - px, y - py);
  });

/** Sides of both, from corner to corner, are the same whatever the turn and place. */
const sameShape = (a: readonly Point2[], b: readonly Point2[], withinMm: number): boolean => {
  const [own, other] = [sideLengthsMm(a), sideLengthsMm(b)];
  return (
    own.length === other.length &&
    own.every((side, i) => Math.abs(side - other[i]!) < withinMm) &&
    Math.abs(signedAreaMm2(a) - signedAreaMm2(b)) < withinMm * perimeterMm(a)
  );
};

describe.each(['a4', 'letter', 'a3', 'roll'] as const)('the PDF on %s, read back', (paper) => {
  const read = nestAndDraw(pieces, [roll], choices, paper).then(({ pdf }) => readPdf(pdf));

  it('asks not to be scaled, and has pages of the paper', async () => {
    const { pages, printScaling } = await read;
    expect(printScaling).toBe('None');
    if (paper === 'roll') {
      expect(pages.at(-1)!.widthMm).toBeCloseTo(520, 2);
      return;
    }
    for (const page of pages) {
      expect(page.widthMm).toBeCloseTo(papers[paper].widthMm, 2);
      expect(page.heightMm).toBeCloseTo(papers[paper].heightMm, 2);
    }
  });

  it('has a bar of 100 mm and a square of 50 mm on every page', async () => {
    const { pages } = await read;
    expect(pages.length).toBeGreaterThan(1);
    for (const { paths, texts } of pages) {
      const bars = paths
        .filter(isLevel)
        .filter(({ points }) => Math.abs(lengthMm(points, false) - 100) < 0.02);
      expect(bars.length).toBeGreaterThan(0);
      const squares = paths.filter(
        ({ points, closed }) => closed && points.length === 4 && sameShape(points, rectangle(50, 50), 0.02),
      );
      expect(squares).toHaveLength(1);
      expect(texts).toContain('100 mm');
      expect(texts).toContain('50 mm square');
    }
  });

  it('shows every outline that is whole closed, once, and to the hundredth', async () => {
    const { pages } = await read;
    const whole = pages.flatMap(cutPaths).filter(({ closed }) => closed);
    for (const { name, outlineMm } of pieces) {
      const found = whole.filter(({ points }) => sameShape(points, outlineMm, 0.01)).length;
      const tiled = paper !== 'roll' && name === '11A';
      expect([name, found]).toEqual([name, tiled ? 0 : 1]);
    }
    for (const page of pages)
      for (const { points } of page.paths)
        for (const [x, y] of points) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(page.widthMm);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(page.heightMm);
        }
  });

  it('names each piece with ply, fabric and fibers, and says the cautions first', async () => {
    const { pages } = await read;
    const texts = pages.flatMap((page) => page.texts);
    for (const { name, ply, fiberDeg } of pieces)
      expect(texts).toContainEqual(
        expect.stringContaining(`${name} · ply ${ply} · twill 200 g · ${fiberDeg}°`),
      );
    for (const word of [
      'warp',
      'datum',
      'a',
      'b',
      'cut after the cure',
      'this side looks away from the mold',
      'mirror image, for the mate',
    ])
      expect(texts).toContain(word);
    expect(pages[0]!.texts.join(' ')).toMatch(
      /Blades: cut away from the hand; gloves against resin per the supplier’s safety data sheet/,
    );
    expect(pages[0]!.texts.join(' ')).toMatch(
      /not for cutting.*Order of cutting|Order of cutting.*not for cutting/,
    );
  });
});

it('draws a hole dashed', async () => {
  const { pages } = await readPdf((await nestAndDraw([marked], [roll], choices, 'a4')).pdf);
  const holes = pages.flatMap(({ paths }) => paths).filter(({ points }) => points.length === 20);
  expect(holes).toHaveLength(1);
  expect(holes[0]).toMatchObject({ dashed: true, closed: true });
});

const middleOf = (points: readonly Point2[]): Point2 => {
  const { lowXMm, lowYMm, highXMm, highYMm } = boundsOf(points);
  return [(lowXMm + highXMm) / 2, (lowYMm + highYMm) / 2];
};

describe('a piece over several pages', () => {
  const sheets = templatePages(nestPieces([large], [roll], choices), 'a4').slice(1);
  const crosses = sheets.map(({ lines }) =>
    lines.filter(({ layer, closed, points }) => layer === 'sheet' && closed && points.length === 24),
  );
  const labelsOf = ({ texts }: (typeof sheets)[number]) =>
    texts.filter(({ text }) => /^\d+ \+ \d+$/.test(text));

  it('comes together by its marks, to the shape it has', () => {
    expect(sheets.length).toBeGreaterThan(3);
    // Put each sheet where the marks it shares with one that is placed already lie over each other.
    const placed = new Map<number, Point2>([[0, [0, 0]]]);
    const marksBy = sheets.map((sheet, i) =>
      labelsOf(sheet).map(({ text, atMm }) => {
        const near = crosses[i]!.map(({ points }) => middleOf(points)).find(
          ([x, y]) => Math.hypot(x - atMm[0], y - atMm[1]) < 4,
        );
        return { text, at: near! };
      }),
    );
    for (let round = 0; round < sheets.length; round++)
      marksBy.forEach((marks, i) => {
        if (placed.has(i)) return;
        for (const [k, [moveX, moveY]] of placed) {
          const shared = marks.filter(({ text }) => marksBy[k]!.some((other) => other.text === text));
          const label = shared[0]?.text;
          if (label === undefined) continue;
          const [own, other] = [marks, marksBy[k]!].map((all) => all.filter(({ text }) => text === label));
          expect(own).toHaveLength(2);
          const moves = own!.map(({ at }, m): Point2 => [
            other![m]!.at[0] + moveX - at[0],
            other![m]!.at[1] + moveY - at[1],
          ]);
          expect(moves[0]![0]).toBeCloseTo(moves[1]![0], 9);
          expect(moves[0]![1]).toBeCloseTo(moves[1]![1], 9);
          placed.set(i, moves[0]!);
          return;
        }
      });
    expect(placed.size).toBe(sheets.length);
    const cut = sheets.flatMap(({ lines }, i) =>
      lines
        .filter(({ layer }) => layer === 'cut')
        .flatMap(({ points, closed }) => {
          expect(closed).toBe(false);
          const [x, y] = placed.get(i)!;
          return points
            .slice(1)
            .map((point, k) => [points[k]!, point].map(([px, py]): Point2 => [px + x, py + y]));
        }),
    );
    const { lowXMm, lowYMm, highXMm, highYMm } = boundsOf(cut.flat());
    const turnedOver = highXMm - lowXMm < highYMm - lowYMm;
    const expected = large.outlineMm.map((point) =>
      posed(
        point,
        turnedOver ? { turnDeg: 90, atMm: [lowXMm + 300, lowYMm] } : { turnDeg: 0, atMm: [lowXMm, lowYMm] },
      ),
    );
    // Every point along the outline is on a page, and nothing else is.
    const sides = expected.map((point, i) => [point, expected[(i + 1) % expected.length]!] as const);
    for (const [[ax, ay], [bx, by]] of sides)
      for (let t = 0; t <= 1; t += 0.02) {
        const at: Point2 = [ax + t * (bx - ax), ay + t * (by - ay)];
        expect(Math.min(...cut.map((part) => borderDistanceMm(part, at)))).toBeLessThan(0.01);
      }
    for (const part of cut)
      for (const point of part)
        expect(Math.min(...sides.map((side) => borderDistanceMm(side, point)))).toBeLessThan(0.01);
  });

  it('says which sheet of how many', () => {
    expect(sheets.map(({ texts }) => texts.find(({ text }) => text.startsWith('Sheet '))!.text)).toEqual(
      sheets.map((_, i) => expect.stringContaining(`Sheet ${i + 1} of ${sheets.length}: row`)),
    );
  });

  it('is cut in the window only, and a line that is within stays as it is', () => {
    const window = { lowXMm: 0, lowYMm: 0, highXMm: 10, highYMm: 10 };
    const within = lineOf(
      'cut',
      oval(8, 8).map(([x, y]): Point2 => [x + 5, y + 5]),
      { closed: true },
    );
    expect(clippedLine(within, window)).toEqual([within]);
    const across = clippedLine(lineOf('cut', rectangle(20, 5), { closed: true }), window);
    expect(across).toHaveLength(1);
    expect(across[0]).toMatchObject({
      closed: false,
      points: [
        [10, 5],
        [0, 5],
        [0, 0],
        [10, 0],
      ],
    });
    expect(
      clippedLine(
        lineOf('cut', [
          [20, 20],
          [30, 30],
        ]),
        window,
      ),
    ).toEqual([]);
  });
});

/** All pieces of one cloth moved alike: relative places are the nest's. */
function expectNest(
  read: readonly Point2[][],
  placements: ReturnType<typeof nestPieces>[number]['placements'],
): void {
  expect(read).toHaveLength(placements.length);
  const moves = new Map<string, Point2>();
  for (const placement of placements) {
    const wanted = placement.piece.outlineMm.map((point) => posed(point, placement));
    const found = read.find((points) => {
      if (points.length !== wanted.length) return false;
      const [mx, my] = [points[0]![0] - wanted[0]![0], points[0]![1] - wanted[0]![1]];
      const known = moves.get(String(placement.remnant)) ?? [mx, my];
      if (Math.hypot(known[0] - mx, known[1] - my) > 0.01) return false;
      if (!points.every(([x, y], i) => Math.hypot(x - mx - wanted[i]![0], y - my - wanted[i]![1]) < 0.01))
        return false;
      moves.set(String(placement.remnant), known);
      return true;
    });
    expect(found, placement.piece.name).toBeDefined();
  }
}

describe('the files for a plotter', () => {
  const remnantsMm = [rectangle(200, 140)];
  const made = nestAndDraw(pieces, [{ ...roll, remnantsMm }], choices, 'a4');

  it('SVG, in mm at 1:1, holds each piece where the nest has it', async () => {
    const { svg, nests } = await made;
    const [, width, height, boxWidth, boxHeight] = svg.match(
      /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"/,
    )!;
    expect([boxWidth, boxHeight]).toEqual([width, height]);
    const group = svg.match(/<g id="cut"[^>]*>([\s\S]*?)<\/g>/)![1]!;
    const read = [...group.matchAll(/ d="([^"]*)"/g)].map(([, d = '']) => {
      expect(d.endsWith('Z')).toBe(true);
      return [...d.matchAll(/[ML]([-\d.]+) ([-\d.]+)/g)].map(([, x, y]): Point2 => [
        Number(x),
        Number(height) - Number(y),
      ]);
    });
    expectNest(read, nests[0]!.placements);
  });

  it('DXF, with $INSUNITS 4 and a layer for each kind, holds the same', async () => {
    const { dxf, nests } = await made;
    const { header, layers, polylines, texts } = readDxf(dxf);
    expect(header.get('$INSUNITS')).toBe('4');
    expect(layers).toEqual(['CUT', 'CUT_AFTER_CURE', 'MARK', 'TEXT', 'SHEET']);
    expect(new Set(polylines.map(({ layer }) => layer))).toEqual(
      new Set(['CUT', 'CUT_AFTER_CURE', 'MARK', 'SHEET']),
    );
    const cut = polylines.filter(({ layer }) => layer === 'CUT');
    expect(cut.every(({ closed }) => closed)).toBe(true);
    expectNest(
      cut.map(({ points }) => points),
      nests[0]!.placements,
    );
    expect(texts).toContain('3B · ply 3 · twill 200 g · 45%%d'.replaceAll('·', '\\U+00B7'));
    expect(/[^\n -~]/.test(dxf)).toBe(false);
  });
});

it('writes names in any letters, and keeps file and page whole', async () => {
  const odd = { ...flatPiece('1A', rectangle(80, 60)), fabric: '斜纹 <200> & "x"\n%%' };
  const { pdf, svg, dxf } = await nestAndDraw([odd], [{ ...roll, fabric: odd.fabric }], choices, 'letter');
  expect((await readPdf(pdf)).pages[0]!.texts.join()).toContain('?? <200> & "x"');
  expect(svg).toContain('斜纹 &lt;200&gt; &amp; "x"');
  expect(readDxf(dxf).texts).toContain('\\U+659C\\U+7EB9 <200> & "x" % %, roll');
});

it('is the same file for the same pieces, and for a nest that is known already', async () => {
  const { nests, ...files } = await nestAndDraw(tenPieces, [roll], choices, 'a4');
  expect(await templateFiles(nests, 'a4')).toEqual(files);
});

it('refuses what would be hundreds of pages', () => {
  const vast = flatPiece('1A', rectangle(9000, 4000));
  const nests = nestPieces([vast], [{ ...roll, widthMm: 4000 }], choices);
  expect(codeOf(() => templatePages(nests, 'a4'))).toBe('templates.pages');
  // On paper as wide as the roll it is two sheets, under the longest page that a PDF can have.
  expect(
    templatePages(nests, 'roll')
      .slice(1)
      .map(({ heightMm }) => heightMm <= 5080),
  ).toEqual([true, true]);
});
