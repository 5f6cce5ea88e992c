import { Problem } from '../../problem';
import type { LengthUnit } from '../../units/length';
import type { RawTriangles } from './finishFileMesh';
import { GrowingNumbers, refuseTooMany } from './growingNumbers';
import { type Model3mf, type ObjectUse, readModel3mf } from './model3mf';
import { type Transform3mf, chain, determinant, noTransform } from './transform3mf';
import { XmlScanner } from './xmlScanner';
import { ZipPackage } from './zipPackage';
import { utf8Of } from './utf8Of';

/** The units that 3MF knows, as one of ours and a factor (3MF core specification 1.3, section 3.4). */
const units: ReadonlyMap<string, { readonly unit: LengthUnit; readonly factor: number }> = new Map([
  ['micron', { unit: 'mm', factor: 0.001 }],
  ['millimeter', { unit: 'mm', factor: 1 }],
  ['centimeter', { unit: 'cm', factor: 1 }],
  ['inch', { unit: 'in', factor: 1 }],
  ['foot', { unit: 'in', factor: 12 }],
  ['meter', { unit: 'm', factor: 1 }],
] as const);

/** Uses of objects followed before the package is taken for a trap of objects made of objects. */
const mostUses = 20_000;
/** Objects within objects; drawings go three or four deep. */
const deepestNesting = 64;

/**
 * Reads what a 3MF package builds: every build item, through its components and sub-models (production extension),
 * placed by its transforms; mirrored pieces are wound the right way around again. Objects that are not built are left
 * out. The unit is the one that the main drawing declares.
 */
export function read3mf(bytes: Uint8Array, onProgress?: (share: number) => void): RawTriangles {
  const assembly = new Assembly(new ZipPackage(bytes), onProgress);
  return assembly.build();
}

class Assembly {
  private readonly models = new Map<string, Model3mf>();
  private readonly corners = new GrowingNumbers();
  private readonly notes: string[] = [];
  private uses = 0;
  private supports = 0;
  private flattened = 0;

  constructor(
    private readonly parts: ZipPackage,
    private readonly onProgress?: (share: number) => void,
  ) {}

  build(): RawTriangles {
    const mainPath = this.mainPath();
    const main = this.model(mainPath);
    const unit = this.unitOf(main);
    if (main.items.length === 0) {
      throw new Problem(
        '3mf.nothingBuilt',
        `The 3MF package lists ${main.objects.size} ${main.objects.size === 1 ? 'object' : 'objects'} but places none for building, so there is nothing to import. Place the part on the build plate and export it again.`,
      );
    }
    for (const item of main.items) this.place(item, mainPath, noTransform, []);

    const leftOut = [...this.models.values()].reduce((sum, model) => sum + model.leftOut, 0);
    if (leftOut > 0) {
      this.notes.push(
        leftOut === 1
          ? 'One triangle names a vertex that is not in the file and was left out.'
          : `${leftOut} triangles name vertices that are not in the file and were left out.`,
      );
    }
    if (this.supports > 0) this.notes.push('Support objects in the package were passed over.');
    if (this.flattened > 0) {
      this.notes.push(
        'An object in the package is placed by a transform that flattens it; look at it on the view.',
      );
    }
    const corners = this.corners.all();
    if (unit.factor !== 1) for (let at = 0; at < corners.length; at++) corners[at]! *= unit.factor;
    return { format: '3mf', declaredUnit: unit.unit, corners, notes: this.notes };
  }

  /** The drawing that the package names as its start; else its only one. */
  private mainPath(): string {
    const relations = this.parts.read('_rels/.rels');
    if (relations !== null) {
      const scanner = new XmlScanner(utf8Of(relations));
      while (scanner.next()) {
        const type = scanner.name === 'Relationship' ? scanner.string('Type') : null;
        const target = scanner.string('Target');
        if (type !== null && target !== null && type.endsWith('/3dmodel')) {
          const path = target.replace(/^\//, '');
          if (this.parts.read(path) !== null) return path;
        }
      }
    }
    const drawing = this.parts.names().find((name) => name.toLowerCase().endsWith('.model'));
    if (drawing === undefined) {
      throw new Problem(
        '3mf.noDrawing',
        'The zip package holds no 3MF drawing (a part that ends in .model). Choose the 3MF file of the part, or export it again.',
      );
    }
    return drawing;
  }

  private model(path: string): Model3mf {
    const known = this.models.get(path);
    if (known !== undefined) return known;
    const xml = this.parts.read(path);
    if (xml === null) {
      throw new Problem(
        '3mf.missingPart',
        `The 3MF package refers to a drawing "${path}" that is not in it. Export it again.`,
      );
    }
    const model = readModel3mf(utf8Of(xml), this.onProgress);
    this.models.set(path, model);
    return model;
  }

  private unitOf(model: Model3mf): { unit: LengthUnit; factor: number } {
    const unit = units.get(model.unit.toLowerCase());
    if (unit !== undefined) return unit;
    throw new Problem(
      '3mf.unit',
      `The 3MF drawing is in "${model.unit}", a unit that the format does not know. Export it in millimeters.`,
    );
  }

  /** Adds the triangles of one use of an object; `around` lists the objects that it stands in. */
  private place(use: ObjectUse, fromPath: string, outer: Transform3mf, around: readonly string[]): void {
    const path = use.path?.replace(/^\//, '') ?? fromPath;
    const key = `${path}#${use.objectId}`;
    if (around.includes(key)) {
      throw new Problem(
        '3mf.cycle',
        `Object ${use.objectId} in the 3MF package is made of itself, so it has no shape. Export it again.`,
      );
    }
    if (++this.uses > mostUses || around.length > deepestNesting) {
      throw new Problem(
        '3mf.tooManyUses',
        `The 3MF package places more than ${mostUses} objects or nests them more than ${deepestNesting} deep, which is more than can be worked with here. Export the part alone.`,
      );
    }
    const object = this.model(path).objects.get(use.objectId);
    if (object === undefined) {
      throw new Problem(
        '3mf.missingObject',
        `The 3MF package places object ${use.objectId}, which it does not hold. Export it again.`,
      );
    }
    if (object.type === 'support' || object.type === 'solidsupport') {
      this.supports++;
      return;
    }
    const transform = chain(use.transform, outer);
    this.addTriangles(object.vertices, object.triangles, transform);
    for (const component of object.components) this.place(component, path, transform, [...around, key]);
  }

  private addTriangles(vertices: Float64Array, triangles: Float64Array, m: Transform3mf): void {
    if (triangles.length === 0) return;
    const mirror = determinant(m);
    if (mirror === 0) this.flattened++;
    const [m0, m1, m2, m3, m4, m5, m6, m7, m8, m9, m10, m11] = m as Required<
      readonly [
        number,
        number,
        number,
        number,
        number,
        number,
        number,
        number,
        number,
        number,
        number,
        number,
      ]
    >;
    const add = (vertex: number) => {
      const x = vertices[3 * vertex]!;
      const y = vertices[3 * vertex + 1]!;
      const z = vertices[3 * vertex + 2]!;
      this.corners.push3(
        x * m0 + y * m3 + z * m6 + m9,
        x * m1 + y * m4 + z * m7 + m10,
        x * m2 + y * m5 + z * m8 + m11,
      );
    };
    refuseTooMany(this.corners.length + 3 * triangles.length);
    for (let at = 0; at < triangles.length; at += 3) {
      add(triangles[at]!);
      add(triangles[at + (mirror < 0 ? 2 : 1)]!);
      add(triangles[at + (mirror < 0 ? 1 : 2)]!);
    }
  }
}
