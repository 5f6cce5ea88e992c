/** From the measured part to the maps, marks and files of the closed mold. */
import { beforeAll, describe, expect, it } from 'vitest';
import { noClosingClass } from '../../src/core/closing/closingMaps';
import { facetKind } from '../../src/core/mesh/types';
import type { MeasureReply, PartShape } from '../../src/pipeline/told';
import { closingView } from '../../src/sheets/closing/closingView';
import { facetsOfPlace } from '../../src/sheets/closing/facetsOfPlace';
import { planSilhouette } from '../../src/sheets/closing/planSilhouette';
import { wallChangeCsv } from '../../src/sheets/closing/wallChangeCsv';
import { closingState, type ClosingState } from '../../src/steps/closedMold/state';
import type { StepContext } from '../../src/steps/shared/context';
import { closingMapView, closingTabs, type ClosingMapData } from '../../src/viewer/closingMapViews';
import { measuredPart, questionWith } from '../pipeline/support';
import { tray } from '../support/meshes';
import { emptyContext, plyAt, trayContext } from '../steps/contexts';

let shape: PartShape;
let reply: MeasureReply;
let context: StepContext;
let state: ClosingState;
let data: ClosingMapData;

// Open along +z, so the negative leaves downward; three plies that fill 0.70 mm in a wall of 0.67 mm.
beforeAll(async () => {
  const question = questionWith({ part: { pull: [0, 0, -1] } });
  ({ shape, reply } = await measuredPart(tray([60, 40, 12], 0.67, 4), question));
  context = trayContext({ summary: reply.summary, closing: { lands: 'none' } });
  const answer = closingState(context);
  if (!answer.known) throw new Error(answer.reason);
  state = answer;
  const view = closingView(context, reply.maps.closing, shape.display);
  if (!view.known) throw new Error(view.why);
  data = view.data;
});

describe('maps', () => {
  it('give every show facet a value on every map, and no other facet', () => {
    const { kind, closing } = reply.maps;
    for (const tab of closingTabs) {
      const { values, legend } = closingMapView(tab, data);
      expect(values.length).toBe(kind.length);
      expect(legend.noValue).toBeTruthy();
      for (let facet = 0; facet < kind.length; facet++) {
        const isNone =
          values instanceof Uint8Array ? values[facet] === noClosingClass : Number.isNaN(values[facet]);
        expect(isNone).toBe(closing.areaMm2[facet] === 0);
        if (!isNone) expect(kind[facet]).toBe(facetKind.show);
      }
    }
  });

  it('agree with the balance: pressure over the facets is the load in the laminate', () => {
    const { areaMm2, pullCosine } = reply.maps.closing;
    let newtons = 0;
    for (let facet = 0; facet < areaMm2.length; facet++)
      if (areaMm2[facet]! > 0)
        newtons += (data.maps.pressureKpa[facet]! / 1000) * areaMm2[facet]! * pullCosine[facet]!;
    expect(newtons / state.main.solution.laminateForceN).toBeCloseTo(1, 2);
  });

  it('carry their numbers in the legends, white at what the plies fill', () => {
    const gap = closingMapView('gap', data).legend;
    if (gap.kind !== 'ramp') throw new Error('a ramp');
    expect(gap.ticks.map(({ label }) => label)[1]).toBe('0.70');
    const { legend } = closingMapView('class', data);
    if (legend.kind !== 'classes') throw new Error('classes');
    expect(legend.classes.map(({ label }) => label)).toEqual([
      'too tight',
      'pressed',
      'barely pressed',
      'loose',
    ]);
    expect(new Set(legend.classes.map(({ hatch }) => hatch)).size).toBe(4);
  });

  it('take the nominal wall of the print where the maker says so', () => {
    const view = closingView(
      trayContext({ summary: reply.summary, part: { nominalWall: 'print', printLines: 2 } }),
      reply.maps.closing,
      shape.display,
    );
    if (!view.known) throw new Error(view.why);
    const wanted = view.data.maps.wallChangeMm.filter((one) => !Number.isNaN(one));
    expect(Math.max(...wanted)).toBeCloseTo(Math.min(...wanted), 6);
  });

  it('say why there is nothing to draw', () => {
    expect(closingView(emptyContext(), reply.maps.closing, shape.display)).toEqual({
      known: false,
      why: 'No pattern is imported yet.',
    });
    const tipping = trayContext({
      summary: reply.summary,
      plies: { stack: ['a', 'b', 'c', 'd', 'e', 'f'].map((id) => plyAt(id)) },
      closing: {
        clamps: [{ ...context.inputs.closing.clamps[0]!, placed: 'at a place', xMm: 500, yMm: 0 }],
      },
    });
    expect(closingView(tipping, reply.maps.closing, shape.display)).toMatchObject({ known: false });
  });
});

describe('marks and files', () => {
  it('marks of the places cover each carrying show facet once', () => {
    const { closing } = reply.maps;
    const { boxMinMm, boxMaxMm, display } = shape;
    const frame = { boxMinMm, boxMaxMm, pull: [0, 0, -1] } as const;
    const marked = state.places.flatMap(({ place }) => [
      ...facetsOfPlace(place, frame, display, closing, data.maps),
    ]);
    expect(new Set(marked).size).toBe(marked.length);
    const carrying = [...closing.areaMm2.keys()].filter((facet) => data.maps.pressureKpa[facet]! > 0);
    expect(carrying.length).toBeGreaterThan(0);
    const set = new Set(marked);
    const missed = carrying.filter((facet) => !set.has(facet));
    // A bin's mean may fall to the neighboring place at the border between two.
    expect(missed.length / carrying.length).toBeLessThan(0.1);
  });

  it('wall changes lie on the part and lead to the wanted wall', () => {
    const csv = wallChangeCsv(shape, reply.maps.closing, data.maps, state.wantedWallMm);
    const [head, ...lines] = csv.trim().split('\n');
    expect(head).toBe('x_mm,y_mm,z_mm,wall_mm,wall_change_mm');
    expect(lines.length).toBeGreaterThan(100);
    for (const line of lines) {
      const [x, y, z, wall, change] = line.split(',').map(Number);
      expect(wall! + change!).toBeCloseTo(state.wantedWallMm, 2);
      for (const [axis, at] of [x!, y!, z!].entries()) {
        expect(at).toBeGreaterThanOrEqual(shape.boxMinMm[axis]! - 0.06);
        expect(at).toBeLessThanOrEqual(shape.boxMaxMm[axis]! + 0.06);
      }
    }
  });

  it('the silhouette of a tray is its rectangle, row by row', () => {
    const [halfU, halfV] = state.histogram.frame.halfSizeMm;
    const path = planSilhouette(state.histogram.frame, shape.display);
    const widths = [...path.matchAll(/h([\d.]+)v/gu)].map(([, width]) => Number(width));
    const area = widths.reduce((sum, width) => sum + (width * 2 * Math.max(halfU, halfV)) / 240, 0);
    expect(area / (4 * halfU * halfV)).toBeCloseTo(1, 1);
    expect(widths.filter((width) => Math.abs(width - 2 * halfU) < 0.6).length).toBeGreaterThan(150);
  });
});
