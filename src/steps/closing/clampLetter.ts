/** What a line of clamps is called on the plan and on paper: A, B ... Z, then A2, B2 ... */
export function clampLetter(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : `${letter}${Math.floor(index / 26) + 1}`;
}
