import { transfer } from 'comlink';

/** Every buffer that a reply of plain objects, arrays and typed arrays holds, once each. */
export function buffersIn(value: unknown, found = new Set<ArrayBuffer>()): ArrayBuffer[] {
  if (ArrayBuffer.isView(value)) {
    if (value.buffer instanceof ArrayBuffer && value.byteLength > 0) found.add(value.buffer);
  } else if (Array.isArray(value)) {
    for (const item of value) buffersIn(item, found);
  } else if (typeof value === 'object' && value !== null) {
    for (const item of Object.values(value)) buffersIn(item, found);
  }
  return [...found];
}

/** Marks all flat arrays of a reply for transfer: they move to the receiver instead of being copied. */
export function transferred<Reply>(reply: Reply): Reply {
  return transfer(reply, buffersIn(reply));
}
