import { askedOf, type Answer, type Answers } from './evaluate';
import type { Question } from './question';
import { stageNames } from './stages';
import type { StageName } from './told';

/** Answers kept of each stage, and facets of all kept shapes and measurements together; about 45 bytes each, so about 100 MB. */
const [mostOfStage, mostFacetsKept] = [6, 2_200_000];

/** The answers of this session: undo, and a project that is opened again, need not wait for what was known before. */
export interface AnswerShelf {
  keep<Name extends StageName>(name: Name, answer: Answer<Name>): void;
  /** All that is known of the question, in the order of the stages. */
  recall(question: Question): Answers;
}

export function createAnswerShelf(): AnswerShelf {
  const kept = new Map<StageName, Answer<StageName>[]>();

  const shapes = () => (kept.get('part') ?? []) as readonly Answer<'part'>[];
  const measurements = () => (kept.get('measurement') ?? []) as readonly Answer<'measurement'>[];

  /** One part may be measured along many pulls, so both are counted. The newest stays, however large. */
  function tooManyFacets(): boolean {
    if (shapes().length <= 1 && measurements().length <= 1) return false;
    const facets = [
      ...shapes().map(({ told }) => told?.facetCount ?? 0),
      ...measurements().map(({ told }) => told?.maps.kind.length ?? 0),
    ];
    return facets.reduce((sum, count) => sum + count, 0) > mostFacetsKept;
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
