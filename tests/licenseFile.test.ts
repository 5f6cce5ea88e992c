import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import packageFacts from '../package.json' with { type: 'json' };

it('the license named in package.json stands in the root, whole, held by the authors together', () => {
  const license = readFileSync(join(import.meta.dirname, '..', 'LICENSE'), 'utf8');
  expect(license.split('\n')[0]).toBe(`${packageFacts.license} License`);
  expect(license).toMatch(/^Copyright \(c\) \d{4} the Mold & Layup Workbook authors$/mu);
  for (const words of [
    'Permission is hereby granted, free of charge,',
    'The above copyright notice and this permission notice shall be included',
    'THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND',
  ])
    expect(license.replaceAll(/\s+/gu, ' ')).toContain(words);
});
