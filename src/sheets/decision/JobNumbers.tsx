import type { Figure, StepReport } from '../../core/figure';
import { programOnDial } from '../../core/cure/ovenProgram';
import { Problem } from '../../core/problem';
import { formatFigure } from '../../core/units/formatFigure';
import { formatQuantity, notKnown } from '../../core/units/formatNumber';
import { hoursMinutes } from '../../steps/cure/say';
import type { ProjectInputs } from '../../steps/inputs/project';
import { programOf } from '../../steps/shared/process';

export interface JobNumbersProps {
  readonly reports: ReadonlyMap<string, StepReport>;
  readonly inputs: ProjectInputs;
}

/** Until the last dwell is over. */
function ovenTime(inputs: ProjectInputs): string {
  try {
    return hoursMinutes(programOnDial(programOf(inputs)).heatedS);
  } catch (error) {
    if (error instanceof Problem) return notKnown;
    throw error;
  }
}

/** The five numbers of the job. */
export function JobNumbers({ reports, inputs }: JobNumbersProps) {
  const figures = new Map<string, Figure>(
    [...reports.values()].flatMap((report) => report.figures.map((figure) => [figure.id, figure])),
  );
  const shown = (id: string) => {
    const figure = figures.get(id);
    return figure === undefined ? notKnown : formatFigure(figure);
  };
  const bothHalves = (what: string): string => {
    const [negative, positive] = ['negative', 'positive'].map(
      (half) => figures.get(`mold.${half}.${what}`)?.value ?? null,
    );
    const isKnown = typeof negative === 'number' && typeof positive === 'number';
    return formatQuantity(isKnown ? negative + positive : null, 0, 'g');
  };
  const plies = inputs.plies.stack.length;
  const numbers: readonly (readonly [label: string, value: string, note: string])[] = [
    ['Stack', `${plies} ${plies === 1 ? 'ply' : 'plies'}`, `wall wanted: ${shown('plies.wantedWallMm')}`],
    ['Powder', bothHalves('powderG'), `with ${bothHalves('waterG')} of water, both halves`],
    ['Part', shown('plies.partMassG'), 'cured, by calculation'],
    ['Oven', ovenTime(inputs), 'until the last dwell is over'],
    ['Box', shown('mold.boxMm'), 'inside'],
  ];
  return (
    <dl className="job-numbers">
      {numbers.map(([label, value, note]) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>
            <strong className="number">{value}</strong>
            <span className="quiet">{note}</span>
          </dd>
        </div>
      ))}
    </dl>
  );
}
