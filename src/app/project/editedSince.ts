/** What the maker has entered while a file was being taken in: it is about the new one, and stays. */
export function editedSince<Inputs extends object>(before: Inputs, now: Inputs): Partial<Inputs> {
  const keys = Object.keys(now) as (keyof Inputs)[];
  const edited = keys.filter((key) => JSON.stringify(now[key]) !== JSON.stringify(before[key]));
  return Object.fromEntries(edited.map((key) => [key, now[key]])) as Partial<Inputs>;
}
