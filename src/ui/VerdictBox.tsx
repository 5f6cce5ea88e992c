import { useContext } from 'react';
import { worstWord, type Verdict, type VerdictWord } from '../core/figure';
import { Advice } from './advice';
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

/** The worst verdict in a box of its own, the other findings as lines under it, what is in order behind one line. */
export function VerdictBox({
  verdicts,
  emptyReason = 'Nothing can be judged before a pattern is in.',
}: VerdictBoxProps) {
  const adviceOf = useContext(Advice);
  const word = worstWord(verdicts);
  const first = verdicts.find((verdict) => verdict.word === word);
  // While something is missing several checks say the same; once is enough.
  const others = verdicts.filter((verdict) => verdict !== first && verdict.reason !== first?.reason);
  const findings = others.filter((verdict) => verdict.word !== 'go');
  const inOrder = others.filter((verdict) => verdict.word === 'go');
  return (
    <section aria-label="Verdict">
      <div className={`verdict verdict-${verdictClass[word]}`}>
        <VerdictMark word={word} sizePx={30} decorative />
        <div>
          <h2>{headings[word]}</h2>
          <p>{first?.reason ?? emptyReason}</p>
          {first && adviceOf(first) !== '' ? <p>{adviceOf(first)}</p> : null}
        </div>
      </div>
      {findings.map((verdict) => (
        <FindingLine key={verdict.id} verdict={verdict} />
      ))}
      {inOrder.length > 0 ? (
        <details className="verdict-finding">
          <summary>
            <VerdictMark word="go" decorative />
            <span>
              {inOrder.length === 1 ? 'One more check says go' : `${inOrder.length} more checks say go`}
            </span>
          </summary>
          <VerdictLines verdicts={inOrder} />
        </details>
      ) : null}
    </section>
  );
}

/** A finding in one line; what follows its first sentence, and the fix, open under it. */
function FindingLine({ verdict }: { readonly verdict: Verdict }) {
  const advice = useContext(Advice)(verdict);
  const [headline, rest] = splitAfterFirstSentence(verdict.reason);
  return (
    <details className="verdict-finding">
      <summary>
        <VerdictMark word={verdict.word} />
        <span>{headline}</span>
      </summary>
      {rest ? <p>{rest}</p> : null}
      {advice === '' ? null : <p>{advice}</p>}
    </details>
  );
}

function splitAfterFirstSentence(text: string): readonly [string, string] {
  const end = text.indexOf('. ');
  return end < 0 ? [text, ''] : [text.slice(0, end + 1), text.slice(end + 2)];
}

function VerdictLines({ verdicts }: { readonly verdicts: readonly Verdict[] }) {
  return (
    <ul className="verdict-others">
      {verdicts.map((verdict) => (
        <li key={verdict.id}>
          <VerdictMark word={verdict.word} />
          <span>
            {verdict.reason} {verdict.fix}
          </span>
        </li>
      ))}
    </ul>
  );
}
