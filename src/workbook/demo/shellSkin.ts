/** Points on the outer and inner skin of a shell. The inner skin is the outer one offset along its true normal. */
import type { Vec3 } from '../../core/mesh/types';
import { outlineAt } from './planGrid';
import type { ShellDesign } from './shellDesign';

export interface SkinPoint {
  readonly outer: Vec3;
  readonly inner: Vec3;
}

export interface ShellSkin {
  /** Half sizes of the top's outline, where the shoulder begins. */
  readonly topHalfLengthMm: number;
  readonly topHalfWidthMm: number;
  top(xMm: number, yMm: number): SkinPoint;
  /** Below the top's outline at an angle; `down` is 0 at the shoulder's start, 1 at its end, 2 at the rim. */
  side(angle: number, down: number): SkinPoint;
}

/** Step of the difference quotients, in radians, in parts of `down`, and in mm. */
const step = 1e-4;

export function shellSkin(design: ShellDesign): ShellSkin {
  const topHalfLengthMm = topHalf(design.halfLengthMm, design.crownFallXMm, design);
  const topHalfWidthMm = topHalf(design.halfWidthMm, design.crownFallYMm, design);
  const wallAngle = ((90 - design.sideDraftDeg) * Math.PI) / 180;

  function crownMm(x: number, y: number): number {
    const fallX = design.crownFallXMm * (x / topHalfLengthMm) ** 2;
    const fallY = design.crownFallYMm * (y / topHalfWidthMm) ** 2;
    return design.heightMm - fallX - fallY;
  }

  function topHeightMm(x: number, y: number): number {
    return crownMm(x, y) + design.reliefMm(x, y);
  }

  function top(x: number, y: number): SkinPoint {
    const outer: Vec3 = [x, y, topHeightMm(x, y)];
    const slopeX = (topHeightMm(x + step, y) - topHeightMm(x - step, y)) / (2 * step);
    const slopeY = (topHeightMm(x, y + step) - topHeightMm(x, y - step)) / (2 * step);
    return { outer, inner: offset(outer, unit([-slopeX, -slopeY, 1]), -design.wallMm) };
  }

  /** Shoulder as an arc that starts with the top's own slope, then a straight wall; so heights may differ around. */
  function outerSide(angle: number, down: number): Vec3 {
    const edge = outlineAt(topHalfLengthMm, topHalfWidthMm, angle);
    const fallX = (-2 * design.crownFallXMm * edge.x) / topHalfLengthMm ** 2;
    const fallY = (-2 * design.crownFallYMm * edge.y) / topHalfWidthMm ** 2;
    const startAngle = Math.atan(-(fallX * edge.nx + fallY * edge.ny));
    const turned = startAngle + Math.min(1, down) * (wallAngle - startAngle);
    let out = design.shoulderRadiusMm * (Math.sin(turned) - Math.sin(startAngle));
    let z = crownMm(edge.x, edge.y) - design.shoulderRadiusMm * (Math.cos(startAngle) - Math.cos(turned));
    if (down > 1) {
      out += ((down - 1) * z) / Math.tan(wallAngle);
      z *= 2 - down;
    }
    const x = edge.x + out * edge.nx;
    const y = edge.y + out * edge.ny;
    return [x, y, z];
  }

  function side(angle: number, down: number): SkinPoint {
    const outer = outerSide(angle, down);
    const ahead = outerSide(angle + step, down);
    const behind = outerSide(angle - step, down);
    // One-sided differences keep shoulder and wall apart where they meet, and stay on the wall at the rim.
    const above = outerSide(angle, down - step);
    const along = minus(ahead, behind);
    const downwards = unit(minus(outer, above));
    const normal = unit(cross(downwards, along));
    const wallMm = design.wallMm + design.sideExtraWallMm(...outer);
    const inner = offset(outer, normal, -wallMm);
    // The rim is flat: the inner wall runs on, or stops short, to end in the same plane.
    return { outer, inner: down < 2 ? inner : offset(inner, downwards, -inner[2] / downwards[2]) };
  }

  return { topHalfLengthMm, topHalfWidthMm, top, side };
}

/** Half size of the top's outline that leaves the wanted half size at the rim, by repeated substitution. */
function topHalf(halfMm: number, crownFallMm: number, design: ShellDesign): number {
  const wallAngle = ((90 - design.sideDraftDeg) * Math.PI) / 180;
  let half = halfMm - design.shoulderRadiusMm;
  for (let i = 0; i < 30; i++) {
    const startAngle = Math.atan((2 * crownFallMm) / half);
    const wallHeight =
      design.heightMm - crownFallMm - design.shoulderRadiusMm * (Math.cos(startAngle) - Math.cos(wallAngle));
    const out =
      design.shoulderRadiusMm * (Math.sin(wallAngle) - Math.sin(startAngle)) +
      wallHeight / Math.tan(wallAngle);
    half = halfMm - out;
  }
  return half;
}

function minus(a: Vec3, b: Vec3): Vec3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function unit(a: Vec3): Vec3 {
  const length = Math.hypot(...a);
  return [a[0] / length, a[1] / length, a[2] / length];
}

function offset(a: Vec3, direction: Vec3, by: number): Vec3 {
  return [a[0] + by * direction[0], a[1] + by * direction[1], a[2] + by * direction[2]];
}
