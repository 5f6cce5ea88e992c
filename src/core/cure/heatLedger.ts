/** Where the heat of a run came from and went to. */

export interface HeatLedger {
  /** Through the outside, by film and radiation as the temperatures give it. */
  fromOvenJ: number;
  /** In stone, laminate and water: capacity times rise. */
  storedJ: number;
  /** Taken by water that evaporated or boiled. */
  evaporatedJ: number;
  dehydratedJ: number;
  /** Given by the curing resin. */
  reactionJ: number;
  /** Water that boiled off inside, and that dried off at the faces. */
  boiledKg: number;
  driedKg: number;
}

export const emptyLedger = (): HeatLedger => ({
  fromOvenJ: 0,
  storedJ: 0,
  evaporatedJ: 0,
  dehydratedJ: 0,
  reactionJ: 0,
  boiledKg: 0,
  driedKg: 0,
});

/** What is missing over what was moved, dimensionless: 0 when in = stored + evaporated + dehydrated − reaction. */
export function imbalance(ledger: Readonly<HeatLedger>): number {
  const { fromOvenJ, storedJ, evaporatedJ, dehydratedJ, reactionJ } = ledger;
  const moved = Math.abs(fromOvenJ) + Math.abs(storedJ) + evaporatedJ + dehydratedJ + reactionJ;
  return moved === 0 ? 0 : (2 * (fromOvenJ + reactionJ - storedJ - evaporatedJ - dehydratedJ)) / moved;
}
