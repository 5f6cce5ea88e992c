import { describe, expect, it } from 'vitest';
import { integrate } from '../../../../src/core/mesh/integrals';
import { readMeshFile } from '../../../../src/core/mesh/read/readMeshFile';
import { weld } from '../../../../src/core/mesh/weld';
import { bytesOf } from '../../../support/meshText';

const sumsOf = (text: string) => integrate(weld(readMeshFile(bytesOf(text), 'part.obj')).mesh);

const box = `# a box of quads
mtllib none.mtl
o box
v 0 0 0 1.0
v 2 0 0 0.5 0.5 0.5
v 2 3 0
v 0 3 0
v 0 0 4
v 2 0 4
v 2 3 4
v 0 3 4
vn 0 0 1
s off
f 4//1 3//1 2//1 1//1
f 5 6 7 8   # top
f 1 2 6 5
f 2 3 7 6
f 3 4 8 7
f 4 1 5 8
`;

describe('OBJ', () => {
  it('reads quads, weights, colors, comments and normals-only corners', () => {
    expect(sumsOf(box)).toMatchObject({ volume: 24, area: 52 });
  });

  it('takes faces that stand before their vertices', () => {
    const lines = box.split('\n');
    const faces = lines.filter((line) => line.startsWith('f'));
    const rest = lines.filter((line) => !line.startsWith('f'));
    expect(sumsOf([...faces, ...rest].join('\n')).volume).toBe(24);
  });

  it('cuts a concave polygon that stands in space along its own outline', () => {
    // A plus sign of five unit squares, leaning against the axes: area 5 whatever the corner it starts from.
    const outline = [
      [1, 0],
      [2, 0],
      [2, 1],
      [3, 1],
      [3, 2],
      [2, 2],
      [2, 3],
      [1, 3],
      [1, 2],
      [0, 2],
      [0, 1],
      [1, 1],
    ] as const;
    for (let first = 0; first < outline.length; first++) {
      const turned = [...outline.slice(first), ...outline.slice(0, first)];
      const vertices = turned.map(([u, v]) => `v ${0.6 * u} ${v} ${0.8 * u}`).join('\n');
      const face = `f ${turned.map((_, i) => i + 1).join(' ')}`;
      const { area, surfaceCentroid } = sumsOf(`${vertices}\n${face}\n`);
      expect(area).toBeCloseTo(5, 12);
      [0.9, 1.5, 1.2].forEach((wanted, axis) => expect(surfaceCentroid![axis]).toBeCloseTo(wanted, 12));
    }
  });

  it('keeps the side that a concave polygon faces', () => {
    const outline = 'v 0 0 0\nv 4 0 0\nv 4 1 0\nv 1 1 0\nv 1 3 0\nv 0 3 0\n';
    for (const [face, up] of [
      ['f 1 2 3 4 5 6', 1],
      ['f 6 5 4 3 2 1', -1],
      ['f 4 5 6 1 2 3', 1],
    ] as const) {
      const { corners } = readMeshFile(bytesOf(`${outline}${face}\n`), 'part.obj');
      for (let at = 0; at < corners.length; at += 9) {
        const [ax, ay, , bx, by, , cx, cy] = Array.from(corners.subarray(at, at + 9));
        const normalZ = (bx! - ax!) * (cy! - ay!) - (by! - ay!) * (cx! - ax!);
        expect(Math.sign(normalZ)).toBe(up);
      }
    }
  });

  it('leaves out faces that name missing vertices and says where', () => {
    const { notes, corners } = readMeshFile(bytesOf(`${box}f 1 2\nf 1 2 x\nf 1 2 -99\nf 1 2 9\n`), 'a.obj');
    expect(corners.length / 9).toBe(12);
    expect(notes).toEqual([
      '4 faces name vertices that are not in the file and were left out, the first at line 20.',
    ]);
  });
});
