import {
  filmX,
  filmY,
  filmZ,
  halfX,
  halfY,
  halfZ,
  mass,
  nx,
  ny,
  nz,
  rise,
  scratch,
  source,
  temperature,
} from './mold';
import { fromLines, storeToLines, widened, widenedFromLines } from './pairs';

/** Lines of the third sweep that are worked together: few enough to stay near the processor all along the pull. */
const linesTogether: usize = 64;

/**
 * One time step of heat conduction on a brick grid by the alternating-direction scheme of Douglas and Gunn (Numer. Math. 6
 * (1964) 428-453): three sweeps of tridiagonal systems, second order in time, stable at any step. `rise` over the step from
 * `temperature`, in watts; the voxel's heat capacity over the step stands in `mass`. The first sweep takes the whole
 * right-hand side and is implicit along x. Layers are swept along x and y while they are at hand.
 */
export function conduct(): void {
  const layer = nx * ny;
  for (let k: usize = 0; k < nz; k++) {
    const first = layer * k;
    for (let j: usize = 0; j < ny; j++) fillRight(first + nx * j, j, k);
    solveAlongX(first);
    sweepAcross(first, nx, nx, ny, halfY, filmY);
  }
  for (let first: usize = 0; first < layer; first += linesTogether)
    sweepAcross(first, min(linesTogether, layer - first), layer, nz, halfZ, filmZ);
}

/** The whole right-hand side of one line along x, into `rise`. Beyond its ends lie conductances of zero. */
function fillRight(line: usize, j: usize, k: usize): void {
  // At the edge a neighbor is the voxel itself: no difference, no flux.
  const north = j + 1 < ny ? nx : 0;
  const south = j > 0 ? nx : 0;
  const above = k + 1 < nz ? nx * ny : 0;
  const below = k > 0 ? nx * ny : 0;
  const two = f64x2.splat(2);
  const end = line + nx;
  let at = line;
  for (; at + 2 <= end; at += 2) {
    const t = temperature + 8 * at;
    const here = v128.load(t);
    const x = halfX + 4 * at;
    const toEast = f64x2.mul(widened(x), f64x2.sub(here, v128.load(t + 8)));
    const fromWest = f64x2.mul(widened(x - 4), f64x2.sub(v128.load(t - 8), here));
    const y = halfY + 4 * at;
    const z = halfZ + 4 * at;
    let across = f64x2.mul(widened(y), f64x2.sub(v128.load(t + 8 * north), here));
    across = f64x2.add(across, f64x2.mul(widened(y - 4 * south), f64x2.sub(v128.load(t - 8 * south), here)));
    across = f64x2.add(across, f64x2.mul(widened(z), f64x2.sub(v128.load(t + 8 * above), here)));
    across = f64x2.add(across, f64x2.mul(widened(z - 4 * below), f64x2.sub(v128.load(t - 8 * below), here)));
    const flux = f64x2.add(f64x2.sub(fromWest, toEast), across);
    v128.store(rise + 8 * at, f64x2.add(v128.load(source + 8 * at), f64x2.mul(two, flux)));
  }
  if (at < end) {
    const t = temperature + 8 * at;
    const here = load<f64>(t);
    const y = halfY + 4 * at;
    const z = halfZ + 4 * at;
    const toEast = <f64>load<f32>(halfX + 4 * at) * (here - load<f64>(t + 8));
    const fromWest = <f64>load<f32>(halfX + 4 * at - 4) * (load<f64>(t - 8) - here);
    const across =
      <f64>load<f32>(y) * (load<f64>(t + 8 * north) - here) +
      <f64>load<f32>(y - 4 * south) * (load<f64>(t - 8 * south) - here) +
      <f64>load<f32>(z) * (load<f64>(t + 8 * above) - here) +
      <f64>load<f32>(z - 4 * below) * (load<f64>(t - 8 * below) - here);
    store<f64>(rise + 8 * at, load<f64>(source + 8 * at) + 2 * (fromWest - toEast + across));
  }
}

/** The lines along x of one layer: a line is one long chain, so four are worked at a time, then two, then one twice. */
function solveAlongX(first: usize): void {
  const end = first + nx * ny;
  let line = first;
  for (; line + 4 * nx <= end; line += 4 * nx) solveFour(line, line + nx, line + 2 * nx, line + 3 * nx);
  for (; line < end; line += 2 * nx) solveTwo(line, line + 2 * nx <= end ? line + nx : line);
}

/** @param a to d: first voxels of four lines */
function solveFour(a: usize, b: usize, c: usize, d: usize): void {
  const one = f64x2.splat(1);
  let westAb = f64x2.splat(0);
  let westCd = westAb;
  let coupledAb = westAb;
  let coupledCd = westAb;
  let risenAb = westAb;
  let risenCd = westAb;
  for (let i: usize = 0; i < nx; i++) {
    const eastAb = widenedFromLines(halfX + 4 * (a + i), halfX + 4 * (b + i));
    const eastCd = widenedFromLines(halfX + 4 * (c + i), halfX + 4 * (d + i));
    const filmAb = widenedFromLines(filmX + 4 * (a + i), filmX + 4 * (b + i));
    const filmCd = widenedFromLines(filmX + 4 * (c + i), filmX + 4 * (d + i));
    let sumAb = f64x2.add(fromLines(mass + 8 * (a + i), mass + 8 * (b + i)), eastAb);
    let sumCd = f64x2.add(fromLines(mass + 8 * (c + i), mass + 8 * (d + i)), eastCd);
    sumAb = f64x2.add(f64x2.add(sumAb, westAb), filmAb);
    sumCd = f64x2.add(f64x2.add(sumCd, westCd), filmCd);
    const pivotAb = f64x2.div(one, f64x2.sub(sumAb, f64x2.mul(westAb, coupledAb)));
    const pivotCd = f64x2.div(one, f64x2.sub(sumCd, f64x2.mul(westCd, coupledCd)));
    coupledAb = f64x2.mul(eastAb, pivotAb);
    coupledCd = f64x2.mul(eastCd, pivotCd);
    const rightAb = fromLines(rise + 8 * (a + i), rise + 8 * (b + i));
    const rightCd = fromLines(rise + 8 * (c + i), rise + 8 * (d + i));
    risenAb = f64x2.mul(f64x2.add(rightAb, f64x2.mul(westAb, risenAb)), pivotAb);
    risenCd = f64x2.mul(f64x2.add(rightCd, f64x2.mul(westCd, risenCd)), pivotCd);
    storeToLines(scratch + 8 * (a + i), scratch + 8 * (b + i), coupledAb);
    storeToLines(scratch + 8 * (c + i), scratch + 8 * (d + i), coupledCd);
    storeToLines(rise + 8 * (a + i), rise + 8 * (b + i), risenAb);
    storeToLines(rise + 8 * (c + i), rise + 8 * (d + i), risenCd);
    westAb = eastAb;
    westCd = eastCd;
  }
  for (let i = nx - 1; i-- > 0;) {
    const backAb = fromLines(scratch + 8 * (a + i), scratch + 8 * (b + i));
    const backCd = fromLines(scratch + 8 * (c + i), scratch + 8 * (d + i));
    const ownAb = fromLines(rise + 8 * (a + i), rise + 8 * (b + i));
    const ownCd = fromLines(rise + 8 * (c + i), rise + 8 * (d + i));
    risenAb = f64x2.add(ownAb, f64x2.mul(backAb, risenAb));
    risenCd = f64x2.add(ownCd, f64x2.mul(backCd, risenCd));
    storeToLines(rise + 8 * (a + i), rise + 8 * (b + i), risenAb);
    storeToLines(rise + 8 * (c + i), rise + 8 * (d + i), risenCd);
  }
}

/** @param a, b first voxels of two lines, or twice the same */
function solveTwo(a: usize, b: usize): void {
  const one = f64x2.splat(1);
  let west = f64x2.splat(0);
  let coupled = west;
  let risen = west;
  for (let i: usize = 0; i < nx; i++) {
    const east = widenedFromLines(halfX + 4 * (a + i), halfX + 4 * (b + i));
    const film = widenedFromLines(filmX + 4 * (a + i), filmX + 4 * (b + i));
    const own = fromLines(mass + 8 * (a + i), mass + 8 * (b + i));
    const sum = f64x2.add(f64x2.add(f64x2.add(own, east), west), film);
    const pivot = f64x2.div(one, f64x2.sub(sum, f64x2.mul(west, coupled)));
    coupled = f64x2.mul(east, pivot);
    const right = fromLines(rise + 8 * (a + i), rise + 8 * (b + i));
    risen = f64x2.mul(f64x2.add(right, f64x2.mul(west, risen)), pivot);
    storeToLines(scratch + 8 * (a + i), scratch + 8 * (b + i), coupled);
    storeToLines(rise + 8 * (a + i), rise + 8 * (b + i), risen);
    west = east;
  }
  for (let i = nx - 1; i-- > 0;) {
    const own = fromLines(rise + 8 * (a + i), rise + 8 * (b + i));
    const ahead = fromLines(scratch + 8 * (a + i), scratch + 8 * (b + i));
    risen = f64x2.add(own, f64x2.mul(ahead, risen));
    storeToLines(rise + 8 * (a + i), rise + 8 * (b + i), risen);
  }
}

/** `width` lines side by side, each of `count` voxels `stride` apart. */
function sweepAcross(
  first: usize,
  width: usize,
  stride: usize,
  count: usize,
  half: usize,
  film: usize,
): void {
  const even = first + (width & ~1);
  for (let place: usize = 0; place < count; place++) {
    const down = place > 0 ? stride : 0;
    const row = place * stride;
    for (let at = first + row; at < even + row; at += 2) forwardPair(at, down, half, film);
    if (width & 1) forwardOne(even + row, down, half, film);
  }
  for (let place = count - 1; place-- > 0;) {
    const row = place * stride;
    for (let at = first + row; at < even + row; at += 2) {
      const own = rise + 8 * at;
      const ahead = f64x2.mul(v128.load(scratch + 8 * at), v128.load(own + 8 * stride));
      v128.store(own, f64x2.add(v128.load(own), ahead));
    }
    if (width & 1) {
      const own = rise + 8 * (even + row);
      const ahead = load<f64>(scratch + 8 * (even + row)) * load<f64>(own + 8 * stride);
      store<f64>(own, load<f64>(own) + ahead);
    }
  }
}

/** @param down distance to the place before in the line; 0 at its start */
function forwardPair(at: usize, down: usize, half: usize, film: usize): void {
  const ahead = widened(half + 4 * at);
  const own = v128.load(mass + 8 * at);
  const wide = f64x2.add(own, ahead);
  const outside = widened(film + 4 * at);
  const right = f64x2.mul(own, v128.load(rise + 8 * at));
  const one = f64x2.splat(1);
  if (down == 0) {
    const pivot = f64x2.div(one, f64x2.add(wide, outside));
    v128.store(scratch + 8 * at, f64x2.mul(ahead, pivot));
    v128.store(rise + 8 * at, f64x2.mul(right, pivot));
    return;
  }
  const before = widened(half + 4 * (at - down));
  const sum = f64x2.add(f64x2.add(wide, before), outside);
  const coupled = v128.load(scratch + 8 * (at - down));
  const pivot = f64x2.div(one, f64x2.sub(sum, f64x2.mul(before, coupled)));
  v128.store(scratch + 8 * at, f64x2.mul(ahead, pivot));
  const fromBefore = f64x2.mul(before, v128.load(rise + 8 * (at - down)));
  v128.store(rise + 8 * at, f64x2.mul(f64x2.add(right, fromBefore), pivot));
}

function forwardOne(at: usize, down: usize, half: usize, film: usize): void {
  const ahead = <f64>load<f32>(half + 4 * at);
  const own = load<f64>(mass + 8 * at);
  const outside = <f64>load<f32>(film + 4 * at);
  const right = own * load<f64>(rise + 8 * at);
  if (down == 0) {
    const pivot = 1 / (own + ahead + outside);
    store<f64>(scratch + 8 * at, ahead * pivot);
    store<f64>(rise + 8 * at, right * pivot);
    return;
  }
  const before = <f64>load<f32>(half + 4 * (at - down));
  const coupled = load<f64>(scratch + 8 * (at - down));
  const pivot = 1 / (own + ahead + before + outside - before * coupled);
  store<f64>(scratch + 8 * at, ahead * pivot);
  store<f64>(rise + 8 * at, (right + before * load<f64>(rise + 8 * (at - down))) * pivot);
}
