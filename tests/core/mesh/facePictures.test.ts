/** The two pictures that the maker chooses the show face from. */
import { describe, expect, it } from 'vitest';
import { facePictures, mostShade, type FacePicture } from '../../../src/core/mesh/facePictures';
import { isHollowAlong } from '../../../src/core/mesh/rightWayUp';
import { box, domeShell, tray } from '../../support/meshes';

const shadeAt = ({ shade, width }: FacePicture, right: number, up: number) =>
  shade[Math.floor(up * width) * width + Math.floor(right * width)]!;

describe('the pictures of both sides', () => {
  it('show the outside first, then the hollow, which lies darker than its rim', () => {
    const [outside, hollow] = facePictures(tray([60, 40, 12], 2, 3));
    expect(outside.pull).toEqual([0, 0, -1]);
    expect(hollow.pull).toEqual([0, 0, 1]);
    // The flat outside is lit alike; the floor of the hollow lies a height under the rim.
    expect(shadeAt(outside, 0.5, 0.5)).toBe(shadeAt(outside, 0.4, 0.45));
    expect(shadeAt(hollow, 0.5, 0.5)).toBeLessThan(shadeAt(outside, 0.5, 0.5));
  });

  it('are empty around the part and hold no other shade', () => {
    for (const { shade, width } of facePictures(box([0, 0, 0], [70, 40, 12]))) {
      expect(shade).toHaveLength(width * width);
      expect(shade[0]).toBe(0);
      expect(Math.max(...shade)).toBeLessThanOrEqual(mostShade);
      expect(shade.some((one) => one > 0)).toBe(true);
    }
  });
});

describe('a pull into the hollow', () => {
  it('is told from one out of the closed side', () => {
    const open = tray([60, 40, 12], 1.5, 3);
    expect(isHollowAlong(open, [0, 0, 1])).toBe(true);
    expect(isHollowAlong(open, [0, 0, -1])).toBe(false);
    const dome = domeShell(16, 48);
    expect(isHollowAlong(dome, [0, 0, 1])).toBe(false);
    expect(isHollowAlong(dome, [0, 0, -1])).toBe(true);
    expect(isHollowAlong(box([0, 0, 0], [70, 40, 12]), [0, 0, 1])).toBe(false);
  });
});
