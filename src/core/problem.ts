/**
 * An input that cannot be used, told in the maker's words. Core functions throw it at the door; callers show
 * `message` as it stands. Anything else that is thrown is a defect of ours.
 */
export class Problem extends Error {
  /** Stable code for tests and for callers that offer a way out, e.g. `mesh.truncated`. */
  readonly code: string;

  constructor(code: string, message: string) {
    super(message);
    this.name = 'Problem';
    this.code = code;
  }
}
