import { describe, expect, it } from 'vitest';
import {
  cividis,
  colorFacets,
  noValueColor,
  purpleOrange,
  rampColor,
  rgbOf,
  type ClassScale,
  type RampScale,
} from '../../src/viewer/colorScales';
import { draftClasses, kindLabels, mapTabs, mapView, releaseDraftDeg } from '../../src/viewer/mapColors';
import { facetKind, type FacetKind } from '../../src/core/mesh/types';
import type { MapArrays } from '../../src/pipeline/told';

const bytesOf = (word: number | undefined) => [...new Uint8Array(Uint32Array.of(word ?? 0).buffer)];

/** ColorBrewer "PuOr", 11 classes, as published (Harrower and Brewer 2003); listed there from orange to purple. */
const publishedPuOr = [
  '7f3b08',
  'b35806',
  'e08214',
  'fdb863',
  'fee0b6',
  'f7f7f7',
  'd8daeb',
  'b2abd2',
  '8073ac',
  '542788',
  '2d004b',
];

/** Rows of the published 256-row cividis table (Nunez, Anderton and Renslow 2018): row, red, green, blue, 0 to 1. */
const publishedCividis = [
  [0, 0, 0.135112, 0.304751],
  [17, 0, 0.18161, 0.421859],
  [51, 0.208926, 0.272546, 0.424809],
  [60, 0.247605, 0.296986, 0.422917],
  [102, 0.401418, 0.41179, 0.440708],
  [128, 0.488697, 0.485318, 0.471008],
  [150, 0.570607, 0.549695, 0.469593],
  [187, 0.716177, 0.664384, 0.432386],
  [204, 0.785965, 0.720438, 0.399613],
  [230, 0.896818, 0.81103, 0.320982],
  [255, 0.995737, 0.909344, 0.217772],
] as const;

describe('published color tables', () => {
  it('purple to orange has the published colors, purple low', () => {
    publishedPuOr.toReversed().forEach((hex, i) => {
      expect(rampColor(purpleOrange, i / 10)).toEqual(rgbOf(hex));
    });
  });

  it.each(publishedCividis)('cividis row %i is met', (row, ...published) => {
    const color = rampColor(cividis, row / 255);
    // Rows that are kept are exact up to rounding to bytes; those between lie on straight lines.
    const tolerance = row % 17 === 0 ? 0.5 : 10;
    published.forEach((share, i) => expect(Math.abs(color[i]! - 255 * share)).toBeLessThanOrEqual(tolerance));
  });

  it('cividis gets lighter all the way, so that it reads in gray', () => {
    const lightness = Array.from({ length: 101 }, (_, i) => {
      const [red, green, blue] = rampColor(cividis, i / 100);
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    });
    expect(lightness).toEqual([...lightness].sort((a, b) => a - b));
  });
});

describe('coloring facets', () => {
  const scale: RampScale = { kind: 'ramp', ramp: purpleOrange, low: 0.6, high: 1.2 };

  it('takes ends, middle, what lies outside, and what has no value', () => {
    const words = colorFacets(Float32Array.of(0.6, 0.9, 1.2, -5, 9, Number.NaN, Infinity), scale);
    const [purple, orange] = [rgbOf('2d004b'), rgbOf('7f3b08')];
    expect(bytesOf(words[0])).toEqual([...purple, 255]);
    for (const byte of bytesOf(words[1]).slice(0, 3)) expect(Math.abs(byte - 247)).toBeLessThanOrEqual(1);
    expect(bytesOf(words[2])).toEqual([...orange, 255]);
    expect(bytesOf(words[3])).toEqual([...purple, 255]);
    expect(bytesOf(words[4])).toEqual([...orange, 255]);
    expect(bytesOf(words[5])).toEqual([...noValueColor, 255]);
    expect(bytesOf(words[6])).toEqual([...orange, 255]);
  });

  it('colors classes by number', () => {
    const classes: ClassScale = { kind: 'classes', colors: [rgbOf('ff0000'), rgbOf('0000ff')] };
    const words = colorFacets(Uint8Array.of(1, 0, 7), classes);
    expect([...words].map(bytesOf)).toEqual([
      [0, 0, 255, 255],
      [255, 0, 0, 255],
      [...noValueColor, 255],
    ]);
  });
});

describe('maps', () => {
  const kinds = Object.keys(facetKind) as FacetKind[];
  const maps: MapArrays = {
    rayWallMm: Float32Array.of(1, 1, 1, 3, 1, Number.NaN),
    ballWallMm: Float32Array.of(1, 1, 1, 3, 1, Number.NaN),
    draftDeg: Float32Array.of(3, -3, -1, 0, 5, -80),
    cornerRadiusMm: Float32Array.of(Number.NaN, 0.5, 0, 1, 2, Number.NaN),
    kind: Uint8Array.from(kinds, (kind) => facetKind[kind]),
    closing: {
      areaMm2: new Float32Array(kinds.length),
      wallMm: new Float32Array(kinds.length),
      pullCosine: new Float32Array(kinds.length),
      armUMm: new Float32Array(kinds.length),
      armVMm: new Float32Array(kinds.length),
    },
  };
  const limits = { measure: 'ray', stackMm: 0.9, leastDraftDeg: 2, leastCornerRadiusMm: 0.9 } as const;

  it('counts draft toward the mold half of the facet', () => {
    expect([...releaseDraftDeg(maps)]).toEqual([3, 3, 1, 0, -5, 80]);
  });

  it('classes releases, drags and locks', () => {
    // show and core at 3 release; a rim at 1 and a detail at 0 drag; the trapped one locks whatever its draft.
    expect([...draftClasses(maps, 2)]).toEqual([0, 0, 1, 1, 2, 0]);
  });

  it('puts the stack in the middle of the wall map, and names every class of every map', () => {
    const wall = mapView('wall', maps, limits);
    expect(wall.legend.title).toBe('Wall less the wall wanted, mm');
    expect(wall.scale).toMatchObject({ low: 0.9 - 0.3, high: 0.9 + 0.3 });
    for (const tab of mapTabs) {
      const { legend, values } = mapView(tab, maps, limits);
      expect(values.length).toBe(maps.kind.length);
      if (legend.kind === 'classes') expect(legend.classes.length).toBe(legend.scale.colors.length);
    }
    expect(kindLabels.length).toBe(kinds.length);
  });

  it('keeps class colors apart in gray', () => {
    for (const tab of ['kinds', 'trapped'] as const) {
      const { scale } = mapView(tab, maps, limits);
      if (scale.kind !== 'classes') throw new Error('a map of classes');
      const grays = scale.colors
        .map(([red, green, blue]) => 0.299 * red + 0.587 * green + 0.114 * blue)
        .sort((a, b) => a - b);
      for (let i = 1; i < grays.length; i++) expect(grays[i]! - grays[i - 1]!).toBeGreaterThan(10);
    }
  });
});
