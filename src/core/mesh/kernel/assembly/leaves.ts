import { cornerPoint, leafBytes, leafSlots, leaves, middleX, middleY, middleZ, slotCount } from './surface';
import { moveTo, normalX, normalY, normalZ, standX, standY, standZ } from './stand';

/**
 * A leaf is 13 vectors of its four facets: corners a, b, c (x, y, z each, from the middle, mm), unit normal x, y, z, and the
 * plane's distance along the normal from the middle. A place without a facet holds NaN, which passes no test; a facet
 * without area has the normal 0, which passes all.
 */
export const leafNormal: usize = 144;
export const leafPlane: usize = 192;

export function prepareLeaves(): void {
  for (let first: i32 = 0; first < slotCount; first += leafSlots) {
    const leaf = leaves + leafBytes * <usize>(first / leafSlots);
    for (let member: i32 = 0; member < leafSlots; member++) {
      const at = leaf + 4 * <usize>member;
      const slot = first + member;
      if (slot >= slotCount) {
        for (let vector: usize = 0; vector < leafBytes; vector += 16) store<f32>(at + vector, f32.NaN);
        continue;
      }
      for (let corner: i32 = 0; corner < 3; corner++) {
        const point = cornerPoint(slot, corner);
        const vector = at + 48 * <usize>corner;
        store<f32>(vector, <f32>(load<f64>(point) - middleX));
        store<f32>(vector + 16, <f32>(load<f64>(point, 8) - middleY));
        store<f32>(vector + 32, <f32>(load<f64>(point, 16) - middleZ));
      }
      const hasArea = moveTo(slot);
      const along =
        normalX * (standX - middleX) + normalY * (standY - middleY) + normalZ * (standZ - middleZ);
      store<f32>(at + leafNormal, hasArea ? <f32>normalX : 0);
      store<f32>(at + leafNormal + 16, hasArea ? <f32>normalY : 0);
      store<f32>(at + leafNormal + 32, hasArea ? <f32>normalZ : 0);
      store<f32>(at + leafPlane, hasArea ? <f32>along : 0);
    }
  }
}
