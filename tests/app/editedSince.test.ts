/** An import takes seconds; what is entered meanwhile must not be written over at its end. */
import { describe, expect, it } from 'vitest';
import { editedSince } from '../../src/app/project/editedSince';
import { defaultProjectInputs } from '../../src/steps/inputs/project';

const before = defaultProjectInputs.part;

describe('what was entered during an import', () => {
  it('is the unit that was confirmed, and the pull that was turned', () => {
    const now = { ...before, unit: 'in' as const, pull: [1, 0, 0] as [number, number, number] };
    expect(editedSince(before, now)).toEqual({ unit: 'in', pull: [1, 0, 0] });
  });

  it('is nothing when nothing was: a like pull in another array is no edit', () => {
    expect(editedSince(before, { ...before, pull: [...before.pull] })).toEqual({});
  });
});
