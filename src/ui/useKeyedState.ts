import { useState } from 'react';

/**
 * State that belongs to `key`: when the key changes it starts anew, in the same render. For drafts of a value that
 * may change from outside, and for marks that belong to one measurement. A setter kept from an older key changes
 * nothing that is still shown.
 */
export function useKeyedState<State>(key: unknown, start: () => State): [State, (state: State) => void] {
  const [held, setHeld] = useState(() => ({ key, state: start() }));
  let current = held;
  if (!Object.is(held.key, key)) {
    current = { key, state: start() };
    setHeld(current);
  }
  return [current.state, (state) => setHeld({ key, state })];
}
