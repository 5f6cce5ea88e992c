/** Colors of what is drawn over the part; the ground itself is the page's own CSS behind a clear canvas. */
export interface ViewTheme {
  readonly ink: string;
  readonly ground: string;
  readonly accent: string;
  readonly finding: string;
}
