import { isComing } from '../../pipeline/evaluate';
import type { StageName } from '../../pipeline/told';
import type { DeskState } from '../../sheets/measuring/deskState';
import type { AwaitedResult } from '../../steps/kit/awaited';

/** What the maker is told of the stages, in the order in which it comes. */
const results: readonly (readonly [AwaitedResult['stage'], StageName])[] = [
  ['measurement', 'measurement'],
  ['places', 'places'],
  ['repaired walls', 'repaired walls'],
  ['halves', 'halves'],
  ['other half', 'halves'],
  ['oven run', 'oven run'],
  ['fine oven run', 'fine oven run'],
  ['fit', 'measurement'],
];

const ofThePart: ReadonlySet<StageName> = new Set([
  'part',
  'walls',
  'measurement',
  'places',
  'repaired walls',
]);

/** The part is not measured, and nothing is being done about it. */
export const isMeasurementStopped = (stopped: StageName | null): boolean =>
  stopped !== null && ofThePart.has(stopped);

type Awaiting = Pick<DeskState, 'question' | 'answers' | 'importing' | 'stopped'>;

/**
 * What of an open project is still being worked out. Told from what is there and what is not: between two jobs there is a
 * moment without one.
 */
export function awaitedResults(
  { question, answers, importing, stopped }: Awaiting,
  isOtherHalfAwaited: boolean,
  isFitAwaited = false,
): readonly AwaitedResult[] {
  const awaited: AwaitedResult[] = importing ? [{ stage: 'import', isUnderWay: true }] : [];
  if (question === null) return awaited;
  const isMissing = ([result, stage]: (typeof results)[number]): boolean => {
    if (result === 'fit')
      return isFitAwaited && (answers.measurement !== undefined || isComing(stage, question, answers));
    if (result === 'other half') return isOtherHalfAwaited && answers.halves?.refused == null;
    // What follows from a measurement is named once there is one; a coarse run is followed by a fine one.
    if (result === 'places' || result === 'repaired walls')
      return answers.measurement !== undefined && isComing(stage, question, answers);
    if (result === 'fine oven run')
      return answers['oven run']?.told != null && isComing(stage, question, answers);
    return isComing(stage, question, answers);
  };
  const order = results.map(([, stage]) => stage);
  const stoppedFrom = stopped === null ? Infinity : Math.max(0, order.indexOf(stopped));
  return [
    ...awaited,
    ...results
      .filter(isMissing)
      .map(([stage, from]) => ({ stage, isUnderWay: order.indexOf(from) < stoppedFrom })),
  ];
}
