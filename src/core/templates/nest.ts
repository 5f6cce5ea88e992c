/** Which piece is cut from where: all pieces of one fabric on its remnants and its roll. */
import { keepWithin } from '../counts';
import { Problem } from '../problem';
import { formatNumber } from '../units/formatNumber';
import { searchNest, type Placed, type SearchTask } from './nestSearch';
import { outlineRows, rollRows } from './nestSheet';
import { boundsOf, signedAreaMm2, turned, type Pose } from './outline';
import type { Outline, PlyPiece, Point2 } from './piece';

/** One fabric as it lies on the shelf. */
export interface FabricRoll {
  readonly fabric: string;
  /** Between the selvedges; null where only remnants are left. */
  readonly widthMm: number | null;
  /** Outlines with the warp along x; cut up before the roll is. */
  readonly remnantsMm: readonly Outline[];
  /** Of the cloth as it is cut: a prepreg with its resin. */
  readonly arealWeightGsm: number;
  /** Any currency; null when it is not known. */
  readonly pricePerM2: number | null;
}

export interface NestChoices {
  /** Least distance between two pieces, mm. */
  readonly gapMm: number;
  /** Fibers may lie this far off the warp of the roll, degrees. */
  readonly fiberToleranceDeg: number;
  /** A weave that reads the same upside down: plain, twill and satin do, a fabric with a tracer on one side does not. */
  readonly halfTurns: boolean;
  readonly seed: number;
}

export interface Placement extends Pose {
  readonly piece: PlyPiece;
  /** 0 up: a remnant; null: the roll. */
  readonly remnant: number | null;
  /** From 1: remnants first, then along the roll from its loose end. */
  readonly cutOrder: number;
}

/** Pieces of one fabric in place. Frame of the roll: x from its loose end along the warp, y across from its right selvedge. */
export interface FabricNest {
  readonly roll: FabricRoll;
  /** In the order of cutting. */
  readonly placements: readonly Placement[];
  readonly rollLengthMm: number;
  readonly piecesMm2: number;
  /** Of the length of the roll and of every remnant that is cut into, mm². */
  readonly takenMm2: number;
  /** 1 - pieces / taken. */
  readonly wasteShare: number;
  /** Of all that is taken, g. */
  readonly clothMassG: number;
  /** Of the pieces alone, g. */
  readonly piecesMassG: number;
  readonly cost: number | null;
}

/** Finer rows nest closer by less than a millimeter a piece, and take four times as long. */
const aboutRowMm = 2;
const mm2PerM2 = 1e6;

/** Trials that take about half a second, whatever the number of pieces. Our own judgement. */
const triesFor = (pieces: number) => Math.max(12, Math.min(120 * pieces, Math.floor(12_000 / pieces)));

/**
 * One nest per roll that anything is cut from.
 * @throws Problem `nest.noRoll`, `nest.pieces`, `nest.outline`, `nest.roll`, `nest.choices`, `nest.rollTooNarrow`, `nest.noRoom`
 */
export function nestPieces(
  pieces: readonly PlyPiece[],
  rolls: readonly FabricRoll[],
  choices: NestChoices,
): FabricNest[] {
  checkChoices(choices);
  checkPieces(pieces);
  const orphan = pieces.find(({ fabric }) => !rolls.some((roll) => roll.fabric === fabric));
  if (orphan !== undefined)
    throw new Problem(
      'nest.noRoll',
      `Piece ${orphan.name} is cut from “${orphan.fabric}”, and no roll of it is known. Enter its roll.`,
    );
  return rolls.flatMap((roll) => {
    const own = pieces.filter(({ fabric }) => fabric === roll.fabric);
    if (own.length === 0) return [];
    checkRoll(roll);
    return [nestOne(own, roll, choices)];
  });
}

function nestOne(pieces: readonly PlyPiece[], roll: FabricRoll, choices: NestChoices): FabricNest {
  const { gapMm, fiberToleranceDeg, halfTurns, seed } = choices;
  const { remnantsMm, widthMm } = roll;
  const task: SearchTask = {
    outlines: pieces.map(({ outlineMm }) => outlineMm),
    sheets: [
      ...remnantsMm.map((outline) => {
        const { lowXMm, highXMm } = boundsOf(outline);
        return { rows: outlineRows(outline, aboutRowMm), endMm: highXMm - lowXMm };
      }),
      ...(widthMm === null ? [] : [{ rows: rollRows(widthMm, aboutRowMm), endMm: Infinity }]),
    ],
    gapMm,
    turnsDeg: halfTurns ? [0, 180] : [0],
    tiltsDeg: fiberToleranceDeg > 0 ? [0, fiberToleranceDeg, -fiberToleranceDeg] : [0],
    tries: triesFor(pieces.length),
    seed,
  };
  const { placed, left } = searchNest(task);
  const lost = left[0];
  if (lost !== undefined) throw noPlace(pieces[lost]!, roll);
  return withFigures(roll, inCuttingOrder(placed, task, pieces, remnantsMm.length));
}

/** Only what is wider than the roll finds no place on it, so this is the refusal that a seam mends. */
function noPlace(piece: PlyPiece, { fabric, widthMm }: FabricRoll): Problem {
  const { lowYMm, highYMm } = boundsOf(piece.outlineMm);
  if (widthMm === null)
    return new Problem(
      'nest.noRoom',
      `Piece ${piece.name} (${sizeText(piece)}) goes onto none of the remnants of “${fabric}” that are left. Take a roll or a larger remnant, or divide ply ${piece.ply} with a seam.`,
    );
  return new Problem(
    'nest.rollTooNarrow',
    `Piece ${piece.name} is ${formatNumber(highYMm - lowYMm, 0)} mm across the warp, and the roll of “${fabric}” is ${formatNumber(widthMm, 0)} mm wide. Divide ply ${piece.ply} with a seam, lay its warp the other way, or take a wider roll.`,
  );
}

function sizeText(piece: PlyPiece): string {
  const { lowXMm, lowYMm, highXMm, highYMm } = boundsOf(piece.outlineMm);
  return `${formatNumber(highXMm - lowXMm, 0)} x ${formatNumber(highYMm - lowYMm, 0)} mm`;
}

function inCuttingOrder(
  placed: readonly Placed[],
  { sheets }: SearchTask,
  pieces: readonly PlyPiece[],
  remnants: number,
): Placement[] {
  return placed
    .toSorted((a, b) => a.sheet - b.sheet || a.alongMm - b.alongMm || a.row - b.row)
    .map(({ outline, sheet, shape, row, alongMm }, i) => {
      const { rowMm, lowMm } = sheets[sheet]!.rows;
      const atMm: Point2 = [lowMm[0] + alongMm - shape.lowMm[0], lowMm[1] + row * rowMm - shape.lowMm[1]];
      return {
        piece: pieces[outline]!,
        turnDeg: shape.turnDeg,
        atMm,
        remnant: sheet < remnants ? sheet : null,
        cutOrder: i + 1,
      };
    });
}

function withFigures(roll: FabricRoll, placements: readonly Placement[]): FabricNest {
  const rollLengthMm = placements.reduce((most, { remnant, piece, turnDeg, atMm }) => {
    const ends = piece.outlineMm.map((point) => turned(point, turnDeg)[0] + atMm[0]);
    return remnant === null ? Math.max(most, ...ends) : most;
  }, 0);
  const remnantsUsed = new Set(placements.map(({ remnant }) => remnant).filter((one) => one !== null));
  const piecesMm2 = placements.reduce((sum, { piece }) => sum + signedAreaMm2(piece.outlineMm), 0);
  const takenMm2 =
    rollLengthMm * (roll.widthMm ?? 0) +
    [...remnantsUsed].reduce((sum, one) => sum + Math.abs(signedAreaMm2(roll.remnantsMm[one]!)), 0);
  return {
    roll,
    placements,
    rollLengthMm,
    piecesMm2,
    takenMm2,
    wasteShare: 1 - piecesMm2 / takenMm2,
    clothMassG: (takenMm2 / mm2PerM2) * roll.arealWeightGsm,
    piecesMassG: (piecesMm2 / mm2PerM2) * roll.arealWeightGsm,
    cost: roll.pricePerM2 === null ? null : (takenMm2 / mm2PerM2) * roll.pricePerM2,
  };
}

function checkChoices({ gapMm, fiberToleranceDeg, seed }: NestChoices): void {
  if (!(gapMm >= 0 && gapMm <= 100))
    throw new Problem('nest.choices', 'The gap between pieces must be between 0 and 100 mm.');
  if (!(fiberToleranceDeg >= 0 && fiberToleranceDeg <= 10))
    throw new Problem('nest.choices', 'The fiber tolerance must be between 0 and 10°.');
  if (!Number.isFinite(seed)) throw new Problem('nest.choices', 'The seed of the nest must be a number.');
}

function checkPieces(pieces: readonly PlyPiece[]): void {
  if (pieces.length === 0)
    throw new Problem('nest.pieces', 'There is no piece to cut yet. Drape at least one ply first.');
  keepWithin(
    'nestPieces',
    pieces.length,
    'nest.pieces',
    `These are ${formatNumber(pieces.length, 0)} pieces. Nest the plies of one part at a time.`,
  );
  for (const { name, outlineMm } of pieces)
    if (!isOutline(outlineMm) || signedAreaMm2(outlineMm) <= 0)
      throw new Problem(
        'nest.outline',
        `Piece ${name} has no outline that encloses cloth. Drape its ply again, or move the start.`,
      );
}

function checkRoll({ fabric, widthMm, remnantsMm, arealWeightGsm, pricePerM2 }: FabricRoll): void {
  const wrong = (what: string) => new Problem('nest.roll', `The roll of “${fabric}”: ${what}`);
  if (widthMm !== null && !(widthMm >= 10 && widthMm <= 5000))
    throw wrong('its width must be between 10 and 5000 mm.');
  if (widthMm === null && remnantsMm.length === 0) throw wrong('enter its width, or a remnant of it.');
  if (!(arealWeightGsm > 0 && arealWeightGsm <= 10_000))
    throw wrong('its weight must be over 0 and up to 10 000 g/m².');
  if (pricePerM2 !== null && !(pricePerM2 >= 0 && Number.isFinite(pricePerM2)))
    throw wrong('its price must be 0 or more.');
  for (const [i, outline] of remnantsMm.entries())
    if (!isOutline(outline) || Math.abs(signedAreaMm2(outline)) < 1)
      throw wrong(`remnant ${i + 1} has no outline that encloses cloth.`);
}

const isOutline = (outline: Outline) =>
  outline.length >= 3 && outline.every(([x, y]) => Number.isFinite(x) && Number.isFinite(y));
