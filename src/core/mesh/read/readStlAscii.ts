import { Problem } from '../../problem';
import { DecimalReader } from './decimalReader';
import type { RawTriangles } from './finishFileMesh';
import { GrowingNumbers, refuseTooMany } from './growingNumbers';
import { TextTokens, isLineEnd, lineAt } from './textTokens';

const facetsPerReport = 20_000;

/** Why facets were left out, with the place of the first. */
interface LeftOut {
  count: number;
  firstOffset: number;
}

type FacetEnd = 'kept' | 'wrongCorners' | 'notNumbers' | 'cutOff';

/**
 * Reads text STL facet by facet. A facet counts only when exactly three corners stand between `facet` and `endfacet`:
 * one with too few or too many is left out whole and never shifts those that follow. Normals are not used. Names of
 * solids may hold any words; all solids of the file are taken together.
 */
export function readStlAscii(bytes: Uint8Array, onProgress?: (share: number) => void): RawTriangles {
  const reader = new AsciiFacets(bytes);
  const wrongCorners: LeftOut = { count: 0, firstOffset: 0 };
  const notNumbers: LeftOut = { count: 0, firstOffset: 0 };
  const { tokens, corners } = reader;
  let cutOff = false;
  let ended = false;
  let facets = 0;

  let more = tokens.next();
  while (more) {
    if (tokens.is('facet')) {
      ended = false;
      const offset = tokens.start;
      const outcome = reader.readFacet();
      if (outcome === 'cutOff') cutOff = true;
      const leftOut =
        outcome === 'wrongCorners' ? wrongCorners : outcome === 'notNumbers' ? notNumbers : null;
      if (leftOut !== null && leftOut.count++ === 0) leftOut.firstOffset = offset;
      if (facets++ % facetsPerReport === 0) {
        refuseTooMany(corners.length);
        onProgress?.(offset / bytes.length);
      }
      more = reader.stoppedEarly || tokens.next();
      continue;
    }
    if (tokens.is('solid')) skipName(tokens);
    if (tokens.is('endsolid')) {
      ended = true;
      skipName(tokens);
    }
    more = tokens.next();
  }
  refuseTooMany(corners.length);

  const notes: string[] = [];
  const tell = ({ count, firstOffset }: LeftOut, one: string, many: string) => {
    if (count === 0) return;
    const line = lineAt(bytes, firstOffset);
    notes.push(
      count === 1
        ? `The triangle at line ${line} ${one} and was left out.`
        : `${count} triangles ${many} and were left out, the first at line ${line}.`,
    );
  };
  tell(wrongCorners, 'does not have exactly three corners', 'do not have exactly three corners');
  tell(
    notNumbers,
    'has a coordinate that is not a finite number',
    'have a coordinate that is not a finite number',
  );
  if (cutOff) {
    notes.push(
      `The file ends in the middle of a triangle: ${corners.length / 9} whole triangles were read and the rest is missing. Export or copy it again.`,
    );
  } else if (!ended && corners.length > 0) {
    notes.push(
      'The file has no closing "endsolid" line. If the part looks torn, it was cut off; copy it again.',
    );
  }
  if (reader.decimals.sawComma)
    notes.push('The file writes decimal commas; they were read as decimal points.');
  if (corners.length === 0 && notes.length > 0) {
    throw new Problem('mesh.noTriangles', `No triangle could be read. ${notes.join(' ')}`);
  }
  return { format: 'stl-ascii', declaredUnit: null, corners: corners.all(), notes };
}

class AsciiFacets {
  readonly tokens: TextTokens;
  readonly corners = new GrowingNumbers();
  readonly decimals = new DecimalReader();
  /** After `readFacet`: it met the start of what follows, so the current word has not been dealt with. */
  stoppedEarly = false;

  constructor(private readonly bytes: Uint8Array) {
    this.tokens = new TextTokens(bytes);
  }

  /** Reads from the word `facet` to `endfacet`; a facet that is not kept leaves no corners behind. */
  readFacet(): FacetEnd {
    const { tokens, corners } = this;
    const before = corners.length;
    let finite = true;
    this.stoppedEarly = false;
    let more = tokens.next();
    while (more) {
      if (tokens.is('vertex')) {
        const corner = this.readVertex();
        if (corner === 'notNumbers') finite = false;
        // After a short corner the current word still has to be looked at.
        more = corner === 'short' ? tokens.start < tokens.end : tokens.next();
        continue;
      }
      if (tokens.is('endfacet')) {
        if (corners.length - before !== 9) {
          corners.shorten(before);
          return 'wrongCorners';
        }
        if (finite) return 'kept';
        corners.shorten(before);
        return 'notNumbers';
      }
      if (tokens.is('facet') || tokens.is('endsolid')) {
        this.stoppedEarly = true;
        corners.shorten(before);
        return 'wrongCorners';
      }
      more = tokens.next();
    }
    corners.shorten(before);
    return 'cutOff';
  }

  private readVertex(): 'whole' | 'short' | 'notNumbers' {
    const { tokens, decimals, bytes } = this;
    let [x, y, z] = [0, 0, 0];
    for (let axis = 0; axis < 3; axis++) {
      if (!tokens.next()) return 'short';
      const number = decimals.read(bytes, tokens.start, tokens.end);
      if (Number.isNaN(number) && (tokens.is('vertex') || tokens.is('endloop') || tokens.is('endfacet'))) {
        return 'short';
      }
      if (axis === 0) x = number;
      else if (axis === 1) y = number;
      else z = number;
    }
    this.corners.push3(x, y, z);
    return Number.isFinite(x + y + z) ? 'whole' : 'notNumbers';
  }
}

/**
 * Moves over a solid's name: to the end of its line, or to the word before a facet that stands on the same line (some
 * files are one single line). A name may itself hold the words of the format, so a facet is believed only when it goes
 * on as one.
 */
function skipName(tokens: TextTokens): void {
  const { bytes } = tokens;
  let at = tokens.end;
  while (at < bytes.length && !isLineEnd(bytes[at]!)) {
    if (bytes[at]! <= 0x20) {
      at++;
      continue;
    }
    const word = new TextTokens(bytes, at);
    word.next();
    if (word.is('facet') && goesOnAsFacet(word)) break;
    at = word.end;
  }
  tokens.end = at;
}

/** `word` stands on "facet"; looks for "normal", three words and "outer". */
function goesOnAsFacet(word: TextTokens): boolean {
  const ahead = new TextTokens(word.bytes, word.end);
  if (!ahead.next() || !ahead.is('normal')) return false;
  for (let i = 0; i < 4; i++) if (!ahead.next()) return false;
  return ahead.is('outer');
}
