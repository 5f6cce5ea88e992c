import { describe, expect, it } from 'vitest';
import { isAllOver, placeName, type PartFrame } from '../../../src/core/mesh/place';

const frame: PartFrame = { boxMinMm: [0, 0, 0], boxMaxMm: [60, 40, 12], pull: [0, 0, 1] };

describe('place in words', () => {
  it('tells the middle, a side or a corner and the kind of face', () => {
    expect(placeName(frame, [30, 20, 12], 'show')).toBe('show face, middle');
    expect(placeName(frame, [59, 20, 12], 'show')).toBe('show face, +x side');
    expect(placeName(frame, [30, 1, 0], 'rim')).toBe('rim, −y side');
    expect(placeName(frame, [8, 39, 5], 'core')).toBe('core face, +y −x corner');
    expect(placeName(frame, [30, 20, 5], 'detail')).toBe('boss or rib, middle');
  });
  it('leaves out the axis nearest to the pull', () => {
    expect(placeName({ ...frame, pull: [1, 0, 0] }, [60, 20, 6], 'show')).toBe('show face, middle');
    expect(placeName({ ...frame, pull: [0, -1, 0] }, [60, 0, 6], 'show')).toBe('show face, +x side');
  });
  it('does not stumble over a part without height', () => {
    const flat = { ...frame, boxMaxMm: [60, 0, 0] as const };
    expect(placeName(flat, [59, 0, 0], 'unmeasured')).toBe('open surface, +x side');
  });
  it('knows what reaches over the whole part', () => {
    expect(isAllOver(frame, [1, 1, 0], [59, 39, 0])).toBe(true);
    expect(isAllOver(frame, [1, 30, 0], [59, 39, 0])).toBe(false);
  });
});
