/** The demo's parts as plain data, ready to become projects. */
import type { IndexedMesh } from '../../core/mesh/types';
import { defaultClamp } from '../../steps/inputs/clamp';
import { windMeterLower, windMeterUpper } from './windMeter';
import { defaultProjectInputs, type ProjectInputs } from '../../steps/inputs/project';

export interface DemoPart {
  readonly enclosure: string;
  readonly name: string;
  /** Name that the model's file would have. */
  readonly fileName: string;
  /** Drawn in mm. */
  readonly mesh: IndexedMesh;
  /** What differs from the default inputs. */
  readonly inputs: { readonly [Step in keyof ProjectInputs]?: Partial<ProjectInputs[Step]> };
}

/** Two beads of this width make the demo's wall of 0.67 mm: what three plies fill, 0.70 mm, less what print and stone may be off. */
const print = { lineWidthMm: 0.335 };

/** What a maker has read off sheets and clamps. Invented, like the roll. */
const read = {
  mold: { sealer: 'post-cured epoxy', release: 'semi-permanent' },
  cure: { clampLimitFrom: 'read', supplierRampKPerMin: 2 },
} satisfies DemoPart['inputs'];

/** Faults that the plan mends: spring clamps that hardly press, pads that soften in the oven, and a print that does so in the stone. */
const faulty = {
  closing: { clamps: [{ ...defaultClamp, forceN: 20 }] },
  mold: { ...read.mold, patternSoftensC: 55 },
  cure: { ...read.cure, clampLimitC: 110 },
} satisfies DemoPart['inputs'];

/** With these the lower half is cleared as it is. */
const right = {
  mold: { ...read.mold, patternSoftensC: 98 },
  cure: {
    ...read.cure,
    supplierCures: [
      { hours: 12, temperatureC: 70 },
      { hours: 6, temperatureC: 80 },
    ],
    stages: [{ targetC: 80, rampKPerMin: 1, dwellHours: 14 }],
  },
} satisfies DemoPart['inputs'];

/** Both halves of the wind meter; the meshes are worked out on each call. */
export function demoParts(): readonly DemoPart[] {
  return [
    {
      enclosure: 'Wind meter',
      name: 'Upper half',
      fileName: 'wind-meter-upper.stl',
      mesh: windMeterUpper(),
      inputs: { part: { unit: 'mm', pull: [0, 0, 1] }, plies: print, ...faulty },
    },
    {
      enclosure: 'Wind meter',
      name: 'Lower half',
      fileName: 'wind-meter-lower.stl',
      mesh: windMeterLower(),
      inputs: { part: { unit: 'mm', pull: [0, 0, -1] }, plies: print, ...right },
    },
  ];
}

/** All inputs of a demo part. */
export const demoInputs = (changes: DemoPart['inputs']): ProjectInputs => ({
  part: { ...defaultProjectInputs.part, ...changes.part },
  pattern: { ...defaultProjectInputs.pattern, ...changes.pattern },
  walls: { ...defaultProjectInputs.walls, ...changes.walls },
  plies: { ...defaultProjectInputs.plies, ...changes.plies },
  closing: { ...defaultProjectInputs.closing, ...changes.closing },
  mold: { ...defaultProjectInputs.mold, ...changes.mold },
  cure: { ...defaultProjectInputs.cure, ...changes.cure },
  cutting: { ...defaultProjectInputs.cutting, ...changes.cutting },
  bench: { ...defaultProjectInputs.bench, ...changes.bench },
  fit: { ...defaultProjectInputs.fit, ...changes.fit },
  finish: { ...defaultProjectInputs.finish, ...changes.finish },
});
