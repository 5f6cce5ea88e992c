import { array, assert, constantFrom, property, string } from 'fast-check';
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
  assert(
    property(
      string({ unit: 'binary' }),
      array(constantFrom('#', '/', 'p', '%', 'E', '0', 'A', '4')),
      (text, pieces) => {
        for (const hash of [text, `#/p/${text}`, pieces.join('')])
          expect(['project', 'projects']).toContain(parseRoute(hash).page);
      },
    ),
  );
});

it('reads back the link to any project', () => {
  assert(
    property(string({ minLength: 1, unit: 'grapheme' }), (projectId) => {
      expect(parseRoute(projectHref(projectId, 'mold'))).toEqual({
        page: 'project',
        projectId,
        stepId: 'mold',
      });
    }),
  );
});
