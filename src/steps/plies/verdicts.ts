/** Verdicts of the Ply schedule step: does the wall fit the stack, do whole beads make it, is the laminate sound? */
import { filledWall, wallWord } from '../../core/laminate/acceptedWalls';
import type { Verdict } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import { wallsFor } from '../shared/band';
import type { StepContext } from '../shared/context';
import { spreadWords, wallFit } from '../shared/wallFit';
import { wallInUse } from '../shared/wallInUse';
import { laminateVerdicts } from './laminateVerdicts';
import { localVerdict } from './localStack';
import { outTimeVerdict } from './rolls';
import { resolveStack, type KnownStack } from '../shared/stack';

const mm = (value: number, decimals = 2) => `${formatNumber(value, decimals)} mm`;

export function pliesVerdicts(context: StepContext): readonly Verdict[] {
  const stack = resolveStack(context.inputs.plies);
  if (!stack.known) return [{ id: 'plies.fit', word: 'not yet known', reason: stack.reason, fix: stack.fix }];
  return [
    fitVerdict(context),
    pairingVerdict(context, stack),
    ...localVerdict(context, stack),
    ...laminateVerdicts(context, stack),
    ...outTimeVerdict(context),
  ];
}

function fitVerdict(context: StepContext): Verdict {
  const id = 'plies.fit';
  const fit = wallFit(context);
  if (!fit.known) return { id, word: 'not yet known', reason: fit.reason, fix: fit.fix };
  const { word, told } = fit;
  return {
    id,
    word,
    reason: `${told}${spreadWords(fit)}`,
    fix: '',
  };
}

/** The beads that the wall is printed in; their width is the last thing that is easily turned. */
function pairingVerdict(context: StepContext, stack: KnownStack): Verdict {
  const id = 'plies.pairing';
  const { part, plies, walls } = context.inputs;
  const band = wallsFor(stack, walls);
  const wall = wallInUse(context);
  const drawnMm = wall.known ? wall.medianMm : band.wantedMm;
  const beads =
    part.nominalWall === 'print' ? part.printLines : Math.max(1, Math.round(drawnMm / plies.lineWidthMm));
  const wallMm = beads * plies.lineWidthMm;
  const word = wallWord(band, wallMm);
  const { voidShare, fiberFraction } = filledWall(band, wallMm);
  const left =
    voidShare > 0
      ? `${formatNumber(100 * voidShare, 1)} % of it would be air`
      : `fiber fills ${formatNumber(100 * fiberFraction, 0)} %`;
  const count = `${stack.total.plies} ${stack.total.plies === 1 ? 'ply' : 'plies'}`;
  const reason = `${beads} × ${mm(plies.lineWidthMm)} ${beads === 1 ? 'bead is' : 'beads are'} ${mm(wallMm)} for ${count} that want ${mm(band.wantedMm)}: ${left}.`;
  return { id, word: word === 'go' ? 'go' : 'look again', reason, fix: '' };
}
