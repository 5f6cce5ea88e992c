import type { Figure, FigureStatus } from '../core/figure';
import { sources, type Source } from '../core/sources';
import { formatBand, shownDecimals } from '../core/units/formatFigure';
import { formatNumber, notKnown } from '../core/units/formatNumber';
import { Row } from './Row';

/** What a status says about how far to trust the number. */
const statusMeaning: Record<FigureStatus, string> = {
  published: 'published value',
  computed: 'computed from the numbers given',
  measured: 'measured at the bench',
  'supplier’s sheet': 'from the supplier’s sheet, by the card of your shelf',
  'common practice': 'common practice, no source',
  'from memory': 'from memory, not verified: check it before you rely on it',
  'your entry': 'your entry',
};

/** Statuses that must be seen without opening the working. */
const toldAtOnce: readonly FigureStatus[] = [
  'measured',
  'supplier’s sheet',
  'common practice',
  'from memory',
  'your entry',
];

function FigureValue({ figure }: { readonly figure: Figure }) {
  const { value, unit, decimals } = figure;
  if (value === null) return <span className="quiet">{notKnown}</span>;
  if (typeof value === 'string') return <span className="words">{value}</span>;
  const text =
    typeof value === 'number'
      ? formatNumber(value, shownDecimals(figure))
      : value.map((one) => formatNumber(one, decimals)).join(' × ');
  return (
    <>
      <span className="number">{text}</span>
      {unit ? <span className="unit">{unit}</span> : null}
    </>
  );
}

const sourceText = ({ full, address }: Source) =>
  address === undefined ? full : `${full} Read at ${address}`;

/** A worked-out figure; the question mark opens its relation, status and source. */
export function FigureRow({ figure }: { readonly figure: Figure }) {
  const band = formatBand(figure);
  const notes = [
    band === '' ? null : `estimate, ${band}`,
    figure.value !== null && toldAtOnce.includes(figure.status) ? figure.status : null,
  ].filter((note) => note !== null);
  return (
    <Row
      label={figure.label}
      note={notes.join(' · ')}
      value={<FigureValue figure={figure} />}
      helpLabel={`Working of "${figure.label}"`}
      help={
        <>
          {figure.working.map((line) => (
            <p key={line} className="working-relation">
              {line}
            </p>
          ))}
          <p>
            Status: {statusMeaning[figure.status]}.
            {figure.source === null ? '' : ` Source: ${sourceText(sources[figure.source])}`}
          </p>
        </>
      }
    />
  );
}
