/**
 * Files that somebody else made to be broken: what each must do is stated beside it in
 * `nasty/expected.json` and written here as exact figures or as the refusal and what its message must say.
 */
import { describe, expect, it } from 'vitest';
import { findHealth } from '../../src/core/mesh/health';
import { integrate } from '../../src/core/mesh/integrals';
import { partMesh } from '../../src/core/mesh/partMesh';
import { readMeshFile } from '../../src/core/mesh/read/readMeshFile';
import type { Vec3 } from '../../src/core/mesh/types';
import type { LengthUnit } from '../../src/core/units/length';
import { guessUnit } from '../../src/core/mesh/unitGuess';
import { weld } from '../../src/core/mesh/weld';
import { Problem } from '../../src/core/problem';
import { brokenFiles, brokenTitle } from '../support/brokenFiles';
import { hasSharedMeshes } from '../support/sharedMeshes';

interface Refusal {
  readonly refused: string;
  readonly says: RegExp;
}

interface Import {
  /** Triangles as read. */
  readonly triangles: number;
  readonly watertight: boolean;
  /** Bodies by facet count, largest first; 'open' for a body without volume, mm3 otherwise. */
  readonly bodies: readonly (number | 'open')[];
  readonly boxMm?: Vec3;
  readonly areaMm2?: number;
  readonly openEdges?: number;
  readonly crowdedEdges?: number;
  readonly flipped?: number;
  readonly degenerate?: number;
  readonly duplicates?: number;
  readonly unit?: LengthUnit;
  readonly sure?: boolean;
  /** What the notes must say; no notes at all when left out. */
  readonly notes?: RegExp;
  /** Relative tolerance on lengths, areas and volumes; single-precision rounding when left out. */
  readonly within?: number;
}

const box: Vec3 = [60, 40, 20];
const tray: Import = {
  triangles: 28,
  watertight: true,
  bodies: [11712],
  boxMm: box,
  areaMm2: 12112,
  unit: 'mm',
  sure: true,
};
/** The tray with its first facet left out. */
const tornTray: Import = {
  ...tray,
  triangles: 27,
  watertight: false,
  bodies: ['open'],
  areaMm2: 10912,
  openEdges: 3,
};
const asWhole = (notes: RegExp): Import => ({ ...tray, notes });
const refused = (code: string, says: RegExp): Refusal => ({ refused: code, says });

const expectations: Readonly<Record<string, Import | Refusal>> = {
  'good_tray_binary.stl': tray,
  'good_tray_ascii.stl': tray,
  // Outside 60 x 40 at the floor, leaning out by tan 2 degrees over 20 mm; volume and area from the drawing.
  'good_tray_draft2.stl': {
    triangles: 28,
    watertight: true,
    bodies: [draftTrayVolumeMm3(2)],
    boxMm: [60 + 40 * Math.tan(Math.PI / 90), 40 + 40 * Math.tan(Math.PI / 90), 20],
  },
  'truncated_binary.stl': {
    triangles: 17,
    watertight: false,
    bodies: ['open', 'open'],
    notes: /holds 28 triangles but ends after 17.*cut off/,
  },
  'truncated_in_header.stl': refused('stl.tooShort', /61 bytes.*export or copy it again/),
  'header_only_80.stl': refused('stl.tooShort', /80 bytes.*export or copy it again/),
  'count_too_high.stl': asWhole(/holds 1000 triangles but ends after 28/),
  'count_too_low.stl': asWhole(/holds 12 triangles but has room for exactly 28: all 28 were read/),
  'count_zero_with_data.stl': asWhole(/holds 0 triangles but has room for exactly 28/),
  'count_4294967295.stl': asWhole(/holds 4294967295 triangles but ends after 28/),
  'trailing_junk.stl': asWhole(/64 bytes after the last triangle were passed over/),
  'attribute_bytes_set.stl': tray,
  'binary_header_solid.stl': tray,
  'binary_header_solid_facet.stl': tray,
  'zero_triangles_binary.stl': refused('mesh.noTriangles', /nothing to import/),
  'one_triangle.stl': { triangles: 1, watertight: false, bodies: ['open'], areaMm2: 1200, openEdges: 3 },
  'binary_nan_vertex.stl': { ...tornTray, areaMm2: 11104, notes: /not a number and was left out/ },
  'binary_inf_vertex.stl': { ...tornTray, areaMm2: 11104, notes: /not a number and was left out/ },
  'huge_1e30.stl': refused('mesh.tooLarge', /no unit makes an enclosure.*export it again in millimeters/),
  'huge_near_float_max.stl': refused('mesh.tooLarge', /no unit makes an enclosure/),
  'micro_1e-6.stl': {
    triangles: 28,
    watertight: true,
    bodies: [11712 * (1e-3 / 60) ** 3],
    unit: 'm',
    sure: false,
  },
  'denormal_1e-40.stl': refused('mesh.tooSmall', /no unit makes an enclosure/),
  'metres_scale.stl': { ...tray, unit: 'm', sure: false },
  'inch_scale.stl': { ...tray, unit: 'in', sure: false },
  'far_offset_1e6.stl': asWhole(/1700000 file units from the origin.*moved near the origin/),
  'ascii_nan.stl': { ...tornTray, notes: /triangle at line 2 has a coordinate that is not a finite number/ },
  'ascii_inf.stl': { ...tornTray, notes: /triangle at line 2 has a coordinate that is not a finite number/ },
  'ascii_comma_decimals.stl': asWhole(/decimal commas; they were read as decimal points/),
  'ascii_crlf.stl': tray,
  'ascii_cr_only.stl': tray,
  'ascii_uppercase.stl': tray,
  'ascii_tabs_bom.stl': tray,
  'ascii_utf16.stl': tray,
  'ascii_multi_solid.stl': { triangles: 56, watertight: true, bodies: [11712, 11712] },
  'ascii_no_endsolid.stl': asWhole(/no closing "endsolid" line/),
  'ascii_no_name.stl': tray,
  'ascii_name_facet_vertex.stl': tray,
  'ascii_number_forms.stl': tray,
  'ascii_truncated.stl': {
    triangles: 13,
    watertight: false,
    bodies: ['open', 'open'],
    notes: /ends in the middle of a triangle: 13 whole triangles were read/,
  },
  'ascii_two_vertices.stl': { ...tornTray, notes: /line 2 does not have exactly three corners/ },
  'ascii_four_vertices.stl': { ...tornTray, notes: /line 2 does not have exactly three corners/ },
  'ascii_facet_no_normal.stl': tray,
  'ascii_zero_triangles.stl': refused('mesh.noTriangles', /nothing to import/),
  'ascii_one_enormous_line.stl': refused('mesh.noTriangles', /nothing to import/),
  'ascii_whole_file_one_line.stl': tray,
  'ascii_digits_bomb.stl': tray,
  'empty_0_byte.stl': refused('file.empty', /empty \(0 bytes\)/),
  'png_renamed.stl': refused('file.foreign', /a PNG picture/),
  'html_error_page.stl': refused('file.foreign', /a web page/),
  'lfs_pointer.stl': refused('file.foreign', /only a pointer.*download the file itself/),
  'random_bytes.stl': refused('file.unknown', /does not hold a mesh that can be read here/),
  'degenerate_triangles.stl': { ...tray, triangles: 31, degenerate: 3, notes: /3 triangles without area/ },
  'all_degenerate.stl': refused('mesh.allDegenerate', /no surface to measure/),
  'duplicate_faces.stl': {
    triangles: 38,
    watertight: false,
    bodies: ['open'],
    duplicates: 10,
    crowdedEdges: 20,
  },
  'opposed_duplicate_faces.stl': {
    triangles: 30,
    watertight: false,
    bodies: ['open'],
    duplicates: 2,
    crowdedEdges: 5,
  },
  'inconsistent_winding.stl': { ...tray, watertight: false, flipped: 10 },
  'inside_out.stl': { ...tray, flipped: 28 },
  'open_surface.stl': { triangles: 8, watertight: false, bodies: ['open'], areaMm2: 4000, openEdges: 8 },
  'open_one_triangle_missing.stl': { ...tornTray, areaMm2: 11512 },
  'two_disjoint_shells.stl': { triangles: 56, watertight: true, bodies: [11712, 11712] },
  'nested_cavity.stl': { triangles: 24, watertight: true, bodies: [27000, -17576], areaMm2: 9456 },
  'self_intersecting.stl': { triangles: 40, watertight: true, bodies: [11712, 4200] },
  'overlapping_coplanar.stl': { triangles: 40, watertight: false, bodies: [14112], crowdedEdges: 1 },
  'nonmanifold_edge.stl': { triangles: 24, watertight: false, bodies: [2000], crowdedEdges: 1, sure: false },
  'nonmanifold_vertex.stl': { triangles: 24, watertight: true, bodies: [1000, 1000], sure: false },
  't_junction.stl': { ...tray, triangles: 29, watertight: false, bodies: ['open'], openEdges: 3 },
  'unwelded_jitter_1e-5.stl': {
    ...asWhole(/slightly apart.*within 0\.000075 file units were joined, which closed 84 open edges/),
    within: 1e-5,
  },
  'unwelded_jitter_0.02.stl': {
    triangles: 28,
    watertight: false,
    bodies: Array.from({ length: 28 }, () => 'open' as const),
    openEdges: 84,
    notes: /too far to join without changing the part/,
  },
  'zero_thickness_wall.stl': {
    triangles: 32,
    watertight: false,
    bodies: [11712, 0],
    duplicates: 2,
    crowdedEdges: 1,
  },
  'needle_fan_open.stl': {
    triangles: 400,
    watertight: false,
    bodies: ['open'],
    boxMm: [100, 100, 0],
    areaMm2: 400 * 0.5 * 2500 * Math.sin(Math.PI / 200),
    within: 1e-4,
  },
  'stretched_1000_to_1.stl': {
    triangles: 28,
    watertight: true,
    bodies: [11712000],
    boxMm: [60000, 40, 20],
    sure: false,
  },
  'stored_normals_reversed.stl': tray,
  'good_tray.3mf': tray,
  'unit_inch.3mf': { ...tray, unit: 'in', within: 1e-5 },
  'unit_meter.3mf': { ...tray, unit: 'm' },
  'components_transform.3mf': { triangles: 56, watertight: true, bodies: [11712, 11712], flipped: 0 },
  'component_cycle.3mf': refused('3mf.cycle', /made of itself/),
  'index_out_of_range.3mf': asWhole(/names a vertex that is not in the file and was left out/),
  'empty_build.3mf': refused(
    '3mf.nothingBuilt',
    /1 object but places none.*Place the part on the build plate/,
  ),
  'no_model_part.3mf': refused('3mf.noDrawing', /no 3MF drawing/),
  'not_a_zip.3mf': refused('3mf.notAPackage', /holds a binary STL\. Rename it to \.stl/),
  'truncated.3mf': refused('3mf.damaged', /probably cut off/),
  'entity_bomb.3mf': refused('3mf.definitions', /text definitions/),
  'zip_bomb_200MB.3mf': refused('3mf.tooLarge', /unpacks to far more than a drawing holds/),
  'good_tray.obj': tray,
  'negative_indices.obj': tray,
  'slashes.obj': tray,
  'ngons_concave.obj': { triangles: 4, watertight: false, bodies: ['open'], areaMm2: 600, openEdges: 6 },
  'index_zero.obj': asWhole(/face at line 45 names a vertex that is not in the file/),
  'index_too_big.obj': asWhole(/face at line 45 names a vertex that is not in the file/),
  'no_faces.obj': refused('mesh.noTriangles', /16 vertices but no usable faces/),
  'line_continuation_crlf.obj': tray,
};

/** Volume of the 60 x 40 x 20 tray of 2 mm (level) walls whose sides lean out: outside less inside frustum. */
function draftTrayVolumeMm3(draftDeg: number): number {
  const lean = Math.tan((draftDeg * Math.PI) / 180);
  // Simpson's rule is exact for the product of two straight sides.
  const frustum = (fromZ: number, toZ: number, inset: number) => {
    const level = (z: number) => (60 + 2 * lean * z - 2 * inset) * (40 + 2 * lean * z - 2 * inset);
    return ((toZ - fromZ) / 6) * (level(fromZ) + 4 * level((fromZ + toZ) / 2) + level(toZ));
  };
  return frustum(0, 20, 0) - frustum(2, 20, 2);
}

const size = (min: Vec3, max: Vec3): Vec3 => [max[0] - min[0], max[1] - min[1], max[2] - min[2]];

function checkImport(name: string, bytes: Uint8Array, want: Import): void {
  const file = readMeshFile(bytes, name);
  const welded = weld(file);
  const health = findHealth(welded.mesh, welded.degenerateFacets);
  const inFile = integrate(welded.mesh);
  const guess = guessUnit(size(inFile.boxMin, inFile.boxMax), file.declaredUnit);
  const part = partMesh(welded.mesh, health, { body: 0, unit: guess.unit, scale: 1, winding: 'repair' });
  const sums = integrate(part);
  const near = (got: number, wanted: number) => {
    expect(Math.abs(got - wanted)).toBeLessThanOrEqual(
      (want.within ?? 2e-6) * Math.max(Math.abs(wanted), 1e-12),
    );
  };

  expect(file.corners.length / 9).toBe(want.triangles);
  expect(health.watertight).toBe(want.watertight);
  expect(health.bodies.map(({ closed }) => closed)).toEqual(want.bodies.map((volume) => volume !== 'open'));
  want.bodies.forEach((volume, body) => {
    if (volume === 'open') return;
    const alone = partMesh(welded.mesh, health, {
      body: body + 1,
      unit: guess.unit,
      scale: 1,
      winding: 'repair',
    });
    near(integrate(alone).volume, volume);
  });
  if (want.boxMm) size(sums.boxMin, sums.boxMax).forEach((side, axis) => near(side, want.boxMm![axis]!));
  if (want.areaMm2 !== undefined) near(sums.area, want.areaMm2);
  expect({
    openEdges: health.openEdges,
    crowdedEdges: health.crowdedEdges,
    flipped: health.flippedFacets,
    degenerate: health.degenerateFacets,
    duplicates: health.duplicateFacets,
  }).toEqual({
    openEdges: want.openEdges ?? (want.bodies.includes('open') ? health.openEdges : 0),
    crowdedEdges: want.crowdedEdges ?? 0,
    flipped: want.flipped ?? 0,
    degenerate: want.degenerate ?? 0,
    duplicates: want.duplicates ?? 0,
  });
  expect(guess.unit).toBe(want.unit ?? 'mm');
  expect(guess.sure).toBe(want.sure ?? true);
  const notes = [...file.notes, ...welded.notes].join('\n');
  if (want.notes) expect(notes).toMatch(want.notes);
  else expect(notes).toBe('');
  const figures = [
    ...Object.values(inFile.secondMoments),
    ...inFile.boxMin,
    ...inFile.boxMax,
    inFile.volume,
    inFile.area,
    ...(inFile.centroid ?? []),
    ...(inFile.surfaceCentroid ?? []),
    ...health.bodies.flatMap(({ volume, boxMin, boxMax }) => [volume ?? 0, ...boxMin, ...boxMax]),
  ];
  expect(figures.filter((figure) => !Number.isFinite(figure))).toEqual([]);
}

function checkRefusal(name: string, bytes: Uint8Array, want: Refusal): void {
  let thrown: unknown = null;
  try {
    weld(readMeshFile(bytes, name));
  } catch (error) {
    thrown = error;
  }
  expect(thrown).toBeInstanceOf(Problem);
  const { code, message } = thrown as Problem;
  expect(code).toBe(want.refused);
  expect(message).toMatch(want.says);
  expect(message).toMatch(/\.$/);
}

describe(brokenTitle, () => {
  it('has an expectation for every file that is there', () => {
    const known = Object.keys(expectations);
    expect(brokenFiles.filter(({ name }) => !known.includes(name))).toEqual([]);
    if (hasSharedMeshes('nasty'))
      expect(known.toSorted()).toEqual(brokenFiles.map(({ name }) => name).toSorted());
    else expect(brokenFiles.length).toBeGreaterThan(20);
  });

  for (const { name, expected, bytes } of brokenFiles) {
    it(`${name}: ${expected}`, () => {
      const want = expectations[name];
      expect(want).toBeDefined();
      if (want === undefined) return;
      if ('refused' in want) checkRefusal(name, bytes(), want);
      else checkImport(name, bytes(), want);
    });
  }
});
