/**
 * The shell to print, from the outside of any mesh: its wall is constant and it releases along the pull by construction.
 *
 * The part is filled under everything that faces the pull, closed by a ball, and drawn in towards its top; that body less wall and
 * inside radius is the core. The core face lies at the inside radius from the core, the show face at wall plus inside radius from
 * the same core, in one field of exact distances: so every place of the show face has the core face one wall under it. Offsets
 * by balls keep what releases released (`release.ts`).
 */
import { Problem } from '../problem';
import type { IndexedMesh, Vec3 } from '../mesh/types';
import { changeMap } from './changeMap';
import { cutTemplate, type CutTemplate } from './cutTemplate';
import { distanceBand } from './distanceBand';
import { intoFrame, outOfFrame, patternFrame, type PatternFrame } from './frame';
import { boxOf, type BoxMm } from '../mesh/boxOf';
import { layColumns, layLayers, type PatternGrid } from './grid';
import { columnHeights, type ColumnGrid, type ColumnHeights } from './heights';
import { coverHoles, type CoveredHoles, type Hole } from './holes';
import { layerSteps, type LayerSteps } from './layerSteps';
import { levelSet } from './levelSet';
import { filledPlaces, nodesOutside, type FilledPlace } from './filledPlaces';
import { changeFigures, shellFigures, type ChangeFigures, type ShellFigures } from './patternFigures';
import { drawIn, fillBelow } from './release';
import { closeRim, type FaceLevel } from './rimCap';
import { findRimPlane } from './rimPlane';
import { simplifyShell } from './simplify';
import { takenOffMm } from './takenOff';
import { cornersOf } from '../mesh/triangleDistance';

export interface PatternChoices {
  readonly pull: Vec3;
  readonly wallMm: number;
  /** Least draft of the made faces, degrees. */
  readonly draftDeg: number;
  /** Where the outline stays as it is drawn. */
  readonly neutralPlane: 'rim' | 'top';
  /** Least radius of the inside corners of the core face. */
  readonly insideRadiusMm: number;
  /** Eased: outer edges are rounded by wall plus inside radius, and the wall is constant there too. */
  readonly edges: 'sharp' | 'eased';
  /** Holes wider than that stay open; null covers all. */
  readonly keepHolesOverMm: number | null;
  readonly gridMm: number;
}

export interface MadePattern extends ShellFigures, ChangeFigures {
  /** In mm, in the axes of the part that was given. */
  readonly mesh: IndexedMesh;
  /** Per facet, as `changeMap` gives it. */
  readonly changeMm: Float32Array;
  /** Places in the axes of the part. */
  readonly holes: readonly Hole[];
  /** Largest first; places in the axes of the part. */
  readonly filled: readonly FilledPlace[];
  readonly filledMm3: number;
  /** Farthest that the import stands out of the show face, seen along the pull: what is rounded, drawn in or left out. */
  readonly takenMaxMm: number;
  /** Where to cut after the cure; null where no hole is covered. */
  readonly template: CutTemplate | null;
  readonly layerSteps: LayerSteps;
  /** How far leaving out triangles may have moved the surface. */
  readonly movedMm: number;
}

/** What is told of a made pattern beside its mesh. */
export type PatternSummary = Omit<MadePattern, 'mesh' | 'changeMm'>;

export type PatternProgress = (doing: string, share: number) => void;

/** By which triangles as long as a step cut across a corner of the inside radius. */
const chordMm = ({ gridMm, insideRadiusMm }: PatternChoices): number => gridMm ** 2 / (2.5 * insideRadiusMm);

/** Grid errors take so much from the worst facets; it is asked for on top. */
const draftMarginDeg = 0.4;

/**
 * @param part in mm, its facets wound either way
 * @throws Problem `pull.zero`, `pattern.*`
 */
export function makePattern(
  part: IndexedMesh,
  given: PatternChoices,
  progress: PatternProgress,
): MadePattern {
  checkChoices(part, given);
  const choices = { ...given, insideRadiusMm: given.insideRadiusMm + chordMm(given) };
  const { wallMm, edges } = choices;
  const frame = patternFrame(part.positions, choices.pull);
  const mesh: IndexedMesh = { positions: intoFrame(frame, part.positions), facets: part.facets };
  progress('looking for holes', 0);
  const ground = layGround(mesh, choices);
  progress('measuring distances', 0.05);
  const outside = fieldOfPart(ground, mesh, choices);
  progress('closing the outside', 0.2);
  const depthMm = depthInside(ground, outside.filledMm, choices);
  progress('drawing the core', 0.45);
  const coreMm = fieldOfCore(ground, depthMm, choices);
  progress('laying the faces', 0.65);
  const { grid } = ground;
  const eased: FaceLevel = { fieldMm: coreMm, levelMm: wallMm + choices.insideRadiusMm, sign: 1 };
  const showLevel: FaceLevel =
    edges === 'eased' ? eased : { fieldMm: depthMm, levelMm: ground.closingMm, sign: -1 };
  const coreLevel: FaceLevel = { fieldMm: coreMm, levelMm: choices.insideRadiusMm, sign: 1 };
  const show = levelSet(grid, showLevel.fieldMm, showLevel.levelMm, showLevel.sign, grid.rimLayer);
  const core = levelSet(grid, coreMm, coreLevel.levelMm, 1, grid.rimLayer);
  const closed = closeRim(grid, show, core, showLevel, coreLevel);
  progress('leaving out triangles', 0.75);
  const shell = simplifyShell(
    { mesh: closed, coreFrom: show.positions.length / 3, rimMm: ground.rimMm },
    choices.draftDeg - 0.1,
    choices.gridMm,
  );
  progress('measuring the pattern', 0.9);
  const changeMm = changeMap(
    shell,
    mesh,
    (x, y, z) => isOutside(grid, outside.reached, x, y, z),
    grid.stepMm,
  );
  const filled = inPartAxes(frame, filledOf(ground, outside, coreMm, choices));
  return {
    ...shellFigures(shell, wallMm, choices.draftDeg),
    ...changeFigures(shell, mesh, changeMm),
    changeMm,
    mesh: { positions: outOfFrame(frame, shell.mesh.positions), facets: shell.mesh.facets },
    movedMm: shell.movedMm,
    layerSteps: layerSteps(shell),
    template: ground.cover.holes.some(({ plugged }) => plugged)
      ? cutTemplate(shell, ground.cover.holes, grid.stepMm)
      : null,
    takenMaxMm: takenOffMm(shell, grid, ground.tops, coreMm, wallMm + choices.insideRadiusMm),
    holes: inPartAxes(frame, ground.cover.holes),
    filled,
    filledMm3: filled.reduce((sum, { volumeMm3 }) => sum + volumeMm3, 0),
  };
}

function inPartAxes<Place extends { readonly centerMm: Vec3 }>(
  frame: PatternFrame,
  places: readonly Place[],
): readonly Place[] {
  return places.map((place) => {
    const [x, y, z] = outOfFrame(frame, Float64Array.from(place.centerMm));
    return { ...place, centerMm: [x!, y!, z!] };
  });
}

function checkChoices(part: IndexedMesh, { wallMm, insideRadiusMm, gridMm }: PatternChoices): void {
  if (part.facets.length === 0)
    throw new Problem(
      'pattern.empty',
      'The model has no facets. Import one that has, then make the pattern.',
    );
  if (gridMm > 0.75 * wallMm)
    throw new Problem(
      'pattern.coarse',
      `A grid of ${gridMm} mm is too coarse for a wall of ${wallMm} mm. Enter a grid of ${floorTo2(0.75 * wallMm)} mm or less.`,
    );
  if (1.25 * gridMm > insideRadiusMm)
    throw new Problem(
      'pattern.coarse',
      `A grid of ${gridMm} mm is too coarse for an inside radius of ${floorTo2(insideRadiusMm)} mm. Enter a grid of ${floorTo2(insideRadiusMm / 1.25)} mm or less.`,
    );
}

const floorTo2 = (value: number): number => Math.floor(100 * value) / 100;

/** What everything else stands on. */
export interface Ground {
  readonly grid: PatternGrid;
  readonly cover: CoveredHoles;
  /** Heights of the import by column. */
  readonly tops: Float64Array;
  readonly rimMm: number;
  readonly topMm: number;
  /** Radius of the ball that closes the outside. */
  readonly closingMm: number;
  readonly sinDraft: number;
}

function layGround(mesh: IndexedMesh, choices: PatternChoices): Ground {
  const { wallMm, insideRadiusMm, gridMm, draftDeg, neutralPlane } = choices;
  const box = boxOf(mesh.positions);
  const askedDeg = draftDeg + draftMarginDeg;
  const sinDraft = Math.sin((askedDeg * Math.PI) / 180);
  const closingMm = 2 * gridMm;
  const heightMm = box.high[2]! - box.low[2]!;
  const outMm = neutralPlane === 'top' ? heightMm * Math.tan((askedDeg * Math.PI) / 180) : 0;
  const marginMm = closingMm + 3 * gridMm + outMm;
  const columns = layColumns(box, gridMm, marginMm);
  const heights = columnHeights(mesh, columns);
  const cover = coverHoles(columns, heights.topMm, box.low[2]!, choices.keepHolesOverMm);
  checkHollow(columns, heights, cover);
  const rimMm = findRimPlane(columns, heights).heightMm;
  const topMm = box.high[2]!;
  checkShape(heights, box, rimMm, choices);
  const belowMm = (closingMm + wallMm + 2 * insideRadiusMm) * sinDraft + 2 * gridMm;
  const grid = layLayers(columns, rimMm, topMm, closingMm + 3 * gridMm, belowMm);
  return { grid, cover, tops: heights.topMm, rimMm, topMm, closingMm, sinDraft };
}

function checkShape(
  { topMm }: ColumnHeights,
  box: BoxMm,
  rimMm: number,
  { wallMm, insideRadiusMm }: PatternChoices,
): void {
  if (!topMm.some((top) => top > -Infinity))
    throw new Problem(
      'pattern.noFace',
      'No face of the model looks along the pull, so there is nothing to make a pattern from. Turn the pull at Part.',
    );
  const heightMm = box.high[2]! - rimMm;
  if (heightMm < wallMm + insideRadiusMm)
    throw new Problem(
      'pattern.flat',
      `The model stands only ${heightMm.toFixed(2)} mm above its rim: it is a flat sheet along this pull, with no room for a wall of ${wallMm} mm and an inside radius of ${floorTo2(insideRadiusMm)} mm under it. Turn the pull at Part, or check the unit.`,
    );
  const halfMm = Math.min(box.high[0]! - box.low[0]!, box.high[1]! - box.low[1]!, 2 * heightMm) / 2;
  if (wallMm >= halfMm)
    throw new Problem(
      'pattern.thick',
      `A wall of ${wallMm} mm is thicker than half the part (${halfMm.toFixed(2)} mm). Enter a thinner wall.`,
    );
  if (insideRadiusMm >= halfMm)
    throw new Problem(
      'pattern.radius',
      `An inside radius of ${floorTo2(insideRadiusMm)} mm is larger than half the part (${halfMm.toFixed(2)} mm). Enter a smaller radius.`,
    );
}

/** A covered share of the outline above this is the hollow side of the part. Our own judgement. */
const mostCoveredShare = 0.5;

function checkHollow(columns: ColumnGrid, { topMm }: ColumnHeights, { holes, covered }: CoveredHoles): void {
  const met = topMm.reduce((sum, top, column) => sum + (top > -Infinity || covered[column] === 1 ? 1 : 0), 0);
  const largest = Math.max(0, ...holes.map(({ areaMm2, plugged }) => (plugged ? areaMm2 : 0)));
  if (largest > mostCoveredShare * met * columns.stepMm ** 2)
    throw new Problem(
      'pattern.hollow',
      'The hollow side of the model looks along the pull, so there is no show face to keep. Turn the pull around at Part.',
    );
}

export interface OutsideField {
  /** To the part and the membranes over its holes, in a band. */
  readonly distanceMm: Float32Array;
  /** The same with everything under a face filled. */
  readonly filledMm: Float32Array;
  /** 1 for nodes that lie outside of the part. */
  readonly reached: Uint8Array;
}

function fieldOfPart(
  { grid, cover, closingMm, sinDraft }: Ground,
  mesh: IndexedMesh,
  choices: PatternChoices,
): OutsideField {
  const own = cornersOf(mesh.positions, mesh.facets);
  const corners = new Float64Array(own.length + cover.corners.length);
  corners.set(own);
  corners.set(cover.corners, own.length);
  const distanceMm = distanceBand(grid, corners, () => closingMm + 1.8 * grid.stepMm, null);
  const filledMm = distanceMm.slice();
  fillBelow(grid, filledMm, choices.neutralPlane === 'top' ? sinDraft : 0, sinDraft);
  return { distanceMm, filledMm, reached: nodesOutside(grid, distanceMm) };
}

/** Depth under the outside that is moved out by `closingMm`: at that depth lies the part with its undercuts filled and closed. */
function depthInside(
  { grid, closingMm, sinDraft, rimMm, topMm }: Ground,
  filledMm: Float32Array,
  { wallMm, insideRadiusMm, neutralPlane }: PatternChoices,
): Float32Array {
  const moved = levelSet(grid, filledMm, closingMm, 1, 0);
  const shut = new Uint8Array(filledMm.length);
  for (let node = 0; node < shut.length; node++) if (filledMm[node]! >= closingMm) shut[node] = 1;
  const leastMm = closingMm + wallMm + insideRadiusMm + 1.8 * grid.stepMm;
  const reachMm = (layer: number) => {
    const aboveMm = topMm - Math.max(rimMm, grid.lowZMm + layer * grid.layerMm);
    return leastMm + (neutralPlane === 'rim' ? Math.max(0, aboveMm) * sinDraft : 0);
  };
  const distanceMm = distanceBand(grid, cornersOf(moved.positions, moved.facets), reachMm, shut);
  for (let node = 0; node < shut.length; node++) if (shut[node] === 1) distanceMm[node] = 0;
  drawIn(grid, distanceMm, sinDraft);
  return distanceMm;
}

/** Distance from the core, outward; nothing in the core. */
function fieldOfCore(
  { grid, closingMm, sinDraft }: Ground,
  depthMm: Float32Array,
  { wallMm, insideRadiusMm }: PatternChoices,
): Float32Array {
  const levelMm = closingMm + wallMm + insideRadiusMm;
  const plane = grid.countX * grid.countY;
  let inRim = 0;
  const shut = new Uint8Array(depthMm.length);
  for (let node = 0; node < shut.length; node++) {
    if (depthMm[node]! <= levelMm) continue;
    shut[node] = 1;
    if (node >= grid.rimLayer * plane && node < (grid.rimLayer + 1) * plane) inRim++;
  }
  if (inRim === 0)
    throw new Problem(
      'pattern.noCore',
      `Nothing is left inside a wall of ${wallMm} mm with an inside radius of ${floorTo2(insideRadiusMm)} mm: the part is too narrow for them at its rim. Enter a thinner wall or a smaller radius.`,
    );
  const core = levelSet(grid, depthMm, levelMm, -1, 0);
  const corners = cornersOf(core.positions, core.facets);
  const distanceMm = distanceBand(grid, corners, () => wallMm + insideRadiusMm + 1.8 * grid.stepMm, shut);
  for (let node = 0; node < shut.length; node++) if (shut[node] === 1) distanceMm[node] = 0;
  fillBelow(grid, distanceMm, sinDraft, sinDraft);
  return distanceMm;
}

const filledOf = (
  { grid, cover }: Ground,
  { reached, distanceMm }: OutsideField,
  coreMm: Float32Array,
  { wallMm, insideRadiusMm }: PatternChoices,
): readonly FilledPlace[] =>
  filledPlaces(grid, reached, distanceMm, coreMm, cover.covered, insideRadiusMm, wallMm + insideRadiusMm);

/** Whether any corner of the cell around a place lies outside. */
function isOutside(
  { countX, countY, stepMm, layerMm, lowXMm, lowYMm, lowZMm }: PatternGrid,
  outside: Uint8Array,
  x: number,
  y: number,
  z: number,
): boolean {
  const i = Math.floor((x - lowXMm) / stepMm);
  const j = Math.floor((y - lowYMm) / stepMm);
  const k = Math.floor((z - lowZMm) / layerMm);
  for (let corner = 0; corner < 8; corner++) {
    const node = ((k + (corner >> 2)) * countY + j + ((corner >> 1) & 1)) * countX + i + (corner & 1);
    if (outside[node] === 1) return true;
  }
  return false;
}
