import { worstWord, type Verdict, type VerdictWord } from '../core/figure';
import { VerdictMark, verdictClass } from './VerdictMark';

const headings: Record<VerdictWord, string> = {
  go: 'Go',
  'look again': 'Look again',
  stop: 'Stop',
  'not yet known': 'Not yet known',
};

export interface VerdictBoxProps {
  readonly verdicts: readonly Verdict[];
  /** Said when there is no verdict at all. */
  readonly emptyReason?: string;
}

/** The worst verdict in a box of its own, the others as lines under it. */
export function VerdictBox({
  verdicts,
  emptyReason = 'Nothing can be judged before a pattern is in.',
}: VerdictBoxProps) {
  const word = worstWord(verdicts);
  const first = verdicts.find((verdict) => verdict.word === word);
  const others = verdicts.filter((verdict) => verdict !== first);
  return (
    <section aria-label="Verdict">
      <div className={`verdict verdict-${verdictClass[word]}`}>
        <VerdictMark word={word} sizePx={30} decorative />
        <div>
          <h2>{headings[word]}</h2>
          <p>{first?.reason ?? emptyReason}</p>
          {first?.fix ? <p>{first.fix}</p> : null}
        </div>
      </div>
      {others.length > 0 ? (
        <ul className="verdict-others">
          {others.map((verdict) => (
            <li key={verdict.id}>
              <VerdictMark word={verdict.word} sizePx={22} />
              <span>
                {verdict.reason} {verdict.fix}
              </span>
            </li>
          ))}
        </ul>
      ) : null}
    </section>
  );
}
