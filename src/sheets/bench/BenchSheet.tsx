import type { Figure, StepReport } from '../../core/figure';
import type { ChecklistModel, LineRecord, PhasePage, PrintedBlank } from '../../checklist/model';
import { noteId } from '../../checklist/printModel';
import { RecordEntry } from '../../checklist/RecordEntry';
import { followsFrom } from '../../steps/bench/follows';
import { expectedWords, inputAt, measuredAt, standingOf } from '../../steps/bench/written';
import { specAt } from '../../steps/inputs/project';
import { figuresById } from '../../steps/kit/figuresById';
import { steps } from '../../steps/registry';
import type { StepContext } from '../../steps/shared/context';
import { NumberCell } from '../../ui/NumberCell';
import { VerdictMark } from '../../ui/VerdictMark';
import { benchPage } from './benchPages';
import './bench.css';

export interface BenchSheetProps {
  readonly model: ChecklistModel;
  readonly context: StepContext;
  readonly reports: ReadonlyMap<string, StepReport>;
  readonly readOnly: boolean;
  /** Where the running clocks are. */
  readonly liveHref: string;
  readonly onReading: (path: string, value: number | null) => void;
  readonly onRecord: (lineId: string, change: Partial<LineRecord>) => void;
}

/** Takes what was written on the paper, by its numbers: planned beside built, and what follows. */
export function BenchSheet(props: BenchSheetProps) {
  const { model, context, reports, liveHref } = props;
  const { blanks, phases } = model;
  const figures = figuresById(reports);
  const read = blanks.filter((blank) => measuredAt(context.inputs, blank) !== null);
  const out = read.filter((blank) => isOut(context, blank));
  return (
    <article className="sheet bench-sheet">
      <header>
        <h1 tabIndex={-1}>{benchPage.title}</h1>
        <p className="quiet">{benchPage.question}</p>
      </header>
      <section aria-label="Readings" className="bench-summary">
        <p aria-live="polite">
          <strong>
            {read.length} of {blanks.length} read
            {out.length === 0 ? '' : `; out of band: ${out.map(({ number }) => number).join(', ')}`}.
          </strong>{' '}
          <a href={liveHref}>Clocks and oven run</a>
        </p>
      </section>
      {phases.map((phase) => (
        <PhaseReadings key={phase.id} {...props} phase={phase} figures={figures} />
      ))}
    </article>
  );
}

const isOut = ({ inputs }: StepContext, blank: PrintedBlank) =>
  standingOf(measuredAt(inputs, blank), blank.band) === 'out of band';

interface PhaseReadingsProps extends BenchSheetProps {
  readonly phase: PhasePage;
  readonly figures: ReadonlyMap<string, Figure>;
}

function PhaseReadings({ phase, figures, ...props }: PhaseReadingsProps) {
  const { model, context, reports, readOnly, onReading, onRecord } = props;
  const own = model.blanks.filter((blank) => blank.phase === phase.id);
  return (
    <section className="bench-phase" aria-label={phase.title}>
      <h2>{phase.title}</h2>
      {own.map((blank) => (
        <ReadingRow
          key={blank.id}
          blank={blank}
          context={context}
          reports={reports}
          figures={figures}
          disabled={readOnly}
          onReading={onReading}
        />
      ))}
      <label className="bench-note">
        <span>Note</span>
        <RecordEntry
          label={`Note on ${phase.title}`}
          value={phase.note}
          width="note"
          disabled={readOnly}
          onChange={(measured) => onRecord(noteId(phase.id), { measured })}
        />
      </label>
    </section>
  );
}

interface ReadingRowProps {
  readonly blank: PrintedBlank;
  readonly context: StepContext;
  readonly reports: ReadonlyMap<string, StepReport>;
  readonly figures: ReadonlyMap<string, Figure>;
  readonly disabled: boolean;
  readonly onReading: (path: string, value: number | null) => void;
}

function ReadingRow({ blank, context, reports, figures, disabled, onReading }: ReadingRowProps) {
  const { number, label, path } = blank;
  const spec = specAt(path);
  if (spec?.kind !== 'number') return null;
  const value = measuredAt(context.inputs, blank);
  const standing = standingOf(value, blank.band);
  const follows = followsFrom(blank, context, figures);
  return (
    <div className={`reading ${standing === 'out of band' ? 'reading-out' : ''}`} data-blank={number}>
      <span className="reading-number">{number}</span>
      <span className="reading-what">
        {label}
        <span className="quiet"> {expectedWords(blank)}</span>
      </span>
      <NumberCell
        label={`${number} ${label}`}
        limits={spec}
        value={mayBeEmpty(path) ? value : inputAt(context.inputs, path)}
        mayBeEmpty={mayBeEmpty(path)}
        disabled={disabled}
        onChange={(read) => onReading(path, read)}
      />
      {value === null ? null : (
        <p className="reading-follows" aria-live="polite">
          <strong>{standing}</strong>
          {follows === '' ? null : `: ${follows}`}
          <VerdictWords ids={blank.verdicts} reports={reports} />
        </p>
      )}
    </div>
  );
}

/** A clamp has a force and a weighing has an hour from the start. */
const mayBeEmpty = (path: string) => !/(?:forceN|hours)$/u.test(path);

/** What the checks say that rest on a reading. */
function VerdictWords({
  ids,
  reports,
}: {
  readonly ids: readonly string[];
  readonly reports: ReadonlyMap<string, StepReport>;
}) {
  const told = steps.flatMap(({ id, title }) =>
    (reports.get(id)?.verdicts ?? [])
      .filter((verdict) => ids.includes(verdict.id))
      .map((verdict) => ({ title, verdict })),
  );
  if (told.length === 0) return null;
  return (
    <span className="reading-verdicts">
      {told.map(({ title, verdict }) => (
        <span key={verdict.id}>
          <VerdictMark word={verdict.word} sizePx={18} decorative /> {title}: {verdict.word}
        </span>
      ))}
    </span>
  );
}
