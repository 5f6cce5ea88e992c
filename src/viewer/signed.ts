/** "+0.3" or "−0.3"; zero has no sign. */
export function signed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  if (Number(text) === 0) return text;
  return value > 0 ? `+${text}` : `\u2212${text}`;
}
