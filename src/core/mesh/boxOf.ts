export interface BoxMm {
  readonly low: readonly number[];
  readonly high: readonly number[];
}

export function boxOf(positions: Float64Array): BoxMm {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let at = 0; at < positions.length; at++) {
    const axis = at % 3;
    if (positions[at]! < low[axis]!) low[axis] = positions[at]!;
    if (positions[at]! > high[axis]!) high[axis] = positions[at]!;
  }
  return { low, high };
}
