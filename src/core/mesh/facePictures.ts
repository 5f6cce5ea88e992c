/** Small shaded pictures of a part, for the question which of its sides people see. */
import { facetGeometry } from './facetGeometry';
import { lookAlong, prepareSmallLooks } from './pullDepth';
import { rightWayUp } from './rightWayUp';
import type { IndexedMesh, Vec3 } from './types';

/** A picture of one side, row after row from below. */
export interface FacePicture {
  /** The pull, if this is the face that people see. */
  readonly pull: Vec3;
  readonly width: number;
  /** 0 where nothing stands, else 1 (darkest) to `mostShade`. */
  readonly shade: Uint8Array;
}

export const mostShade = 8;

/** The light comes from the upper left, over the shoulder. */
const light: Vec3 = [-0.45, 0.45, 0.77];
/** Of the shade, what depth alone makes darker at the bottom of a hollow. */
const depthShare = 0.35;

/** Both sides of the part along the likeliest pull, that one first. */
export function facePictures(mesh: IndexedMesh): readonly [FacePicture, FacePicture] {
  const { pull } = rightWayUp(mesh);
  const setup = prepareSmallLooks(mesh, facetGeometry(mesh));
  const picture = (out: Vec3): FacePicture => {
    const { top, pixelMm } = lookAlong(setup, out);
    return { pull: out, width: setup.side, shade: shadeOf(top, setup.side, pixelMm) };
  };
  return [picture(pull), picture([0 - pull[0], 0 - pull[1], 0 - pull[2]])];
}

function shadeOf(height: Float32Array, width: number, pixelMm: number): Uint8Array {
  let [low, high] = [Infinity, -Infinity];
  for (const one of height) {
    if (one === -Infinity) continue;
    low = Math.min(low, one);
    high = Math.max(high, one);
  }
  const shade = new Uint8Array(height.length);
  for (let pixel = 0; pixel < height.length; pixel++) {
    const own = height[pixel]!;
    if (own === -Infinity) continue;
    const slope = (step: number) => {
      const [before, after] = [height[pixel - step] ?? -Infinity, height[pixel + step] ?? -Infinity];
      return ((after === -Infinity ? own : after) - (before === -Infinity ? own : before)) / (2 * pixelMm);
    };
    const [x, y] = [-slope(1), -slope(width)];
    const lit = Math.max(0, (x * light[0] + y * light[1] + light[2]) / Math.hypot(x, y, 1));
    const depth = high > low ? (own - low) / (high - low) : 1;
    const brightness = lit * (1 - depthShare + depthShare * depth);
    shade[pixel] = 1 + Math.min(mostShade - 1, Math.floor(mostShade * brightness));
  }
  return shade;
}
