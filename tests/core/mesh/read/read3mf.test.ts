import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { findHealth } from '../../../../src/core/mesh/health';
import { integrate } from '../../../../src/core/mesh/integrals';
import { readMeshFile } from '../../../../src/core/mesh/read/readMeshFile';
import { weld } from '../../../../src/core/mesh/weld';
import type { IndexedMesh } from '../../../../src/core/mesh/types';
import { box } from '../../../support/meshes';

const rows = <T>(list: ArrayLike<number>, row: (a: number, b: number, c: number) => T) =>
  Array.from({ length: list.length / 3 }, (_, i) => row(list[3 * i]!, list[3 * i + 1]!, list[3 * i + 2]!));

function meshXml({ positions, facets }: IndexedMesh): string {
  const vertices = rows(positions, (x, y, z) => `<vertex x="${x}" y='${y}' z = "${z}" />`);
  const triangles = rows(facets, (a, b, c) => `<triangle v1="${a}" v2="${b}" v3="${c}" pid="7" p1="0"/>`);
  return `<mesh><vertices>${vertices.join('\n')}</vertices><triangles>${triangles.join('')}</triangles></mesh>`;
}

const model = (resources: string, build: string, unit: string | null = 'millimeter') =>
  `<?xml version="1.0" encoding="UTF-8"?><!-- by hand > --><model ${unit === null ? '' : `unit="${unit}"`} ` +
  `xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02" xmlns:p="production">` +
  `<metadata name="Title">a &lt; b</metadata><resources>${resources}</resources><build>${build}</build></model>`;

function packageOf(parts: Readonly<Record<string, string>>): Uint8Array {
  return zipSync(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])));
}

const read = (parts: Readonly<Record<string, string>>) => readMeshFile(packageOf(parts), 'part.3mf');
const single = (resources: string, build: string, unit?: string | null) =>
  read({ '3D/3dmodel.model': model(resources, build, unit) });
const codeOf = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    return (error as { code: string }).code;
  }
  return 'nothing thrown';
};

const unitBox = `<object id="1">${meshXml(box([0, 0, 0], [1, 2, 3]))}</object>`;

describe('3MF', () => {
  it.each([
    [null, 'mm', 1],
    ['micron', 'mm', 0.001],
    ['millimeter', 'mm', 1],
    ['centimeter', 'cm', 1],
    ['inch', 'in', 1],
    ['foot', 'in', 12],
    ['meter', 'm', 1],
  ] as const)('unit %s is %s times %d', (unit, declared, factor) => {
    const file = single(unitBox, '<item objectid="1"/>', unit);
    expect(file.declaredUnit).toBe(declared);
    expect(integrate(weld(file).mesh).volume).toBeCloseTo(6 * factor ** 3, 12);
  });

  it('refuses a unit that the format does not know', () => {
    expect(codeOf(() => single(unitBox, '<item objectid="1"/>', 'cubit'))).toBe('3mf.unit');
  });

  it('does the component transform first and the item transform second', () => {
    const group =
      '<object id="2"><components><component objectid="1" transform="2 0 0 0 1 0 0 0 1 10 0 0"/></components></object>';
    const file = single(unitBox + group, '<item objectid="2" transform="0 1 0 -1 0 0 0 0 1 0 0 5"/>');
    const { boxMin, boxMax } = integrate(weld(file).mesh);
    const toFile = (corner: readonly number[]) => corner.map((c, axis) => c + file.origin[axis]!);
    // (x, y, z) -> (2 x + 10, y, z) -> (-y, 2 x + 10, z + 5)
    expect(toFile(boxMin)).toEqual([-2, 10, 5]);
    expect(toFile(boxMax)).toEqual([0, 12, 8]);
  });

  it('follows sub-models of the production extension, each with its own object numbers', () => {
    const file = read({
      '_rels/.rels':
        '<Relationships><Relationship Type="x/thumbnail" Target="/a.png"/><Relationship Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel" Target="/3D/main.model"/></Relationships>',
      '3D/aside.model': model(unitBox, ''),
      '3D/main.model': model(
        '<object id="1"><components><component p:path="/3D/Objects/lid.model" objectid="1"/></components></object>',
        '<item objectid="1" transform="-1 0 0 0 1 0 0 0 1 -5 0 0"/><item p:path="/3d/objects/LID.model" objectid="1"/>',
      ),
      '3D/Objects/lid.model': model(unitBox, ''),
    });
    const { mesh } = weld(file);
    const health = findHealth(mesh);
    expect(health).toMatchObject({ watertight: true, flippedFacets: 0 });
    expect(integrate(mesh).volume).toBeCloseTo(12, 12);
  });

  it('passes over supports and says so', () => {
    const support = `<object id="9" type="support">${meshXml(box([0, 0, 0], [9, 9, 9]))}</object>`;
    const file = single(unitBox + support, '<item objectid="1"/><item objectid="9"/>');
    expect(file.corners.length / 9).toBe(12);
    expect(file.notes).toEqual(['Support objects in the package were passed over.']);
  });

  it('refuses objects that are made of objects without end or measure', () => {
    const doubling = Array.from(
      { length: 40 },
      (_, i) =>
        `<object id="${i + 2}"><components><component objectid="${i + 1}"/><component objectid="${i + 1}"/></components></object>`,
    ).join('');
    const empty = '<object id="1"><mesh><vertices/><triangles/></mesh></object>';
    expect(codeOf(() => single(empty + doubling, '<item objectid="41"/>'))).toBe('3mf.tooManyUses');
    expect(codeOf(() => single(unitBox, '<item objectid="5"/>'))).toBe('3mf.missingObject');
    expect(codeOf(() => single(unitBox, '<item objectid="1" transform="1 0 0 x"/>'))).toBe(
      '3mf.badTransform',
    );
    expect(codeOf(() => single(unitBox, '<item p:path="/none.model" objectid="1"/>'))).toBe(
      '3mf.missingPart',
    );
  });

  it.each([
    '<model><resources>',
    '<model></wrong></model>',
    '<model unit=mm></model>',
    '<model unit></model>',
    '<model unit="mm',
    '<model><!-- no end </model>',
    '<html></html>',
    '',
    'just words',
  ])('refuses a drawing that is no proper XML: %s', (text) => {
    expect(codeOf(() => read({ '3D/3dmodel.model': text }))).toBe('3mf.badXml');
  });

  it('refuses a package that is cut off or spoilt anywhere, or reads it whole', () => {
    const whole = packageOf({ '3D/3dmodel.model': model(unitBox, '<item objectid="1"/>') });
    for (let at = 4; at < whole.length; at += 3) {
      expect(codeOf(() => readMeshFile(whole.subarray(0, at), 'part.3mf'))).toBe('3mf.damaged');
      const spoilt = whole.slice();
      spoilt[at]! ^= 0xff;
      const outcome = codeOf(() => readMeshFile(spoilt, 'part.3mf'));
      expect(outcome === 'nothing thrown' || outcome.includes('.')).toBe(true);
    }
  });

  it('does not believe a package that declares small sizes', () => {
    const bomb = zipSync({ '3D/3dmodel.model': [new Uint8Array(24 << 20).fill(0x20), { level: 6 }] });
    // The declared unpacked size stands in the directory, 24 bytes into its entry.
    const view = new DataView(bomb.buffer, bomb.byteOffset, bomb.byteLength);
    const directory = view.getUint32(bomb.length - 6, true);
    view.setUint32(directory + 24, 100, true);
    expect(codeOf(() => readMeshFile(bomb, 'part.3mf'))).toBe('3mf.tooLarge');
  });
});
