/** Edits of material cards and of the ply stack as plain functions from list to list. */
import { defaultProjectInputs } from '../../steps/inputs/project';
import { defaultMaterial, type Material } from '../../steps/inputs/material';
import { type Ply, type PlyPatch } from '../../steps/inputs/ply';

/** `prefix-N` with the smallest N from `from` on that no entry uses yet. */
function freeId(prefix: string, taken: readonly { readonly id: string }[], from: number): string {
  const ids = new Set(taken.map((entry) => entry.id));
  let number = from;
  while (ids.has(`${prefix}-${number}`)) number++;
  return `${prefix}-${number}`;
}

/** One more ply at the core face, like the last one; turned by 45 degrees as stacks usually alternate. */
export function withPlyAdded(stack: readonly Ply[], materials: readonly Material[]): Ply[] {
  const last = stack.at(-1);
  const like = last ?? defaultProjectInputs.plies.stack[0];
  if (like === undefined) return [...stack];
  const materialId = last?.materialId ?? materials[0]?.id ?? like.materialId;
  const angleDeg = last === undefined || last.angleDeg !== 0 ? 0 : 45;
  return [...stack, { ...like, id: freeId('ply', stack, stack.length + 1), materialId, angleDeg }];
}

/** The ply `offset` places further in; beyond either end nothing changes. */
export function withPlyMoved(stack: readonly Ply[], plyId: string, offset: number): readonly Ply[] {
  const from = stack.findIndex((ply) => ply.id === plyId);
  const to = from + offset;
  if (from < 0 || to < 0 || to >= stack.length) return stack;
  const moved = stack.filter((ply) => ply.id !== plyId);
  moved.splice(to, 0, stack[from] as Ply);
  return moved;
}

export function withPlyChanged(stack: readonly Ply[], plyId: string, change: Partial<Ply>): Ply[] {
  return stack.map((ply) => (ply.id === plyId ? { ...ply, ...change } : ply));
}

export function withMaterialChanged(
  materials: readonly Material[],
  materialId: string,
  change: Partial<Material>,
): Material[] {
  return materials.map((card) => (card.id === materialId ? { ...card, ...change } : card));
}

/** A copy of `original`, or a fresh card with the usual starting values. */
export function withMaterialAdded(materials: readonly Material[], original: Material | null): Material[] {
  const id = freeId('card', materials, materials.length + 1);
  const card =
    original === null
      ? { ...defaultMaterial, id, name: 'New card', laidThicknessMm: null }
      : { ...original, id, name: `${original.name}, copy` };
  return [...materials, card];
}

/** One more patch on the innermost ply but one, of the last ply's material. */
export function withPatchAdded(
  patches: readonly PlyPatch[],
  stack: readonly Ply[],
  materials: readonly Material[],
): PlyPatch[] {
  const number = patches.length + 1;
  return [
    ...patches,
    {
      id: freeId('patch', patches, number),
      kind: 'doubler',
      place: `place ${number}`,
      materialId: stack.at(-1)?.materialId ?? materials[0]?.id ?? defaultMaterial.id,
      angleDeg: 0,
      faceDown: false,
      areaCm2: 4,
      afterPly: Math.max(0, stack.length - 1),
      wallMm: null,
    },
  ];
}

export function withPatchChanged(
  patches: readonly PlyPatch[],
  patchId: string,
  change: Partial<PlyPatch>,
): PlyPatch[] {
  return patches.map((patch) => (patch.id === patchId ? { ...patch, ...change } : patch));
}

/** Where a ply that is held at a height belongs: the number of other rows whose middle lies above it. */
export function placeAt(heightPx: number, otherMiddlesPx: readonly number[]): number {
  return otherMiddlesPx.filter((middle) => middle < heightPx).length;
}
