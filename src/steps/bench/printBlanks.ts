/** What is read on the printed pattern. */
import { around, upperCase, within, type BlankDraft, type Known } from './blank';
import { placesThatMatter } from './places';

const placeLetters = ['A', 'B', 'C'] as const;
/** Where the wall is wrong all over, its worst places tell nothing more. */
const leastRightPercent = 50;

const axes = ['x', 'y', 'z'] as const;

export function printBlanks({ context, number }: Known): readonly BlankDraft[] {
  const { inputs, measured } = context;
  const lowMm = number('walls.bandLowMm');
  const highMm = number('walls.bandHighMm');
  const wallBand = lowMm === null || highMm === null ? null : ([lowMm, highMm] as const);
  const wall = (id: string, field: string, label: string): BlankDraft => ({
    id,
    phase: 'print',
    label,
    unit: 'mm',
    decimals: 2,
    path: `bench.${field}`,
    expected: number('plies.wantedWallMm'),
    band: wallBand,
    figures: [],
    verdicts: [],
  });
  const places = placesThatMatter(context);
  const mostlyRight = (number('walls.inBandPercent') ?? 0) >= leastRightPercent;
  const size = measured?.summary;
  const lengths = axes.map((axis, at): BlankDraft => {
    const drawnMm = size === undefined ? null : (size.boxMaxMm[at] ?? 0) - (size.boxMinMm[at] ?? 0);
    const expected = drawnMm === null ? null : drawnMm * inputs.mold.printScale;
    return {
      id: `print.${axis}`,
      phase: 'print',
      label: `print along ${axis}`,
      unit: 'mm',
      decimals: 2,
      path: `mold.measured.print${upperCase[axis]}Mm`,
      expected,
      band: within(expected, inputs.mold.sizeToleranceMm),
      figures: ['mold.finishedLengthMm', 'mold.printScale'],
      verdicts: ['mold.size'],
    };
  });
  return [
    ...lengths,
    { ...wall('wall.typical', 'wallTypicalMm', 'wall at a typical place'), isOnCard: true },
    ...placeLetters.map((letter): BlankDraft => {
      const noted = places.find((one) => one.letter === letter && one.isWall);
      const drawnMm = noted?.worst ?? null;
      return {
        ...wall(`wall.${letter}`, `wall${letter}Mm`, `wall at ${letter} on the map`),
        expected: drawnMm,
        band: within(drawnMm, wallBand === null ? 0 : (wallBand[1] - wallBand[0]) / 2),
        isAsked: noted !== undefined && mostlyRight,
      };
    }),
    {
      id: 'pattern',
      phase: 'print',
      label: 'pattern on the scale',
      unit: 'g',
      decimals: 1,
      path: 'mold.measured.patternG',
      expected: number('mold.patternG'),
      band: around(number('mold.patternG'), 0.1),
      figures: ['mold.patternG', 'mold.counterweightG'],
      verdicts: ['mold.float'],
    },
  ];
}
