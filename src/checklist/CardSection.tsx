import { expectedWords } from '../steps/bench/written';
import { verdictClass } from '../ui/VerdictMark';
import { DrawingView } from './DrawingView';
import type { BenchCard, PrintedBlank } from './model';

/** Full size over drawn size, as drawings say it. */
const scaleWords = (scale: number | null) => (scale === null ? '' : `, 1\u00a0:\u00a0${scale}`);

/** The bench card: one page. */
export function CardSection({ card, title }: { readonly card: BenchCard; readonly title: string }) {
  const { of, word, stamp, headline, numbers, drawings, blanks, safety, footer } = card;
  return (
    <section className="bench-card" aria-label="Bench card">
      <header className="card-head">
        <div>
          <h2>{title}</h2>
          <p className="quiet">bench card · {of}</p>
        </div>
        <p className={`card-stamp card-stamp-${verdictClass[word]}`}>{stamp}</p>
      </header>
      <p>{headline}</p>
      <dl className="card-numbers">
        {numbers.map((one) => (
          <div key={one.label}>
            <dt>{one.label}</dt>
            <dd>
              <span className="card-number">{one.value}</span> {one.after}
            </dd>
          </div>
        ))}
      </dl>
      <div className="card-panels">
        {drawings.map(({ drawing, under }) => (
          <figure key={drawing.title} className="card-panel">
            <h3>
              {drawing.title}
              {scaleWords(drawing.scale)}
            </h3>
            <DrawingView drawing={drawing} />
            <figcaption className="quiet">{under}</figcaption>
          </figure>
        ))}
        <div className="card-panel">
          <h3>Read back, write here</h3>
          <ul className="card-blanks">
            {blanks.map((blank) => (
              <li key={blank.id}>
                <BlankLine blank={blank} />
              </li>
            ))}
          </ul>
        </div>
      </div>
      <p className="card-safety">
        <strong>CAUTION</strong> {safety}
      </p>
      <p className="card-footer">{footer}</p>
    </section>
  );
}

/** Number, what is read, what is expected, and the room to write. */
export function BlankLine({ blank }: { readonly blank: PrintedBlank }) {
  const expected = expectedWords(blank);
  return (
    <span className="blank">
      <span className="blank-number">{blank.number}</span>
      <span className="blank-label">
        {blank.label} <span className="quiet">{expected === '' ? blank.unit : expected}</span>
      </span>
      <span className="blank-box">{blank.written}</span>
    </span>
  );
}
