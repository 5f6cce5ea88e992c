import { expect, it } from 'vitest';
import { logText } from '../../src/sheets/cure/run/logText';

const log = 'time;air °C\n0;20,5\n60;21,5\n';
const utf16 = Buffer.from(log, 'utf16le');
const swapped = Buffer.from(utf16).swap16();

it.each([
  ['UTF-8', Buffer.from(log)],
  ['UTF-16 with its mark', Buffer.concat([Buffer.of(0xff, 0xfe), utf16])],
  ['UTF-16 without a mark', utf16],
  ['UTF-16 the other way round, with its mark', Buffer.concat([Buffer.of(0xfe, 0xff), swapped])],
  ['UTF-16 the other way round', swapped],
])('reads a log in %s', async (_, bytes) => {
  expect(await logText(new Blob([new Uint8Array(bytes)]))).toBe(log);
});

it('reads an empty file as an empty text', async () => {
  expect(await logText(new Blob([]))).toBe('');
});
