import { askedOf, type Answer, type Answers } from './evaluate';
import type { Question } from './question';
import { stageNames } from './stages';
import type { StageName } from './told';

/** Answers kept of each stage, and facets of all kept measurements together; about 90 bytes a facet, so under 100 MB. */
const [mostOfStage, mostFacetsKept] = [6, 1_100_000];

/** The answers of this session: undo, and a project that is opened again, need not wait for what was known before. */
export interface AnswerShelf {
  keep<Name extends StageName>(name: Name, answer: Answer<Name>): void;
  /** All that is known of the question, in the order of the stages. */
  recall(question: Question): Answers;
}

export function createAnswerShelf(): AnswerShelf {
  const kept = new Map<StageName, Answer<StageName>[]>();

  function tooManyFacets(): boolean {
    const parts = (kept.get('part') ?? []) as readonly Answer<'part'>[];
    return (
      parts.length > 1 && parts.reduce((sum, { told }) => sum + (told?.facetCount ?? 0), 0) > mostFacetsKept
    );
  }

  return {
    keep(name, answer) {
      const others = (kept.get(name) ?? []).filter(({ key }) => key !== answer.key);
      // The newest first.
      kept.set(name, [answer, ...others].slice(0, mostOfStage));
      while (tooManyFacets()) for (const answers of kept.values()) if (answers.length > 1) answers.pop();
    },
    recall: (question) =>
      stageNames.reduce<Answers>((known, name) => {
        const asked = askedOf(name, question, known);
        const answer = asked === null ? undefined : kept.get(name)?.find(({ key }) => key === asked);
        return answer === undefined ? known : { ...known, [name]: answer };
      }, {}),
  };
}
