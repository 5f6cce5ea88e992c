/** Where the oven program has the laminate gel: void pressure, sizes and warp are all counted from there. */
import type { GelPoint } from '../../core/cure/gelPoint';
import type { Figure, FigureStatus, Verdict } from '../../core/figure';
import { closingTable } from '../inputs/closing';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure } from '../kit/figures';
import type { ProjectInputs } from '../inputs/project';
import { processOf } from '../shared/process';
import { cureFigureSpecs as specs } from './figureSpecs';
import { celsius, hoursMinutes } from './say';

const withSpan = (one: Figure, values: readonly number[]): Figure => ({
  ...one,
  band: [Math.min(...values), Math.max(...values)],
});

/** A gel time that nobody has touched is the one from memory. */
function gelTimeStatus({ closing }: ProjectInputs): FigureStatus {
  const isReadyMade =
    closing.timeToGelMin === closingTable.timeToGelMin.default &&
    closing.gelTimeAtC === closingTable.gelTimeAtC.default;
  return isReadyMade ? 'from memory' : 'computed';
}

export function gelFigures({ inputs }: Pick<StepContext, 'inputs'>): readonly Figure[] {
  const { gel, gelAfterS, gelBand, gelWorking } = processOf(inputs);
  const withEnds = (one: Figure, read: (at: GelPoint) => number): Figure =>
    gelBand === null ? one : withSpan(one, gelBand.map(read));
  const status = gelTimeStatus(inputs);
  const after = { ...specs.gelAfter, status };
  return [
    withEnds(
      figure(
        { ...specs.gel, status: gel.isOwn ? 'your entry' : status },
        gel.valueC,
        `${celsius(gel.valueC)}, ${gel.how}.`,
        gelWorking,
      ),
      ({ temperatureC }) => temperatureC,
    ),
    gelAfterS === null
      ? unknownFigure(after, 'The oven program ends before the gel time is reached.')
      : withEnds(
          figure(after, gelAfterS, `${hoursMinutes(gelAfterS)} from the start of the program.`, gelWorking),
          ({ timeS }) => timeS,
        ),
  ];
}

/** None while the program has no stage, which is another verdict's matter, or where the maker knows the gel. */
export function gelVerdicts(inputs: ProjectInputs): readonly Verdict[] {
  const { gel, gelAfterS, hottestC } = processOf(inputs);
  if (gelAfterS !== null || hottestC === null || gel.isOwn) return [];
  return [
    {
      id: 'cure.gel',
      word: 'look again',
      reason: `The program ends before the resin gels, by its gel time of ${inputs.closing.timeToGelMin} min at ${celsius(inputs.closing.gelTimeAtC)}. Sizes, warp and voids are counted from the hottest stage meanwhile.`,
      fix: 'Read the gel time off the data sheet and enter it at the Mold closing step, or hold longer.',
    },
  ];
}
