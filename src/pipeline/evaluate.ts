/** The walk over the stages, for page and command alike, and what the step reports are given of its results. */
import type { PartSummary } from '../core/part/partSummary';
import { Problem } from '../core/problem';
import type { MeasuredPart, StepContext } from '../steps/shared/context';
import type { Question } from './question';
import { stageNames, stages } from './stages';
import type { RepairedWalls, StageName, Told } from './told';

/** What a stage has answered, or why it refused. */
export interface Answer<Name extends StageName> {
  /** What was asked: its own key and those of its needs. */
  readonly key: string;
  readonly told: Told[Name] | null;
  /** A sentence in the maker's words; then `told` is null. */
  readonly refused: string | null;
}

export type Answers = { readonly [Name in StageName]?: Answer<Name> };

/**
 * What the question asks of a stage, given the answers to the stages before; null while one of those is missing, where one has
 * refused, or where the inputs ask nothing.
 */
export function askedOf(name: StageName, question: Question, answers: Answers): string | null {
  const { needs, key } = stages[name];
  const before = needs.map((need) => answers[need]);
  if (before.some((answer) => answer === undefined || answer.refused !== null)) return null;
  const own = key(question, answers.halves?.told?.geometry ?? null);
  return own === null ? null : JSON.stringify([own, ...before.map((answer) => answer!.key)]);
}

/** The first stage that is asked and not answered; null when all that can be known is known. */
export function nextStage(
  question: Question,
  answers: Answers,
  skips: ReadonlySet<StageName>,
): StageName | null {
  return (
    stageNames.find(
      (name) => !skips.has(name) && answers[name] === undefined && askedOf(name, question, answers) !== null,
    ) ?? null
  );
}

/** Whether the stage has no answer and will have one once those that it needs are in. */
export function isComing(name: StageName, question: Question, answers: Answers): boolean {
  const { needs, key } = stages[name];
  if (answers[name] !== undefined || key(question, answers.halves?.told?.geometry ?? null) === null)
    return false;
  return needs.every((need) => answers[need]?.refused === null || isComing(need, question, answers));
}

/** Those of the answers that are answers to this question too. */
export function unchanged(answers: Answers, question: Question): Answers {
  return stageNames.reduce<Answers>((known, name) => {
    const answer = answers[name];
    return answer !== undefined && answer.key === askedOf(name, question, known)
      ? { ...known, [name]: answer }
      : known;
  }, {});
}

export type RunStage = <Name extends StageName>(name: Name, question: Question) => Promise<Told[Name]>;

/**
 * Runs one stage.
 * @throws whatever it threw, unless its refusal is a result
 */
export async function answerOf<Name extends StageName>(
  name: Name,
  question: Question,
  answers: Answers,
  run: RunStage,
): Promise<Answer<Name>> {
  const key = askedOf(name, question, answers);
  if (key === null) throw new Error(`${name} was to be run without what it needs`);
  try {
    return { key, told: await run(name, question), refused: null };
  } catch (error) {
    const isResult = error instanceof Problem && !error.code.startsWith('job.');
    if (isResult && stages[name].mayRefuse === true) return { key, told: null, refused: error.message };
    throw error;
  }
}

/**
 * All answers to one question, in order.
 * @param skips stages that are not wanted, and that no wanted one needs
 * @param before answers to another question about the same mesh: those that this one does not touch are taken over
 */
export async function evaluate(
  question: Question,
  run: RunStage,
  skips: ReadonlySet<StageName> = new Set(),
  before: Answers = {},
): Promise<Answers> {
  let answers = unchanged(before, question);
  for (;;) {
    const name = nextStage(question, answers, skips);
    if (name === null) return answers;
    answers = { ...answers, [name]: await answerOf(name, question, answers, run) };
  }
}

/** What the step reports are given; the page adds what only it knows. */
export function contextOf(answers: Answers): Omit<StepContext, 'inputs' | 'pattern'> {
  const { halves } = answers;
  const run = answers['fine oven run'] ?? answers['oven run'];
  const moldProblem = halves?.refused ?? null;
  return {
    measured: measuredOf(answers),
    mold: halves?.told?.geometry ?? null,
    pourFindings: halves?.told?.findings ?? null,
    moldProblem,
    cure: run?.told ?? answers['oven run']?.told ?? null,
    cureProblem: run?.refused ?? answers['filled mold']?.refused ?? moldProblem,
  };
}

const summaries = new WeakMap<RepairedWalls, PartSummary>();

/** The same object for the same walls, so that what goes by it is not worked out again. */
function summaryAsRepaired(summary: PartSummary, repaired: RepairedWalls): PartSummary {
  const kept = summaries.get(repaired);
  if (kept !== undefined) return kept;
  const made = { ...summary, closing: repaired.closing };
  summaries.set(repaired, made);
  return made;
}

/** The measured part as the step reports see it: closing goes by the stone as it was repaired. */
function measuredOf(answers: Answers): MeasuredPart | null {
  const shape = answers.part?.told;
  const measured = answers.measurement?.told;
  if (!shape || !measured) return null;
  const repaired = answers['repaired walls']?.told ?? null;
  return {
    health: measured.health,
    summary: repaired === null ? measured.summary : summaryAsRepaired(measured.summary, repaired),
    patches: answers.places?.told ?? null,
    unitGuess: shape.unitGuess,
    fileBoxSize: shape.fileBoxSize,
  };
}
