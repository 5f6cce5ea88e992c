// @vitest-environment jsdom
import { beforeEach, expect, it } from 'vitest';
import { openOnDemo } from '../../src/app/openOnDemo';

beforeEach(() => {
  window.location.hash = '#/';
});

it('opens on the first of the projects that were put in', async () => {
  await openOnDemo(Promise.resolve(['upper', 'lower']));
  expect(window.location.hash).toBe('#/p/upper/walls');
});

it('stays on the list when it is not the first start', async () => {
  await openOnDemo(Promise.resolve([]));
  expect(window.location.hash).toBe('#/');
});

it('leaves whoever followed a link to a project there', async () => {
  window.location.hash = '#/p/own/part';
  await openOnDemo(Promise.resolve(['upper']));
  expect(window.location.hash).toBe('#/p/own/part');
});

it.each([
  ['a click', new MouseEvent('click')],
  ['a key', new KeyboardEvent('keydown')],
  ['a chosen file', new Event('change')],
])('does not lead away from the list once %s was there', async (_, sign) => {
  let made!: (ids: readonly string[]) => void;
  const opening = openOnDemo(new Promise((resolve) => (made = resolve)));
  window.dispatchEvent(sign);
  made(['upper']);
  await opening;
  expect(window.location.hash).toBe('#/');
});
