/** Whether sealer and release bear the oven program. */
import type { Verdict } from '../../core/figure';
import { coatBears } from '../../core/stone/coatCards';
import type { StepContext } from '../shared/context';
import { coatsInUse, type CoatInUse } from '../mold/coatInUse';
import { processOf } from '../shared/process';
import { celsius } from './say';

const bears = ({
  bearsC: [every, some],
  status,
}: CoatInUse & { readonly bearsC: readonly [number, number] }) =>
  every === some ? `bears ${celsius(every)}` : `bears ${every} to ${celsius(some)} (${status})`;

/** None when the mold is not coated at all, or the program has no stage. */
export function coatVerdict({ inputs }: StepContext): readonly Verdict[] {
  const id = 'cure.coats';
  const coats = coatsInUse(inputs.mold);
  const { hottestAirC: hottestC } = processOf(inputs);
  if (coats.length === 0 || hottestC === null) return [];
  const told = coats.flatMap((coat) => (coat.bearsC === null ? [] : [{ ...coat, bearsC: coat.bearsC }]));
  const answers = told.map((coat) => ({ coat, answer: coatBears(coat, hottestC) }));
  const oven = `The oven’s air gets to ${celsius(hottestC)}`;
  const tooHot = answers.filter(({ answer }) => answer === 'too hot');
  const sheet = tooHot.some(({ coat }) => coat.status === 'from memory')
    ? 'Read the limit off the supplier’s sheet and enter it at Stone mold: it takes the place of the one from memory.'
    : '';
  if (tooHot.length > 0)
    return [
      {
        id,
        word: 'stop',
        reason: `${oven}. ${tooHot.map(({ coat }) => `The ${coat.what}, ${coat.name}, ${bears(coat)} and ${coat.fails} over it.`).join(' ')}`,
        fix: sheet,
      },
    ];
  const unknown = coats.filter(({ bearsC }) => bearsC === null).map(({ what }) => what);
  if (unknown.length > 0)
    return [
      {
        id,
        word: 'not yet known',
        reason: `${oven}; which ${unknown.join(' and which ')} is on the stone was not said.`,
        fix: 'Choose the kind under Sealer and release on the Stone mold sheet, or enter the limit on the supplier’s sheet.',
      },
    ];
  const some = answers.filter(({ answer }) => answer === 'some bear it');
  const all = answers.map(({ coat }) => `${coat.name} ${bears(coat)}`).join(', ');
  return some.length > 0
    ? [
        {
          id,
          word: 'look again',
          reason: `${oven}; ${all}.`,
          fix: 'Read the supplier’s sheet and enter its limit; try it on a scrap of stone in the oven.',
        },
      ]
    : [{ id, word: 'go', reason: `${oven}; ${all}.`, fix: '' }];
}

/** Whether the separator film bears the oven program; none where there is no film. */
export function filmVerdict({ inputs }: StepContext): readonly Verdict[] {
  const id = 'cure.film';
  const { filmFaces, filmLimitC } = inputs.walls;
  const { hottestAirC: hottestC } = processOf(inputs);
  if (filmFaces === 'none' || hottestC === null) return [];
  const oven = `The oven’s air gets to ${celsius(hottestC)}`;
  if (filmLimitC === 0)
    return [
      {
        id,
        word: 'not yet known',
        reason: `${oven}; what the separator film bears was not read.`,
        fix: 'Read the film’s data sheet and enter its limit at the Walls step; a scrap of it in the oven tells whether it shrinks.',
      },
    ];
  return filmLimitC < hottestC
    ? [
        {
          id,
          word: 'stop',
          reason: `${oven}; the separator film bears ${celsius(filmLimitC)}: it shrinks, wrinkles and sticks over it.`,
          fix: '',
        },
      ]
    : [{ id, word: 'go', reason: `${oven}; the separator film bears ${celsius(filmLimitC)}.`, fix: '' }];
}
