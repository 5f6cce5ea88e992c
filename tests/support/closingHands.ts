/** Show faces made by hand for the balance of mold closing: flat plates, cups and cones as grids of places. */
import type { BedCurve } from '../../src/core/closing/bedCurve';
import type { ClassLimits } from '../../src/core/closing/classes';
import { closingHistogram } from '../../src/core/closing/closingHistogram';
import type { ClosingFrame, ClosingHistogram, FacetSamples } from '../../src/core/closing/closingTypes';

/** One place of a face, in the frame's own axes: u, v across the pull, height over the lands. */
export interface HandPlace {
  readonly areaMm2: number;
  readonly wallMm: number;
  /** Unit outward normal as [along u, along v, along the pull]. */
  readonly normal: readonly [number, number, number];
  readonly at: readonly [number, number, number];
}

export function handFrame(lengthMm: number, widthMm: number, depthMm: number): ClosingFrame {
  return {
    pull: [0, 0, 1],
    u: [1, 0, 0],
    v: [0, 1, 0],
    originMm: [0, 0, 0],
    halfSizeMm: [lengthMm / 2, widthMm / 2],
    depthMm,
  };
}

export interface HandFace {
  readonly samples: FacetSamples;
  readonly centerMm: Float32Array;
}

export function handFace(frame: ClosingFrame, places: readonly HandPlace[]): HandFace {
  return {
    samples: {
      frame,
      wallsKnown: true,
      areaMm2: Float32Array.from(places.map(({ areaMm2 }) => areaMm2)),
      wallMm: Float32Array.from(places.map(({ wallMm }) => wallMm)),
      pullCosine: Float32Array.from(places.map(({ normal }) => Math.abs(normal[2]))),
      armUMm: Float32Array.from(places.map(({ normal: n, at }) => n[2] * at[1] - n[1] * at[2])),
      armVMm: Float32Array.from(places.map(({ normal: n, at }) => n[0] * at[2] - n[2] * at[0])),
    },
    centerMm: Float32Array.from(places.flatMap(({ at }) => [...at])),
  };
}

export function histogramOf(face: HandFace, limit?: number): ClosingHistogram {
  return closingHistogram(face.samples, face.centerMm, limit);
}

/** Flat plate around the middle, `cells` by `cells` places; the wall by the place's u and v from −1 to 1. */
export function plate(
  lengthMm: number,
  widthMm: number,
  cells: number,
  wallMm: (u: number, v: number) => number,
): HandFace {
  const places: HandPlace[] = [];
  for (let i = 0; i < cells; i++) {
    for (let j = 0; j < cells; j++) {
      const u = (2 * i + 1) / cells - 1;
      const v = (2 * j + 1) / cells - 1;
      places.push({
        areaMm2: (lengthMm * widthMm) / cells ** 2,
        wallMm: wallMm(u, v),
        normal: [0, 0, 1],
        at: [(u * lengthMm) / 2, (v * widthMm) / 2, 0],
      });
    }
  }
  return handFace(handFrame(lengthMm, widthMm, 0), places);
}

/** Box-shaped cup: a flat face with four sides of one draft below it. */
export function cup(
  lengthMm: number,
  widthMm: number,
  depthMm: number,
  draftDeg: number,
  cells: number,
  faceWallMm: number,
  sideWallMm: number,
): HandFace {
  const draft = (draftDeg * Math.PI) / 180;
  const places: HandPlace[] = [];
  for (let i = 0; i < cells; i++) {
    for (let j = 0; j < cells; j++) {
      const u = (2 * i + 1) / cells - 1;
      const v = (2 * j + 1) / cells - 1;
      places.push({
        areaMm2: (lengthMm * widthMm) / cells ** 2,
        wallMm: faceWallMm,
        normal: [0, 0, 1],
        at: [(u * lengthMm) / 2, (v * widthMm) / 2, depthMm],
      });
      for (const side of [1, -1]) {
        const height = (depthMm * (v + 1)) / 2;
        places.push(
          {
            areaMm2: (widthMm * depthMm) / Math.cos(draft) / cells ** 2,
            wallMm: sideWallMm,
            normal: [side * Math.cos(draft), 0, Math.sin(draft)],
            at: [(side * lengthMm) / 2, (u * widthMm) / 2, height],
          },
          {
            areaMm2: (lengthMm * depthMm) / Math.cos(draft) / cells ** 2,
            wallMm: sideWallMm,
            normal: [0, side * Math.cos(draft), Math.sin(draft)],
            at: [(u * lengthMm) / 2, (side * widthMm) / 2, height],
          },
        );
      }
    }
  }
  return handFace(handFrame(lengthMm, widthMm, depthMm), places);
}

/** Classes by thickness alone, as the 23 balances of the independent solver were told. */
export function classLimits(
  curve: Pick<BedCurve, 'limitGapMm'>,
  curedMm: number,
  laidMm: number,
  toleranceMm: number,
): ClassLimits {
  return {
    chokedUnderMm: curve.limitGapMm,
    packedUpToMm: curedMm,
    lightUpToMm: laidMm + toleranceMm,
  };
}
