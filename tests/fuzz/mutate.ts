/** Damage of the kinds that files and records suffer: bits flipped, pieces lost, doubled or swapped, numbers made extreme. */
import type { Chance } from './chance';

const extremes = [0, 1, 255, 127, 128, 0x0a, 0x20, 0x2d, 0x65, 0x22];

/** One to four hurts, anywhere. */
export function mutatedBytes(chance: Chance, bytes: Uint8Array): Uint8Array {
  let hurt = bytes;
  for (let round = chance.below(4); round >= 0; round--) hurt = hurtOnce(chance, hurt);
  return hurt;
}

const joined = (...parts: readonly Uint8Array[]): Uint8Array =>
  Uint8Array.from(parts.flatMap((part) => [...part]));

function hurtOnce(chance: Chance, bytes: Uint8Array): Uint8Array {
  const at = chance.below(bytes.length + 1);
  const length = Math.min(bytes.length - at, 1 + chance.below(chance.pick([4, 64, 4096])));
  const piece = bytes.subarray(at, at + length);
  const copy = bytes.slice();
  switch (chance.below(6)) {
    case 0:
      if (at < copy.length) copy[at]! ^= 1 << chance.below(8);
      return copy;
    case 1:
      copy.fill(chance.pick(extremes), at, at + length);
      return copy;
    case 2:
      return bytes.slice(0, at);
    case 3:
      return joined(bytes.subarray(0, at), bytes.subarray(at + length));
    case 4:
      return joined(bytes.subarray(0, at), piece, piece, bytes.subarray(at + length));
    default:
      if (copy.length >= 4) {
        const place = chance.below(copy.length - 3);
        const value = chance.pick([
          0, 1, 0xffffffff, 0x7f800000, 0x7fc00000, 0x7fffffff, 4_000_000, 0x1e3ce508,
        ]);
        new DataView(copy.buffer).setUint32(place, value, true);
      }
      return copy;
  }
}

const oddValues: readonly unknown[] = [
  null,
  true,
  '',
  'x',
  '1e999',
  -1,
  0,
  -0,
  0.1,
  5e-324,
  1e308,
  -1e308,
  2 ** 31,
  2 ** 53,
  [],
  {},
  [[]],
  { a: [] },
];

/** A JSON value with one to three of its parts replaced, dropped or doubled. */
export function mutatedJson(chance: Chance, value: unknown): unknown {
  let changed = value;
  for (let round = chance.below(3); round >= 0; round--) changed = changedOnce(chance, changed);
  return changed;
}

function changedOnce(chance: Chance, value: unknown): unknown {
  const isTree = typeof value === 'object' && value !== null;
  const keys = isTree ? Object.keys(value) : [];
  if (keys.length === 0 || chance.below(12) === 0) return chance.pick(oddValues);
  const key = chance.pick(keys);
  if (Array.isArray(value)) {
    const at = Number(key);
    const list = [...(value as unknown[])];
    const what = chance.below(6);
    if (what === 0) list.splice(at, 1);
    else if (what === 1) list.splice(at, 0, list[at]);
    else list[at] = changedOnce(chance, list[at]);
    return list;
  }
  const { [key]: inner, ...rest } = value as Record<string, unknown>;
  if (chance.below(8) === 0) return rest;
  if (chance.below(16) === 0) return { ...rest, [`${key}x`]: inner };
  return { ...rest, [key]: changedOnce(chance, inner) };
}

/** Text with its bytes hurt. */
export const mutatedText = (chance: Chance, text: string): string =>
  new TextDecoder().decode(mutatedBytes(chance, new TextEncoder().encode(text)));
