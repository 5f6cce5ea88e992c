import fc from 'fast-check';
import { expect, it } from 'vitest';
import { parseRoute, projectHref } from '../../src/app/route';

it.each([
  ['', { page: 'projects' }],
  ['#/', { page: 'projects' }],
  ['#/%%%', { page: 'projects' }],
  ['#/p/', { page: 'projects' }],
  ['#/p/%', { page: 'project', projectId: '%', stepId: null }],
  ['#/p/%E0%A4%A', { page: 'project', projectId: '%E0%A4%A', stepId: null }],
  ['#/p/a%20b/walls', { page: 'project', projectId: 'a b', stepId: 'walls' }],
  ['#/p/a/%', { page: 'project', projectId: 'a', stepId: '%' }],
])('reads %j', (hash, route) => {
  expect(parseRoute(hash)).toEqual(route);
});

it('reads any text as one of the two pages', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), fc.array(fc.constantFrom(...'#/p%E0A4')), (text, pieces) => {
      for (const hash of [text, `#/p/${text}`, pieces.join('')])
        expect(['project', 'projects']).toContain(parseRoute(hash).page);
    }),
  );
});

it('reads back the link to any project', () => {
  fc.assert(
    fc.property(fc.string({ minLength: 1, unit: 'grapheme' }), (projectId) => {
      expect(parseRoute(projectHref(projectId, 'mold'))).toEqual({
        page: 'project',
        projectId,
        stepId: 'mold',
      });
    }),
  );
});
