/**
 * Ply cutting step: what do I cut, and does the cloth lie in the corners? The pieces are worked out when the maker asks for them, not
 * with every change of an input; until then the step holds up no pour.
 */
import type { Caution, StepReport, Verdict } from '../../core/figure';
import type { CutPlies } from '../../core/drape/cutPlies';
import type { FabricNest } from '../../core/templates/nest';
import { formatNumber } from '../../core/units/formatNumber';
import type { ProjectInputs } from '../inputs/project';
import { count, unknownFigure } from '../kit/figures';
import type { StepContext } from '../shared/context';
import { notEntered } from '../shared/decision';
import { resolveStack } from '../shared/stack';
import { cuttingFigures, cuttingSpecs, dartPairs } from './figures';

/** The pieces, and where each lies on remnants and rolls; in words where they cannot be laid out there. */
export interface CutAndNested {
  readonly cut: CutPlies;
  readonly nests: readonly FabricNest[] | string;
  /** Why there is no paper of them; '' where nothing stands against it, or nobody asked. */
  readonly noPaper: string;
}

/** Up to that share over the warning angle the cloth is coaxed by hand, over the other it does not lie (our own judgement). */
const fewShare = 0.02;
const mostShare = 0.1;
/** Up to that share of a ply’s darts may lie on those of the ply below: they meet where they begin (our own judgement). */
const mostTogether = 0.75;
/** Less of the face covered leaves places without cloth. */
const leastCovered = 0.97;

const blades: Caution = {
  id: 'cutting.blades',
  text: 'Cut on a mat with a sharp blade, away from the hand that holds the rule. Wear nitrile gloves: uncured epoxy resin can make the skin allergic, and carbon dust from dry edges irritates and conducts. The safety data sheet of the prepreg and local rules come first.',
};

export function cuttingReport(context: StepContext): StepReport {
  return {
    figures: Object.values(cuttingSpecs).map((spec) =>
      unknownFigure(spec, 'Work out the pieces, and this is known.'),
    ),
    verdicts: [notCutYet(context)],
    cautions: [],
  };
}

function notCutYet({ pattern, inputs }: StepContext): Verdict {
  const id = 'cutting.shear';
  if (pattern === null)
    return {
      id,
      word: 'not yet known',
      reason: 'No model is imported, so there is no face to lay cloth on.',
      fix: 'Import a model at Part.',
    };
  const stack = resolveStack(inputs.plies);
  if (!stack.known) return { id, word: 'not yet known', reason: stack.reason, fix: stack.fix };
  return {
    id: notEntered.cutting,
    word: 'not yet known',
    reason: 'The pieces are not worked out yet; the pour need not wait for them.',
    fix: 'Work them out here before you cut the roll.',
  };
}

/** The same where the cloth cannot be laid, in the words of why. */
export const withCuttingProblem = (report: StepReport, why: string): StepReport => ({
  ...report,
  verdicts: [{ id: 'cutting.shear', word: 'look again', reason: why, fix: '' }],
});

/** The same with the pieces, and with where each is cut from, or why it cannot be. */
export function withCutPlies(
  report: StepReport,
  inputs: ProjectInputs,
  { cut, nests, noPaper }: CutAndNested,
): StepReport {
  return {
    ...report,
    figures: cuttingFigures(inputs, cut, nests),
    verdicts: [
      shearVerdict(cut),
      coverVerdict(cut),
      dartsVerdict(cut),
      rollVerdict(nests),
      ...(noPaper === ''
        ? []
        : [{ id: 'cutting.paper', word: 'look again', reason: noPaper, fix: '' } as const]),
    ],
    cautions: [blades],
  };
}

function rollVerdict(nests: CutAndNested['nests']): Verdict {
  const id = 'cutting.roll';
  if (typeof nests === 'string') return { id, word: 'look again', reason: nests, fix: '' };
  const lengthMm = nests.reduce((sum, { rollLengthMm }) => sum + rollLengthMm, 0);
  return {
    id,
    word: 'go',
    reason: `All pieces are cut from ${formatNumber(lengthMm, 0)} mm of ${nests.length === 1 ? 'roll' : 'rolls'}${lengthMm === 0 ? ': remnants do' : ''}.`,
    fix: '',
  };
}

const percent = (share: number) => `${formatNumber(100 * share, 1)} %`;

function shearVerdict({ plies, pieces }: CutPlies): Verdict {
  const id = 'cutting.shear';
  const worst = plies.reduce((most, one) => (one.shareOverWarning > most.shareOverWarning ? one : most));
  const { ply, shareOverWarning, warningDeg, largestShearDeg } = worst;
  const said = `Ply ${ply} shears by more than ${formatNumber(warningDeg, 0)}° on ${percent(shareOverWarning)} of its face, at most ${formatNumber(largestShearDeg, 0)}°`;
  if (shareOverWarning <= fewShare)
    return {
      id,
      word: 'go',
      reason: `${said}; ${count(pieces.length, 'piece')} to cut.`,
      fix: '',
    };
  const fix =
    'Try another start, or a seam between top and sides; a cloth of finer or looser weave shears further.';
  return shareOverWarning <= mostShare
    ? { id, word: 'look again', reason: `${said}: wrinkles are to be coaxed out there.`, fix }
    : { id, word: 'stop', reason: `${said}: it will not lie there.`, fix };
}

function dartsVerdict(cut: CutPlies): Verdict {
  const id = 'cutting.darts';
  const worst = dartPairs(cut).toSorted((a, b) => b.share - a.share)[0];
  if (worst === undefined || worst.share <= mostTogether)
    return {
      id,
      word: 'go',
      reason: `Darts of neighboring plies lie on each other along ${percent(worst?.share ?? 0)} of their edges at most.`,
      fix: '',
    };
  const { upper, under, share } = worst;
  return {
    id,
    word: 'look again',
    reason: `Darts of ply ${upper.ply} lie on those of ply ${under.ply} along ${percent(share)} of their edges: no thread of either goes across there.`,
    fix: 'Turn one of the two by 45° at Ply schedule, or lay a patch over these corners between them.',
  };
}

const shareOf = ({ coveredMm2, wantedMm2 }: CutPlies['plies'][number]) => coveredMm2 / wantedMm2;

function coverVerdict({ plies }: CutPlies): Verdict {
  const id = 'cutting.covered';
  const worst = plies.reduce((least, one) => (shareOf(one) < shareOf(least) ? one : least));
  const share = shareOf(worst);
  const reason = `Ply ${worst.ply} covers ${percent(share)} of its face${share < 1 ? '; the rest lies along its darts' : ''}.`;
  return share >= leastCovered
    ? { id, word: 'go', reason, fix: '' }
    : {
        id,
        word: 'look again',
        reason,
        fix: 'Try another start, or an overlap at the darts, and lay small patches where no cloth lies.',
      };
}
