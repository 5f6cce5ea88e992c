/**
 * Classical lamination theory: the stiffness of a stack from its plies. Thin plates, perfectly bonded, small strains.
 *
 * Layers are listed from z = −h/2 (the show face, as the stack is listed) to z = +h/2. Force and moment per width
 * answer mid-plane strain and curvature: N = A ε⁰ + B κ, M = B ε⁰ + D κ; strain at height z is ε⁰ + z κ, so a
 * positive curvature stretches the last layer and hollows the show face. Entries x, y, xy, engineering shear.
 *
 * Sources: `kaw2006`, `mallick2008` in core/sources.
 */
import { invertPositiveDefinite } from '../numeric/invertPositiveDefinite';
import { matrix3, timesMatrix, type Matrix3, type Vector3 } from '../numeric/matrix3';
import { Problem } from '../problem';
import { checkPlyElastic, type PlyElastic } from './plyElastic';
import { turnedExpansionPerK, turnedStiffnessMpa } from './plyStiffness';

export interface LaminateLayer {
  readonly elastic: PlyElastic;
  /** From the laminate's x towards its y. */
  readonly angleDeg: number;
  /** Cured. */
  readonly thicknessMm: number;
}

export interface PlacedLayer extends LaminateLayer {
  readonly lowMm: number;
  readonly highMm: number;
  /** Q̄, laminate axes. */
  readonly stiffnessMpa: Matrix3;
  /** Laminate axes. */
  readonly expansionPerK: Vector3;
}

export interface Laminate {
  readonly thicknessMm: number;
  readonly layers: readonly PlacedLayer[];
  /** Stretching. */
  readonly aNPerMm: Matrix3;
  /** Coupling; depends on the mid-plane as the reference. */
  readonly bN: Matrix3;
  /** Bending with the mid-plane held unstretched. */
  readonly dNmm: Matrix3;
  /** A⁻¹: stretch under in-plane force while the plate is held flat. */
  readonly heldFlatMmPerN: Matrix3;
  /** D − B A⁻¹ B: bending while the mid-plane is free to stretch. Does not depend on the reference plane. */
  readonly freeBendingNmm: Matrix3;
  /** Inverse of [A B; B D], the plate free to curl: ε⁰ = a N + b M, κ = bᵀ N + d M. */
  readonly compliance: {
    readonly aMmPerN: Matrix3;
    readonly bPerN: Matrix3;
    readonly dPerNmm: Matrix3;
  };
}

/** Assembles A, B, D and their inverses. Throws a `Problem` for no layers or an impossible one. */
export function laminateOf(layers: readonly LaminateLayer[]): Laminate {
  if (layers.length === 0)
    throw new Problem('laminate.noPlies', 'The stack has no plies: add at least one ply.');
  const thicknessMm = layers.reduce((sum, layer) => sum + checkedThicknessMm(layer), 0);
  const placed = placeLayers(layers, thicknessMm);
  const moment = (weight: (layer: PlacedLayer) => number) =>
    matrix3((r, c) => placed.reduce((sum, layer) => sum + layer.stiffnessMpa[r][c] * weight(layer), 0));
  const aNPerMm = moment((layer) => layer.thicknessMm);
  const bN = moment((layer) => layer.thicknessMm * middleMm(layer));
  const dNmm = moment((layer) => layer.thicknessMm * middleMm(layer) ** 2 + layer.thicknessMm ** 3 / 12);
  const heldFlatMmPerN = asMatrix3(invertPositiveDefinite(aNPerMm));
  const coupling = timesMatrix(bN, timesMatrix(heldFlatMmPerN, bN));
  return {
    thicknessMm,
    layers: placed,
    aNPerMm,
    bN,
    dNmm,
    heldFlatMmPerN,
    freeBendingNmm: matrix3((r, c) => dNmm[r][c] - coupling[r][c]),
    compliance: complianceOf(aNPerMm, bN, dNmm),
  };
}

/** Height of a layer's middle over the laminate's mid-plane, mm. */
export function middleMm(layer: PlacedLayer): number {
  return (layer.lowMm + layer.highMm) / 2;
}

function checkedThicknessMm(layer: LaminateLayer): number {
  checkPlyElastic(layer.elastic);
  if (!(layer.thicknessMm > 0 && Number.isFinite(layer.thicknessMm)))
    throw new Problem('laminate.notPositive', 'The thickness of every layer must be more than zero.');
  if (!Number.isFinite(layer.angleDeg))
    throw new Problem('laminate.angle', 'The angle of every ply must be a number of degrees.');
  return layer.thicknessMm;
}

function placeLayers(layers: readonly LaminateLayer[], thicknessMm: number): readonly PlacedLayer[] {
  let lowMm = -thicknessMm / 2;
  return layers.map((layer) => {
    const placed = {
      ...layer,
      lowMm,
      highMm: lowMm + layer.thicknessMm,
      stiffnessMpa: turnedStiffnessMpa(layer.elastic, layer.angleDeg),
      expansionPerK: turnedExpansionPerK(layer.elastic, layer.angleDeg),
    };
    lowMm = placed.highMm;
    return placed;
  });
}

function complianceOf(a: Matrix3, b: Matrix3, d: Matrix3): Laminate['compliance'] {
  const whole = [
    ...a.map((row, r) => [...row, ...(b[r] as Vector3)]),
    ...b.map((row, r) => [...row, ...(d[r] as Vector3)]),
  ];
  const inverse = invertPositiveDefinite(whole);
  return {
    aMmPerN: asMatrix3(inverse, 0, 0),
    bPerN: asMatrix3(inverse, 0, 3),
    dPerNmm: asMatrix3(inverse, 3, 3),
  };
}

/** The 3 × 3 block of `rows` that starts at this row and column. */
function asMatrix3(rows: readonly (readonly number[])[], row = 0, column = 0): Matrix3 {
  return matrix3((r, c) => rows[row + r]![column + c]!);
}
