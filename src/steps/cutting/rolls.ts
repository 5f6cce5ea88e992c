/** The rolls that the pieces are cut from, as the material cards tell of them, and how pieces may lie there. */
import { prepregArealMassGsm } from '../../core/laminate/plyThickness';
import type { FabricRoll, NestChoices } from '../../core/templates/nest';
import type { PlyPiece } from '../../core/templates/piece';
import { usualRollWidthMm, type Material } from '../inputs/material';
import type { ProjectInputs } from '../inputs/project';

/** By id: the name of each card, with a number where another has the same. */
export function fabricNames(materials: readonly Material[]): ReadonlyMap<string, string> {
  const taken = new Set<string>();
  return new Map(
    materials.map(({ id, name }) => {
      let own = name;
      for (let at = 2; taken.has(own); at++) own = `${name} (${at})`;
      taken.add(own);
      return [id, own];
    }),
  );
}

export interface NestAsked {
  readonly rolls: readonly FabricRoll[];
  readonly choices: NestChoices;
}

/** One roll for each card that a piece is cut from. */
export function nestAskedOf({ plies, cutting }: ProjectInputs, pieces: readonly PlyPiece[]): NestAsked {
  const { gapMm, fiberToleranceDeg, halfTurns } = cutting;
  const names = fabricNames(plies.materials);
  const used = new Set(pieces.map(({ fabric }) => fabric));
  return {
    rolls: plies.materials
      .filter(({ id }) => used.has(names.get(id)!))
      .map((card) => ({
        fabric: names.get(card.id)!,
        widthMm: card.rollWidthMm ?? usualRollWidthMm,
        remnantsMm: remnantOf(card),
        arealWeightGsm: prepregArealMassGsm(card),
        pricePerM2: card.pricePerM2,
      })),
    choices: { gapMm, fiberToleranceDeg, halfTurns: halfTurns === 'allowed', seed: 1 },
  };
}

function remnantOf({ remnantLengthMm, remnantWidthMm }: Material): FabricRoll['remnantsMm'] {
  if (remnantLengthMm === null || remnantWidthMm === null) return [];
  return [
    [
      [0, 0],
      [remnantLengthMm, 0],
      [remnantLengthMm, remnantWidthMm],
      [0, remnantWidthMm],
    ],
  ];
}
