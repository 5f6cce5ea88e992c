import { useMemo } from 'react';

/** Plain data that stays the same object while it says the same. */
export function useSameText<Value>(value: Value): Value {
  const text = JSON.stringify(value);
  return useMemo(() => JSON.parse(text) as Value, [text]);
}
