import { Button } from '../ui/Button';
import { VerdictMark } from '../ui/VerdictMark';
import { ChecklistSectionTable, type OnRecord } from './ChecklistSectionTable';
import type { ChecklistModel } from './model';

export interface ChecklistSheetProps {
  readonly model: ChecklistModel;
  /** Another tab holds the project. */
  readonly readOnly: boolean;
  readonly onRecord: OnRecord;
  readonly onPrint: () => void;
  readonly onSaveHtml: () => void;
}

/** The sheet that is carried to the bench; on screen and on paper it is the same one. */
export function ChecklistSheet({ model, readOnly, onRecord, onPrint, onSaveHtml }: ChecklistSheetProps) {
  return (
    <article className="sheet checklist">
      <header className="check-head">
        <div>
          <h1 tabIndex={-1}>
            <span className="screen-only">Checklist</span>
            <span className="paper-only">{model.title}</span>
          </h1>
          <p className="quiet screen-only">What do I do, in which order, with which numbers?</p>
        </div>
        <div className="button-row screen-only">
          <Button onClick={onSaveHtml}>Save as HTML file</Button>
          <Button kind="main" onClick={onPrint}>
            Print
          </Button>
        </div>
      </header>
      {model.incomplete.length > 0 ? (
        <p className="check-incomplete">
          <strong>Incomplete.</strong> Do not work from this sheet. {model.incomplete.join(' ')}
        </p>
      ) : null}
      <dl className="check-facts">
        {model.header.map((fact) => (
          <div key={fact.label}>
            <dt>{fact.label}</dt>
            <dd>{fact.value}</dd>
          </div>
        ))}
      </dl>
      <section className="check-ready" aria-label="Verdicts">
        <strong>
          <VerdictMark word={model.ready.word} decorative /> All steps: {model.ready.word}
        </strong>
        <ul>
          {model.ready.steps.map((step) => (
            <li key={step.title}>
              <VerdictMark word={step.word} sizePx={18} decorative /> {step.title}: {step.word}
            </li>
          ))}
        </ul>
      </section>
      <section aria-label="Materials and quantities">
        <table className="check-table check-quantities">
          <thead>
            <tr className="check-title">
              <th colSpan={3} scope="colgroup">
                Materials and quantities
              </th>
            </tr>
          </thead>
          <tbody>
            {model.quantities.map((quantity) => (
              <tr key={`${quantity.label} ${quantity.value}`}>
                <th scope="row">{quantity.label}</th>
                <td className="quantity">{quantity.value}</td>
                <td className="quiet">{quantity.status}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {model.sections.map((section, index) => (
        <ChecklistSectionTable
          key={section.id}
          sheetTitle={model.title}
          number={index + 1}
          section={section}
          disabled={readOnly}
          onRecord={onRecord}
        />
      ))}
    </article>
  );
}
