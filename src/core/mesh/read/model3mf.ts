import { Problem } from '../../problem';
import { GrowingNumbers, refuseTooMany } from './growingNumbers';
import { type Transform3mf, noTransform, parseTransform } from './transform3mf';
import { XmlScanner } from './xmlScanner';

/** A use of an object: a build item or a component. */
export interface ObjectUse {
  readonly objectId: string;
  /** Part of the package that holds the object; null for the same part (production extension, `p:path`). */
  readonly path: string | null;
  readonly transform: Transform3mf;
}

export interface Object3mf {
  readonly type: string;
  /** 3 numbers per vertex, in the unit of the model part. */
  readonly vertices: Float64Array;
  /** 3 vertex numbers per triangle, all in range. */
  readonly triangles: Float64Array;
  readonly components: readonly ObjectUse[];
}

/** One `.model` part. */
export interface Model3mf {
  /** As written; "millimeter" when the part does not say (3MF core specification 1.3, section 3.4). */
  readonly unit: string;
  readonly objects: ReadonlyMap<string, Object3mf>;
  readonly items: readonly ObjectUse[];
  /** Triangles that name a vertex which is not there. */
  readonly leftOut: number;
}

const bytesPerReport = 4 << 20;

/** Reads one model part. Elements of extensions that say nothing about the shape are passed over. */
export function readModel3mf(xml: Uint8Array, onProgress?: (share: number) => void): Model3mf {
  const scanner = new XmlScanner(xml);
  const objects = new Map<string, Object3mf>();
  const items: ObjectUse[] = [];
  let unit: string | null = null;
  let leftOut = 0;
  let reported = 0;
  const report = () => {
    if (scanner.offset - reported < bytesPerReport) return;
    reported = scanner.offset;
    onProgress?.(scanner.offset / xml.length);
  };

  while (scanner.next()) {
    if (scanner.isEnd) continue;
    if (unit === null) {
      if (scanner.name !== 'model') {
        throw new Problem(
          '3mf.badXml',
          'The drawing inside the 3MF package is of another kind. Export it again.',
        );
      }
      unit = scanner.string('unit') ?? 'millimeter';
    } else if (scanner.name === 'object') {
      const id = scanner.string('id') ?? '';
      const read = readObject(scanner, report);
      leftOut += read.leftOut;
      objects.set(id, read.object);
    } else if (scanner.name === 'item') {
      items.push(readUse(scanner));
    }
  }
  if (unit === null) {
    throw new Problem('3mf.badXml', 'The drawing inside the 3MF package is empty. Export it again.');
  }
  return { unit, objects, items, leftOut };
}

function readUse(scanner: XmlScanner): ObjectUse {
  const written = scanner.string('transform');
  const transform = written === null ? noTransform : parseTransform(written);
  if (transform === null) {
    throw new Problem(
      '3mf.badTransform',
      'An object in the 3MF package is placed by a transform that is not twelve numbers. Export it again.',
    );
  }
  return { objectId: scanner.string('objectid') ?? '', path: scanner.string('path'), transform };
}

function readObject(scanner: XmlScanner, report: () => void): { object: Object3mf; leftOut: number } {
  const type = scanner.string('type') ?? 'model';
  const vertices = new GrowingNumbers();
  const triangles = new GrowingNumbers();
  const components: ObjectUse[] = [];
  const depth = scanner.depth;
  let ended = scanner.isSelfClosed;
  while (!ended && scanner.next()) {
    if (scanner.isEnd) {
      ended = scanner.depth < depth;
    } else if (scanner.name === 'vertex') {
      vertices.push3(scanner.number('x'), scanner.number('y'), scanner.number('z'));
    } else if (scanner.name === 'triangle') {
      triangles.push3(scanner.number('v1'), scanner.number('v2'), scanner.number('v3'));
      if (triangles.length % 30_000 === 0) {
        refuseTooMany(3 * triangles.length);
        report();
      }
    } else if (scanner.name === 'component') {
      components.push(readUse(scanner));
    }
  }
  const inRange = keepInRange(triangles, vertices.length / 3);
  return {
    object: { type, vertices: vertices.all(), triangles: inRange, components },
    leftOut: (triangles.length - inRange.length) / 3,
  };
}

function keepInRange(triangles: GrowingNumbers, vertexCount: number): Float64Array {
  const all = triangles.all();
  let kept = 0;
  const good = (number: number) => number >= 0 && number < vertexCount && Number.isInteger(number);
  for (let at = 0; at < all.length; at += 3) {
    const [a, b, c] = [all[at]!, all[at + 1]!, all[at + 2]!];
    if (!(good(a) && good(b) && good(c))) continue;
    all[kept] = a;
    all[kept + 1] = b;
    all[kept + 2] = c;
    kept += 3;
  }
  return all.subarray(0, kept);
}
