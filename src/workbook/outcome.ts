/** How an action of the maker ended: done, or not done with a plain sentence that says why and what to do. */
export type Outcome<Result extends object = object> =
  ({ readonly done: true } & Result) | { readonly done: false; readonly reason: string };

export function refused(reason: string): { readonly done: false; readonly reason: string } {
  return { done: false, reason };
}
