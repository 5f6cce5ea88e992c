import type { Answers } from '../../pipeline/evaluate';
import type { DeskState } from './deskState';

type Shown = Pick<DeskState, 'shape' | 'reply' | 'lastRun'>;

/** What is drawn: the newest shape, measurement and oven run, older ones while newer are being worked out. */
export function shownOf(answers: Answers, before: Shown): Shown {
  const shape = answers.part?.told ?? before.shape;
  return {
    shape,
    reply: replyOf(answers, before.reply),
    lastRun: (answers['fine oven run'] ?? answers['oven run'])?.told ?? before.lastRun,
  };
}

function replyOf(answers: Answers, before: Shown['reply']): Shown['reply'] {
  const shape = answers.part?.told;
  const measured = answers.measurement?.told;
  if (!shape || !measured) return before;
  const repaired = answers['repaired walls'];
  // Until the walls of the new repairs are in, those of the old ones stay.
  if (repaired === undefined && before?.health === measured.health) return before;
  const wallMm = repaired?.told?.wallMm ?? measured.maps.closing.wallMm;
  const isSame =
    before?.shape === shape && before.health === measured.health && before.maps.closing.wallMm === wallMm;
  if (isSame) return before;
  const closing = repaired?.told?.closing ?? measured.summary.closing;
  return {
    ...measured,
    shape,
    summary: { ...measured.summary, closing },
    maps: { ...measured.maps, closing: { ...measured.maps.closing, wallMm } },
  };
}
