/**
 * A value with its flat arrays written as text, bit for bit: comparing long arrays entry by entry takes seconds, and
 * text tells whether they are the same as surely.
 */
export function asText(value: unknown): unknown {
  if (ArrayBuffer.isView(value)) {
    const bytes = Buffer.from(value.buffer, value.byteOffset, value.byteLength).toString('base64');
    return `${value.constructor.name} ${bytes}`;
  }
  if (Array.isArray(value)) return value.map(asText);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, asText(inner)]));
}
