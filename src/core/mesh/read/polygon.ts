import earcut from 'earcut';

/**
 * Cuts a flat polygon into triangles that are wound as it is. `points` holds 3 numbers per corner, in order. Returns
 * corner numbers, three per triangle. Concave polygons are handled; a polygon without area is fanned.
 */
export function cutPolygon(points: readonly number[]): number[] {
  const corners = points.length / 3;
  const { drop, sign } = projection(points);
  const across = (drop + 1) % 3;
  const up = (drop + 2) % 3;
  const flat: number[] = [];
  for (let corner = 0; corner < corners; corner++) {
    flat.push(points[3 * corner + across]!, sign * points[3 * corner + up]!);
  }
  const area2 = (a: number, b: number, c: number) =>
    (flat[2 * b]! - flat[2 * a]!) * (flat[2 * c + 1]! - flat[2 * a + 1]!) -
    (flat[2 * c]! - flat[2 * a]!) * (flat[2 * b + 1]! - flat[2 * a + 1]!);

  // A star seen from its first corner needs no search; this is every convex polygon.
  const fan: number[] = [];
  let star = true;
  for (let corner = 1; corner + 1 < corners; corner++) {
    fan.push(0, corner, corner + 1);
    if (area2(0, corner, corner + 1) < 0) star = false;
  }
  if (star) return fan;
  const cut = earcut(flat);
  for (let at = 0; at < cut.length; at += 3) {
    const [a, b, c] = [cut[at]!, cut[at + 1]!, cut[at + 2]!];
    if (area2(a, b, c) < 0) {
      cut[at + 1] = c;
      cut[at + 2] = b;
    }
  }
  return cut.length === 0 ? fan : cut;
}

/** The axis to leave out and the sign that makes the polygon run counter-clockwise, from its (Newell) normal. */
function projection(points: readonly number[]): { drop: number; sign: number } {
  const normal = [0, 0, 0];
  const count = points.length;
  for (let at = 0; at < count; at += 3) {
    const next = (at + 3) % count;
    for (let axis = 0; axis < 3; axis++) {
      const [p, q] = [(axis + 1) % 3, (axis + 2) % 3];
      normal[axis]! +=
        (points[at + p]! - points[next + p]!) * (points[at + q]! + points[next + q]! - 2 * points[q]!);
    }
  }
  let drop = 0;
  if (Math.abs(normal[1]!) > Math.abs(normal[drop]!)) drop = 1;
  if (Math.abs(normal[2]!) > Math.abs(normal[drop]!)) drop = 2;
  return { drop, sign: normal[drop]! < 0 ? -1 : 1 };
}
