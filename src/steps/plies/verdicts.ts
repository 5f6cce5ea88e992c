/** Verdicts of the Ply schedule step: does the wall fit the stack, do whole lines meet whole plies, is the laminate sound? */
import { exactPairMm, pairWallsWithStacks } from '../../core/laminate/pairing';
import { wantedWallMm } from '../../core/laminate/wantedPlies';
import type { Verdict } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import { wallBand, type WallBand } from '../band';
import type { StepContext } from '../context';
import { bestPair, pairingRows, wallFix } from '../wallFix';
import { wallInUse } from '../wallInUse';
import { laminateVerdicts } from './laminateVerdicts';
import { outTimeVerdict } from './rolls';
import { resolveStack, type KnownStack } from './stack';
import { stackShares } from './stackShares';

const mm = (value: number) => `${formatNumber(value, 2)} mm`;
const areaPercent = (share: number) => `${formatNumber(100 * share, 1)} %`;

export function pliesVerdicts(context: StepContext): readonly Verdict[] {
  const stack = resolveStack(context.inputs.plies);
  const band = wallBand(context.inputs);
  if (!stack.known || band === null)
    return [
      {
        id: 'plies.fit',
        word: 'not yet known',
        reason: stack.known ? 'The stack has no thickness.' : stack.reason,
        fix: stack.known ? 'Check the material cards.' : stack.fix,
      },
    ];
  return [
    fitVerdict(context, stack, band),
    pairingVerdict(context, stack, band),
    ...laminateVerdicts(context, stack),
    ...outTimeVerdict(context),
  ];
}

function fitVerdict(context: StepContext, stack: KnownStack, band: WallBand): Verdict {
  const id = 'plies.fit';
  const wall = wallInUse(context);
  if (!wall.known) return { id, word: 'not yet known', reason: wall.reason, fix: wall.fix };
  const shares = stackShares(wall, stack);
  const outside = wall.shares(band.lowMm, band.highMm);
  const wrongPercent = 100 * (outside.under + outside.over);
  const reason = wall.nominal
    ? `The wall of ${mm(wall.medianMm)} (${wall.how}) stands against a stack of ${mm(band.laidMm)} as laid and ${mm(band.curedMm)} cured.`
    : `${areaPercent(shares.over)} of the show face is over the stack as laid (${mm(band.laidMm)}): loose, no pressure. ${areaPercent(shares.within)} lies between laid and cured: pressed. ${areaPercent(shares.under)} is under the cured stack (${mm(band.curedMm)}): it holds the mold open.`;
  if (wrongPercent > context.inputs.walls.wrongShareAllowedPercent)
    return {
      id,
      word: 'stop',
      reason,
      fix: wallFix(wall.medianMm, stack, band, context.inputs),
    };
  const pressedEnough = shares.within >= 0.5;
  return {
    id,
    word: pressedEnough ? 'go' : 'look again',
    reason: pressedEnough ? reason : `${reason} Most of it is taken only by the tolerance.`,
    fix: pressedEnough ? '' : wallFix(wall.medianMm, stack, band, context.inputs),
  };
}

/** Lines come from the print's own wall when it is given, else from the wall in use, else from the stack. */
function pairingVerdict(context: StepContext, stack: KnownStack, band: WallBand): Verdict {
  const id = 'plies.pairing';
  const { part, plies, walls } = context.inputs;
  const { laidMm } = stack.total;
  const wall = wallInUse(context);
  const lines =
    part.nominalWall === 'print'
      ? part.printLines
      : Math.max(1, Math.round((wall.known ? wall.medianMm : laidMm) / plies.lineWidthMm));
  const wallMm = lines * plies.lineWidthMm;
  const mismatchMm = wallMm - laidMm;
  const side =
    Math.abs(mismatchMm) < exactPairMm
      ? 'an exact pair'
      : `${mm(Math.abs(mismatchMm))} ${mismatchMm > 0 ? 'loose' : 'tight'}`;
  const drawn =
    part.nominalWall === 'model' && wall.known && Math.abs(wall.medianMm - wallMm) > walls.overMm
      ? `The drawn wall of ${mm(wall.medianMm)} is ${formatNumber(wall.medianMm / plies.lineWidthMm, 1)} lines of ${mm(plies.lineWidthMm)}; walls print best in whole lines. `
      : '';
  const reason = `${drawn}${lines} ${lines === 1 ? 'line' : 'lines'} of ${mm(plies.lineWidthMm)} are ${mm(wallMm)} against ${mm(laidMm)} for ${stack.total.plies} ${stack.total.plies === 1 ? 'ply' : 'plies'} as laid: ${side} (common practice, no source).`;
  if (wallMm >= band.lowMm && wallMm <= band.highMm) return { id, word: 'go', reason, fix: '' };
  const own = pairWallsWithStacks(plies.lineWidthMm, stack.laidPlyMm, lines).find(
    (row) => row.lines === lines && row.nearest,
  );
  const better = bestPair(pairingRows(plies.lineWidthMm, stack), wallMm);
  const fixes: string[] = [];
  if (own !== undefined && own.plies !== stack.total.plies && Math.abs(own.mismatchMm) <= walls.overMm)
    fixes.push(`Lay ${own.plies} plies on these lines (${mm(own.stackMm)}).`);
  if (better !== null)
    fixes.push(
      `${better.lines} lines and ${better.plies} plies come nearest: ${mm(better.wallMm)} against ${mm(better.stackMm)}${better.exact ? ', exact' : ''}.`,
    );
  const wanted = wantedWallMm(band.curedMm, band.laidMm);
  const wantedLines = Math.max(1, Math.round(wanted / plies.lineWidthMm));
  fixes.push(
    `Or set the line width: ${wantedLines} × ${mm(wanted / wantedLines)} is ${mm(wanted)}, midway between cured and laid.`,
  );
  return { id, word: 'look again', reason, fix: fixes.join(' ') };
}
