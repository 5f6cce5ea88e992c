import { expect, it } from 'vitest';
import { failureOf } from '../../src/jobs/failureOf';

it.each([
  'Failed to fetch dynamically imported module: https://x.test/assets/manifold-1.js',
  'error loading dynamically imported module: https://x.test/assets/manifold-1.js',
  'Importing a module script failed.',
  'Aborted(both async and sync fetching of the wasm failed)',
])('a part that is not on the server is no fault of model or memory: %s', (words) => {
  const { code, message } = failureOf(new TypeError(words));
  expect(code).toBe('job.missingPart');
  expect(message).toContain('Load the page again.');
  expect(message).not.toMatch(/memory|model|WebGL/iu);
});

it.each([
  ['RangeError', new RangeError('Array buffer allocation failed'), 'job.memory'],
  ['a defect', new TypeError('x is undefined'), 'job.failed'],
])('%s is told as before', (_, error, code) => {
  expect(failureOf(error).code).toBe(code);
});
