/** Figures of the mold box and the two pours as solids. */
import type { Figure } from '../../core/figure';
import type { MoldGeometry } from '../../core/stone/moldGeometry';
import { boxSheets } from '../../core/stone/boxSheets';
import { placeName } from '../../core/mesh/place';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, withBand, type FigureSpec } from '../kit/figures';
import { figureFrom, ml, mm } from './say';
import type { Answer, Half, MoldWork } from '../stone/work';

/** Strip of a round cup laps over itself by this much (common practice). */
const stripOverlapMm = 20;

const patternId = 'mold.patternMl';

const how = ({ method, why }: MoldGeometry) => `By ${method}. ${why}`;

export function boxFigures(context: StepContext, work: MoldWork): readonly Figure[] {
  return [
    boxSize(work.geometry),
    boxTurn(work.geometry),
    sheets(context, work.geometry),
    ...volumes(work.geometry),
    faceArea(work.geometry, 'negative'),
    faceArea(work.geometry, 'positive'),
    thinnestStone(context, work.geometry),
    ...findingFigures(context, work.geometry),
  ];
}

function boxSize(geometry: Answer<MoldGeometry>): Figure {
  const spec: FigureSpec = { id: 'mold.boxMm', label: 'Mold box inside', unit: 'mm', decimals: 1 };
  return figureFrom(spec, geometry, ({ box }) =>
    figure(
      spec,
      box.innerMm,
      box.shape === 'cup'
        ? `Round cup: diameter, diameter, height of both pours, at the parting.`
        : `Length, width, height of both pours, at the parting: the pattern with its stone cover on each side.`,
      `Negative ${mm(box.negativeHeightMm)} high, positive ${mm(box.positiveHeightMm)}.`,
      box.wallDraftDeg > 0
        ? `Walls lean outward by ${formatNumber(box.wallDraftDeg, 1)}° from the parting.`
        : 'Walls stand straight.',
    ),
  );
}

function boxTurn(geometry: Answer<MoldGeometry>): Figure {
  const spec: FigureSpec = {
    id: 'mold.boxTurnDeg',
    label: 'Box turned about the pull',
    unit: '°',
    decimals: 1,
  };
  return figureFrom(spec, geometry, ({ box, boxTurnDeg }) =>
    figure(
      spec,
      boxTurnDeg,
      'From the axes of the file to the least rectangle round the outline seen along the pull, counter-clockwise seen from the side of the negative.',
      box.shape === 'cup'
        ? 'A round cup only places its keys and pry slots by it.'
        : boxTurnDeg === 0
          ? 'The file lies square as it is.'
          : 'Length, width and the covers at the ends of the box axes follow the turned box.',
    ),
  );
}

function sheets({ inputs }: StepContext, geometry: Answer<MoldGeometry>): Figure {
  const spec: FigureSpec = { id: 'mold.boxSheets', label: 'Cut for the box', unit: '', decimals: 1 };
  const { sheetMm, freeboardMm } = inputs.mold;
  return figureFrom(spec, geometry, ({ box }) =>
    figure(
      spec,
      boxSheets(box, sheetMm, freeboardMm, stripOverlapMm)
        .map(({ count, lengthMm, heightMm }) => `${count} × ${formatNumber(lengthMm, 1)} × ${mm(heightMm)}`)
        .join('; '),
      ...boxSheets(box, sheetMm, freeboardMm, stripOverlapMm).map(
        ({ name, count, lengthMm, heightMm }) =>
          `${name}: ${count} × ${formatNumber(lengthMm, 1)} × ${mm(heightMm)}`,
      ),
      `Sheets of ${mm(sheetMm)}, ${mm(freeboardMm, 0)} higher than the pours${box.wallDraftDeg > 0 ? '; straight walls: lean them out with wedges, or print the frame' : ''}.`,
    ),
  );
}

function volumes(geometry: Answer<MoldGeometry>): readonly Figure[] {
  const one = (
    id: string,
    label: string,
    value: (geometry: MoldGeometry) => number,
    meaning: string,
  ): Figure => {
    const spec: FigureSpec = { id, label, unit: 'mL', decimals: 1 };
    return figureFrom(spec, geometry, (known) => {
      const shown = figure(spec, value(known) / 1000, meaning, how(known));
      const errorMm3 = id === patternId ? known.errorMm3.pattern : known.errorMm3.others;
      return errorMm3 > 0
        ? withBand(shown, Math.max(0, value(known) - errorMm3) / 1000, (value(known) + errorMm3) / 1000)
        : shown;
    });
  };
  const check: FigureSpec = {
    id: 'mold.volumeCheckPercent',
    label: 'Halves, pattern and gaps together, of the box',
    unit: '%',
    decimals: 2,
  };
  return [
    one(
      'mold.negative.volumeMl',
      'Stone of the negative',
      ({ negativeMm3 }) => negativeMm3,
      'Box over the parting less the outer envelope of the pattern.',
    ),
    one(
      'mold.positive.volumeMl',
      'Stone of the positive',
      ({ positiveMm3 }) => positiveMm3,
      'Inner cavity of the pattern and the backing behind its rim.',
    ),
    one(
      'mold.envelopeMl',
      'Outer envelope of the pattern',
      ({ envelopeMm3 }) => envelopeMm3,
      'Its material and its cavity, under the show face: what slurry is displaced by.',
    ),
    one(
      'mold.cavityMl',
      'Cavity of the pattern',
      ({ cavityMm3 }) => cavityMm3,
      'Inside the inner skin, up to the rim.',
    ),
    one(
      patternId,
      'Material of the pattern',
      ({ patternMm3 }) => patternMm3,
      'The printed shell alone, bodies that overlap counted once.',
    ),
    figureFrom(check, geometry, (known) =>
      figure(
        check,
        100 * known.volumeCheck,
        `(${ml(known.negativeMm3 / 1000)} + ${ml(known.positiveMm3 / 1000)} + ${ml(known.patternMm3 / 1000)} + gaps ${ml(known.gapFillMm3 / 1000)}) / box; 100 % when nothing is lost.`,
      ),
    ),
  ];
}

function faceArea(geometry: Answer<MoldGeometry>, half: Half): Figure {
  const spec: FigureSpec = {
    id: `mold.${half}.faceCm2`,
    label: `Working face of the ${half}`,
    unit: 'cm²',
    decimals: 1,
  };
  return figureFrom(spec, geometry, ({ negativeFaceMm2, positiveFaceMm2 }) =>
    figure(
      spec,
      (half === 'negative' ? negativeFaceMm2 : positiveFaceMm2) / 100,
      'Face against the part and the lands of this half: what is sealed and released.',
    ),
  );
}

function thinnestStone({ inputs, measured }: StepContext, geometry: Answer<MoldGeometry>): Figure {
  const spec: FigureSpec = { id: 'mold.thinnestStoneMm', label: 'Thinnest stone', unit: 'mm', decimals: 2 };
  return figureFrom(spec, geometry, ({ thinnest, method }) => {
    if (thinnest === null)
      return unknownFigure(
        spec,
        method === 'solid booleans'
          ? 'No two faces of stone stand face to face.'
          : 'Not measured: the model is not sound enough for the halves to be solids.',
      );
    const places = ([half, kind]: readonly [Half, 'show' | 'core']) => {
      const { mm: value, atMm } = thinnest[half];
      const place =
        measured === null
          ? ''
          : `, ${placeName({ boxMinMm: measured.summary.boxMinMm, boxMaxMm: measured.summary.boxMaxMm, pull: inputs.part.pull }, atMm, kind)}`;
      return `${half}: ${mm(value, 2)}${place} (${atMm.map((at) => formatNumber(at, 1)).join(', ')})`;
    };
    return figure(
      spec,
      Math.min(thinnest.negative.mm, thinnest.positive.mm),
      'Largest sphere inside the stone that touches its face, over each half.',
      places(['negative', 'show']),
      places(['positive', 'core']),
    );
  });
}

function findingFigures(
  { inputs, pourFindings = null }: StepContext,
  geometry: Answer<MoldGeometry>,
): readonly Figure[] {
  const locking: FigureSpec = {
    id: 'mold.lockingMl',
    label: 'Stone caught in undercuts',
    unit: 'mL',
    decimals: 2,
  };
  const keys: FigureSpec = { id: 'mold.keysPlaced', label: 'Keys that find room', unit: '', decimals: 0 };
  const why = !geometry.known
    ? geometry.why
    : pourFindings === null
      ? 'Not looked for with these volumes.'
      : null;
  if (why !== null || pourFindings === null)
    return [unknownFigure(locking, why ?? ''), unknownFigure(keys, why ?? '')];
  return [
    figure(
      locking,
      pourFindings.lockingMm3 / 1000,
      'Stone of the positive between two walls along one line of the pull: it hooks behind the pattern and the laminate.',
    ),
    figure(
      keys,
      pourFindings.keysPlaced,
      `Of ${inputs.mold.keyCount} wanted, each ${mm(inputs.mold.keyDiameterMm)} wide, on the lands.`,
    ),
  ];
}
