/** Chance from a seed: the same seed gives the same case on every machine. */
export interface Chance {
  /** From 0 up to 1. */
  readonly share: () => number;
  /** From 0 up to `count` - 1. */
  readonly below: (count: number) => number;
  readonly pick: <One>(from: readonly One[]) => One;
  /** For a library with chance of its own. */
  readonly seed: () => number;
}

/** "Mulberry32", a 32-bit generator in the public domain; good enough to vary cases. */
export function chanceFrom(seed: number): Chance {
  let state = seed | 0;
  const share = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const below = (count: number) => Math.floor(share() * count);
  return { share, below, pick: (from) => from[below(from.length)]!, seed: () => below(2 ** 31) };
}

/** The seed of one case: of the whole run, the target's name and the case's number. */
export function seedOfCase(seed: number, target: string, number: number): number {
  let mixed = seed | 0;
  for (const letter of `${target} ${number}`) mixed = Math.imul(mixed ^ letter.codePointAt(0)!, 0x01000193);
  return mixed >>> 0;
}
