/** Fit step: do the halves meet, does everything fit, does radio get out? */
import type { Caution, StepReport, Verdict } from '../../core/figure';
import { shieldingClasses } from '../../core/radio/transmitterVerdict';
import { formatNumber } from '../../core/units/formatNumber';
import { notEntered } from '../shared/decision';
import type { StepContext } from '../shared/context';
import { fitFigures, radioFindings } from './figures';

const mm = (value: number) => `${formatNumber(value, 2)} mm`;

export function fitReport(context: StepContext): StepReport {
  const verdicts = [...contentVerdicts(context), ...rimVerdicts(context), ...radioVerdicts(context)];
  return {
    figures: fitFigures(context),
    verdicts: verdicts.length > 0 ? verdicts : [nothingEntered],
    cautions: cautionsFor(context),
  };
}

const nothingEntered: Verdict = {
  id: notEntered.fit,
  word: 'not yet known',
  reason: 'No contents, no other half and no transmitter are entered.',
  fix: 'Enter what goes inside, and choose the other half, to see whether it all fits. The pour need not wait for it.',
};

function contentVerdicts({ inputs: { fit }, fit: found, fitTrouble }: StepContext): readonly Verdict[] {
  const id = 'fit.contents';
  if (fit.contents.length === 0) return [];
  if (found == null && fitTrouble?.asked != null) return [notWorkedOut(id, fitTrouble.asked)];
  if (found == null)
    return [
      {
        id,
        word: 'not yet known',
        reason: 'Whether the contents fit is not worked out yet.',
        fix: 'Import a model at Part, and wait until it is measured.',
      },
    ];
  if (found.contentsProblem !== null)
    return [
      {
        id,
        word: 'stop',
        reason: found.contentsProblem,
        fix: 'Correct the place or the size at Fit, or choose the other half.',
      },
    ];
  const tightest = found.clearances.reduce((least, one) =>
    one.clearanceMm < least.clearanceMm ? one : least,
  );
  const fits = tightest.clearanceMm >= fit.clearanceMm - 1e-3;
  const reason = `${tightest.name} has the least clearance to the core face, ${mm(tightest.clearanceMm)}; ${mm(fit.clearanceMm)} are wanted.`;
  if (fits) return [{ id, word: 'go', reason, fix: '' }];
  const { shift, leastScale } = found;
  const fix =
    shift !== null
      ? `Tried: shift all contents by ${shift.shiftMm.map((one) => formatNumber(one, 2)).join(', ')} mm, and there are ${mm(shift.clearanceMm)}.`
      : leastScale !== null
        ? `Tried: no shift alone helps; at a scale of ${formatNumber(leastScale.scale, 4)} everything fits with ${mm(leastScale.clearanceMm)}.`
        : 'Neither a shift nor a scale was found that helps: choose smaller contents or another shape.';
  return [{ id, word: tightest.clearanceMm < 0 ? 'stop' : 'look again', reason, fix }];
}

/** A question that failed: why, and what to do. */
const notWorkedOut = (id: string, reason: string): Verdict => ({
  id,
  word: 'not yet known',
  reason,
  fix: 'Change an entry at Fit to have it worked out again, or load the page again.',
});

function rimVerdicts({ inputs: { fit }, fit: found, fitTrouble }: StepContext): readonly Verdict[] {
  const id = 'fit.rims';
  const rims = found?.rims ?? null;
  if (fit.mate !== null && fitTrouble?.mate != null)
    return [
      {
        id,
        word: 'not yet known',
        reason: fitTrouble.mate,
        fix: 'Put it back from the list of projects, open its project file, import its model, or choose another half at Fit.',
      },
    ];
  if (fit.mate !== null && found == null && fitTrouble?.asked != null)
    return fit.contents.length > 0 ? [] : [notWorkedOut(id, fitTrouble.asked)];
  if (rims === null) {
    if (found?.rimsProblem != null)
      return [
        {
          id,
          word: 'stop',
          reason: found.rimsProblem,
          fix: 'Choose the other half of this enclosure at Fit.',
        },
      ];
    if (fit.mate === null) return [];
    return [
      {
        id,
        word: 'not yet known',
        reason: `The rim of ${fit.mate.name} is not compared yet.`,
        fix: 'Import a model in both projects, and wait until they are compared.',
      },
    ];
  }
  const reason = `The rims step by ${mm(rims.stepMaxMm)} at most and leave ${mm(rims.gapMaxMm)} open between their lands.`;
  const isGood = rims.stepMaxMm <= fit.stepAcceptedMm && rims.gapMaxMm <= fit.stepAcceptedMm;
  const verdicts: Verdict[] = [
    isGood
      ? { id, word: 'go', reason, fix: '' }
      : {
          id,
          word: 'look again',
          reason: `${reason} ${mm(fit.stepAcceptedMm)} are accepted.`,
          fix: `Print the other half next at ${formatNumber(rims.mateScale, 4)} of its present size${rims.scrapedMm > 0 ? `; ${mm(rims.scrapedMm)} stand off at one place, which no scale mends` : ''}.`,
        },
  ];
  if (rims.isAmbiguous)
    verdicts.push({
      id: 'fit.ends',
      word: 'look again',
      reason: 'The outline lies on itself after a turn as well, so it does not tell which end is which.',
      fix: 'Mark one end on both halves, and choose the ends at Fit.',
    });
  return verdicts;
}

function radioVerdicts(context: StepContext): readonly Verdict[] {
  const found = radioFindings(context);
  if (context.inputs.fit.transmitters.length === 0) return [];
  if (found === null)
    return [
      {
        id: 'fit.radio',
        word: 'not yet known',
        reason: 'Wall and size of the shell are not known yet.',
        fix: 'Import a model at Part and complete the plies.',
      },
    ];
  const bad = found.filter(({ outcome }) => outcome !== 'gets out');
  const weak =
    'This is an estimate for a closed shell of woven carbon; a range test at full distance, with the shell on, decides.';
  if (bad.length === 0)
    return [
      {
        id: 'fit.radio',
        word: 'go',
        reason: `${found.map(({ name, lossDb }) => `${name} loses ${formatNumber(lossDb, 1)} dB`).join('; ')}. ${weak}`,
        fix: 'Test the range on the bench before the halves are glued.',
      },
    ];
  return [
    {
      id: 'fit.radio',
      word: 'look again',
      reason: `${bad.map(({ name, lossDb, outcome }) => `${name} is ${outcome}, ${formatNumber(Math.min(lossDb, 99), 0)} dB${lossDb > shieldingClasses.goodDb ? ' or more' : ''}`).join('; ')}. ${weak}`,
      fix: `Leave a window of glass cloth or an opening: ${bad.map(({ name, proposedWindowMm }) => `${formatNumber(proposedWindowMm ?? 0, 0)} mm across for ${name}`).join('; ')}. Seams, ports and edges decide of the rest.`,
    },
  ];
}

const lithium: Caution = {
  id: 'fit.lithium',
  text: 'Lithium cells burn when they are crushed, pierced or warm: take them out before heat, clamps, drilling and glue, and leave room for swelling and a way to get them out again. The data sheet of the cell and local rules come first.',
};
const conducts: Caution = {
  id: 'fit.conducts',
  text: 'Carbon laminate conducts, and its cut edges and dust do too: keep it off contacts, boards and cell terminals, insulate posts and screws, and mind that metal touching it corrodes. Work on mains voltage belongs to licensed practice.',
};
const approval: Caution = {
  id: 'fit.approval',
  text: 'A transmitter in another housing, or with a changed antenna, may need a new approval before it is used. Ask the maker of the module and the radio authority of your country.',
};
const glue: Caution = {
  id: 'fit.sealant',
  text: 'Glues and sealants can harm skin, eyes and lungs, and some sensitize for good: gloves, fresh air and the safety data sheet; local rules come first.',
};

function cautionsFor({ inputs: { fit } }: StepContext): readonly Caution[] {
  return [
    ...(fit.contents.some(({ what }) => what === 'cell') ? [lithium] : []),
    ...(fit.contents.length > 0 ? [conducts] : []),
    ...(fit.transmitters.length > 0 ? [approval] : []),
    ...(fit.seam !== 'none' || fit.contents.length > 0 ? [glue] : []),
  ];
}
