/** What the fit is worked out with, from the inputs of the project. */
import type { FitChoices, FitContent } from '../../core/fit/findings';
import { chainedLength } from '../../core/stone/sizeChain';
import type { Content } from '../inputs/fit';
import type { ProjectInputs } from '../inputs/project';
import { sizeChoices } from '../mold/sizes';
import { wallBand } from '../shared/band';

/** Finished over drawn size, by the size chain of the project's own stone, program and print. */
function chainFactor(inputs: ProjectInputs): number {
  const { drawnMm, finishedMm } = chainedLength(1, sizeChoices({ inputs }));
  return finishedMm / drawnMm;
}

function contentOf({ name, what, shape, ...rest }: Content): FitContent {
  const { lengthMm, widthMm, heightMm } = rest;
  return {
    name,
    what,
    shape,
    sizeMm: [lengthMm, shape === 'cylinder' ? lengthMm : widthMm, heightMm],
    placeMm: [rest.xMm, rest.yMm, rest.zMm],
    turnDeg: [rest.turnXDeg, rest.turnYDeg, rest.turnZDeg],
  };
}

/** @param mateInputs of the other half's project; its own size chain is used, and this one's without */
export function fitChoicesOf(inputs: ProjectInputs, mateInputs: ProjectInputs | null): FitChoices {
  const { contents, clearanceMm, mateEnd, postMm, ladderFrom, ladderTo, ladderCount } = inputs.fit;
  const factor = chainFactor(inputs);
  return {
    contents: contents.map(contentOf),
    clearanceMm,
    wallMm: wallBand(inputs)?.wantedMm ?? 0,
    pull: inputs.part.pull,
    factor,
    mateFactor: mateInputs === null ? factor : chainFactor(mateInputs),
    otherEnd: mateEnd === 'other end',
    postMm,
    ladder: Array.from({ length: ladderCount }, (_, k) =>
      ladderCount === 1 ? ladderFrom : ladderFrom + ((ladderTo - ladderFrom) * k) / (ladderCount - 1),
    ),
  };
}

/** Something is entered that wants an answer. */
export const asksForFit = ({ fit }: Pick<ProjectInputs, 'fit'>): boolean =>
  fit.contents.length > 0 || fit.mate !== null;
