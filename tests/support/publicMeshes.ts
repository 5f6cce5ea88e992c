/**
 * Meshes with figures that our code did not work out: real enclosures of the shared collection with the figures of its
 * manifest (definitions in its `MANIFEST.md`), or, where that collection is not beside the project, trays of our own with the
 * figures that follow from their drawing. Either way the same questions are asked.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bytesOf, objText } from './meshText';
import { tray } from './meshes';
import { hasSharedMeshes, sharedJson, sharedMesh, sharedPath } from './sharedMeshes';

type Walls = Readonly<
  Record<'p5' | 'p25' | 'median' | 'p75' | 'p95' | 'min' | 'max' | 'hit_fraction', number>
>;

/** Figures are in the units of the file. */
export interface PublicMesh {
  readonly mm_per_unit: number;
  readonly triangles: number;
  readonly signed_volume: number;
  readonly volume: number | null;
  readonly area: number;
  readonly bbox_min: readonly number[];
  readonly bbox_max: readonly number[];
  readonly bbox_diagonal: number;
  readonly topology_exact_weld: {
    readonly vertices: number;
    readonly edges: number;
    readonly degenerate_triangles: number;
    readonly duplicate_faces: number;
    readonly boundary_edges: number;
    readonly edges_over_2_faces: number;
    readonly misoriented_edges: number;
    readonly manifold_watertight: boolean;
    readonly components: number;
  };
  /** To the first surface of any facing. */
  readonly thickness_centroid_area_weighted: Walls;
  /** To the first surface that faces back. */
  readonly thickness_centroid_area_weighted_exit_hits_only: Walls;
  readonly draft_plus_z: {
    readonly under_1deg: number;
    readonly under_3deg: number;
    readonly facing_away: number;
  };
  readonly straight_pull_z: {
    readonly centroid_area_weighted: {
      readonly reachable_from_plus_z: number;
      readonly reachable_from_minus_z: number;
      readonly reachable_from_neither: number;
    };
  };
  readonly opening_faces: string;
}

interface OwnTray {
  readonly size: readonly [number, number, number];
  readonly wall: number;
  readonly draftDeg: number;
  readonly mmPerUnit: number;
}

/** One in millimeters, one in inches; both of them lean out, so that every side is reached from one side only. */
const ownTrays: Readonly<Record<string, OwnTray>> = {
  'own_tray.obj': { size: [80, 50, 15], wall: 2, draftDeg: 2, mmPerUnit: 1 },
  'own_tray_inches.obj': { size: [4, 3, 0.75], wall: 0.0625, draftDeg: 1.5, mmPerUnit: 25.4 },
};

/** By the drawing alone: frustums, trapezoids, and what a ray square to each face meets. */
function figuresOf({ size, wall, draftDeg, mmPerUnit }: OwnTray): PublicMesh {
  const [length, width, height] = size;
  const draft = (draftDeg * Math.PI) / 180;
  const out = (z: number, inset: number) =>
    [length, width].map((side) => side + 2 * (z * Math.tan(draft) - inset)) as [number, number];
  const level = (z: number, inset: number) => out(z, inset)[0] * out(z, inset)[1];
  // Simpson's rule is exact for the product of two straight sides.
  const frustum = (from: number, inset: number) =>
    ((height - from) / 6) *
    (level(from, inset) + 4 * level((from + height) / 2, inset) + level(height, inset));
  const sides = (from: number, inset: number) =>
    (out(from, inset)[0] + out(from, inset)[1] + out(height, inset)[0] + out(height, inset)[1]) *
    ((height - from) / Math.cos(draft));
  const area = {
    bottom: level(0, 0),
    floor: level(wall, wall),
    rim: level(height, 0) - level(height, wall),
    outside: sides(0, 0),
    inside: sides(wall, wall),
  };
  const whole = Object.values(area).reduce((sum, one) => sum + one, 0);
  const volume = frustum(0, 0) - frustum(wall, wall);
  const [halfLength, halfWidth] = out(height, 0).map((side) => side / 2) as [number, number];
  const facingUp = (area.floor + area.rim + area.inside) / whole;
  const walls = wallsOf(
    [
      [wall * Math.cos(draft), area.outside + area.inside],
      [wall, area.bottom + area.floor],
      [height, area.rim],
    ],
    whole,
  );
  return {
    mm_per_unit: mmPerUnit,
    triangles: 28,
    signed_volume: volume,
    volume,
    area: whole,
    bbox_min: [-halfLength, -halfWidth, 0],
    bbox_max: [halfLength, halfWidth, height],
    bbox_diagonal: Math.hypot(2 * halfLength, 2 * halfWidth, height),
    topology_exact_weld: {
      vertices: 16,
      edges: 42,
      degenerate_triangles: 0,
      duplicate_faces: 0,
      boundary_edges: 0,
      edges_over_2_faces: 0,
      misoriented_edges: 0,
      manifold_watertight: true,
      components: 1,
    },
    // A sound tray: the first surface that any ray meets faces back.
    thickness_centroid_area_weighted: walls,
    thickness_centroid_area_weighted_exit_hits_only: walls,
    draft_plus_z: {
      under_1deg: 0,
      under_3deg: draftDeg < 3 ? area.inside / whole : 0,
      facing_away: (area.bottom + area.outside) / whole,
    },
    straight_pull_z: {
      centroid_area_weighted: {
        reachable_from_plus_z: facingUp,
        reachable_from_minus_z: 1 - facingUp,
        reachable_from_neither: 0,
      },
    },
    opening_faces: '+z',
  };
}

/** Each share is the smallest wall whose cumulative area reaches it; the walls are in order. */
function wallsOf(rising: readonly (readonly [wall: number, area: number])[], whole: number): Walls {
  const at = (share: number) => {
    let running = 0;
    const found = rising.find(([, area]) => (running += area) >= share * whole * (1 - 1e-12));
    return (found ?? rising.at(-1)!)[0];
  };
  return {
    p5: at(0.05),
    p25: at(0.25),
    median: at(0.5),
    p75: at(0.75),
    p95: at(0.95),
    min: at(0),
    max: at(1),
    hit_fraction: 1,
  };
}

const isShared = hasSharedMeshes('public');

/** Never empty. */
export const publicMeshes: readonly (readonly [name: string, figures: PublicMesh])[] = isShared
  ? Object.entries((sharedJson('public/manifest.json') as { meshes: Record<string, PublicMesh> }).meshes)
  : Object.entries(ownTrays).map(([name, drawn]) => [name, figuresOf(drawn)]);

export function publicMesh(name: string): Uint8Array {
  const drawn = ownTrays[name];
  return drawn === undefined
    ? sharedMesh(name)
    : bytesOf(objText(tray(drawn.size, drawn.wall, drawn.draftDeg)));
}

/** The files on disk; `remove` takes away what was written for it. */
export function publicMeshFiles(): {
  readonly pathOf: (name: string) => string;
  readonly remove: () => void;
} {
  if (isShared) return { pathOf: sharedPath, remove: () => {} };
  const folder = mkdtempSync(join(tmpdir(), 'own-meshes-'));
  for (const [name] of publicMeshes) writeFileSync(join(folder, name), publicMesh(name));
  return { pathOf: (name) => join(folder, name), remove: () => rmSync(folder, { recursive: true }) };
}

/** Title of a suite, with whose meshes it runs on. */
export const publicTitle = (what: string) =>
  isShared
    ? `${what}: ${publicMeshes.length} public meshes`
    : `${what}: ${publicMeshes.length} meshes of our own (the shared ones are not beside the project)`;
