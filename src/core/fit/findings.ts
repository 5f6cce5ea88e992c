/** Everything that is asked of a half, its mate and its contents, in one go. */
import type { IndexedMesh, Vec3 } from '../mesh/types';
import { lengthOf, times } from '../numeric/vectors';
import { Problem } from '../problem';
import { middleOf, placed, type Body } from './bodies';
import { cavityFacets, joined, someFacets } from './cavity';
import { clearances, type BodyClearance } from './clearance';
import { compareRims, type RimComparison } from './compareRims';
import { findFit, slackOf, type FitFound, type FitWish } from './leastScale';
import { postsFor, type Post } from './posts';
import { findRim } from './rim';
import { triangleTree } from './triangleTree';

export interface FitContent extends Body {
  readonly what: 'board' | 'cell' | 'screen' | 'button' | 'other';
}

export interface FitChoices {
  readonly contents: readonly FitContent[];
  readonly clearanceMm: number;
  /** Of the laminate: a scale of the shell leaves it alone. */
  readonly wallMm: number;
  readonly pull: Vec3;
  /** Finished over drawn size of this half, and of the mate: rims are compared as cast. */
  readonly factor: number;
  readonly mateFactor: number;
  readonly otherEnd: boolean;
  readonly postMm: number;
  /** Sizes to print as a ladder. */
  readonly ladder: readonly number[];
}

export interface LadderRung {
  readonly scale: number;
  /** With the contents where the least scale puts them. */
  readonly clearanceMm: number;
  readonly fits: boolean;
}

export interface FitFindings {
  readonly rims: RimComparison | null;
  /** Why the rims are not compared; null when they are, or no mate was given. */
  readonly rimsProblem: string | null;
  readonly rimLengthMm: number | null;
  readonly landMm: number | null;
  readonly clearances: readonly BodyClearance[];
  /** Why the contents are not judged; null when they are, or none were given. */
  readonly contentsProblem: string | null;
  readonly leastScale: FitFound | null;
  /** null where no shift alone makes them fit. */
  readonly shift: FitFound | null;
  readonly ladder: readonly LadderRung[];
  readonly posts: readonly { readonly name: string; readonly posts: readonly Post[] }[];
}

/** What a check throws for bad input, as its sentence. */
function told<Result>(ask: () => Result): { readonly result: Result | null; readonly why: string | null } {
  try {
    return { result: ask(), why: null };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return { result: null, why: error.message };
  }
}

const scaled = (mesh: IndexedMesh, factor: number): IndexedMesh =>
  factor === 1 ? mesh : { ...mesh, positions: mesh.positions.map((one) => factor * one) };

/**
 * The mate's own pull is not asked: its rim is the largest ring that it has.
 * @param mate in mm; null for none
 */
export function fitFindings(
  drawn: IndexedMesh,
  drawnMate: IndexedMesh | null,
  choices: FitChoices,
): FitFindings {
  const mesh = scaled(drawn, choices.factor);
  const mate = drawnMate === null ? null : scaled(drawnMate, choices.mateFactor);
  const own = told(() => findRim(mesh, choices.pull));
  const other = mate === null ? null : told(() => findRim(mate, null));
  const { contents } = choices;
  const none = {
    rims: null,
    clearances: [],
    leastScale: null,
    shift: null,
    ladder: [],
    posts: [],
    rimLengthMm: null,
    landMm: null,
  };
  if (own.result === null)
    return {
      ...none,
      rimsProblem: mate === null ? null : own.why,
      contentsProblem: contents.length > 0 ? own.why : null,
    };
  const found = own.result;
  const compared =
    mate === null || other === null
      ? { result: null, why: null }
      : other.result === null
        ? { result: null, why: `The other half: ${other.why}` }
        : told(() => compareRims({ mesh, found }, { mesh: mate, found: other.result! }, choices.otherEnd));
  const rimFacts = { rimLengthMm: found.rim.lengthMm, landMm: compared.result?.landMm ?? found.rim.landMm };
  const rims = { ...none, ...rimFacts, rims: compared.result, rimsProblem: compared.why };
  if (contents.length === 0) return { ...rims, contentsProblem: null };
  const half = someFacets(mesh, cavityFacets(mesh, found), null);
  const whole =
    compared.result === null || mate === null || other?.result == null
      ? half
      : joined(half, someFacets(mate, cavityFacets(mate, other.result), compared.result.mateAt));
  const judged = told(() => judgedContents(whole, choices, found.rim.frame, compared.result !== null));
  return judged.result === null
    ? { ...rims, contentsProblem: judged.why }
    : { ...rims, ...judged.result, contentsProblem: null };
}

function judgedContents(
  core: IndexedMesh,
  { contents, clearanceMm, wallMm, pull, ladder, postMm }: FitChoices,
  rim: Parameters<typeof clearances>[2]['rim'],
  hasMate: boolean,
): Pick<FitFindings, 'clearances' | 'leastScale' | 'shift' | 'ladder' | 'posts'> {
  if (core.facets.length === 0)
    throw new Problem(
      'fit.noCore',
      'This half has no core face: it is solid. Make the pattern first, then place contents in its cavity.',
    );
  const tree = triangleTree(core);
  const found = clearances(tree, contents, { pull, rim, hasMate });
  const bodies = contents.map(placed);
  const overMm = found.reduce((most, one) => Math.max(most, one.overRimMm), 0);
  const wish: FitWish = {
    clearanceMm,
    wallMm,
    aboutMm: middleOf(bodies),
    axis: times(pull, 1 / lengthOf(pull)),
    mouth: hasMate ? null : { originMm: rim.originMm, normal: rim.normal, overMm },
  };
  const leastScale = findFit(tree, bodies, wish, true);
  const shift = findFit(tree, bodies, wish, false);
  return {
    clearances: found,
    leastScale,
    shift,
    ladder: ladder.map((scale) => {
      const slackMm = slackOf(tree, bodies, wish, scale, leastScale);
      return { scale, clearanceMm: slackMm + clearanceMm, fits: slackMm >= -1e-3 };
    }),
    posts: contents
      .filter(({ what, shape }) => what === 'board' && shape === 'box')
      .map((board) => ({ name: board.name, posts: postsFor(tree, board, pull, postMm) })),
  };
}
