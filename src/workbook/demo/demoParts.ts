/** The demo's parts as plain data, ready to become projects. */
import type { IndexedMesh } from '../../core/mesh/types';
import { windMeterLower, windMeterUpper } from './windMeter';
import type { PartInputs } from '../../steps/inputs/part';
import type { PliesInputs } from '../../steps/inputs/plies';

export interface DemoPart {
  readonly enclosure: string;
  readonly name: string;
  /** Name that the model's file would have. */
  readonly fileName: string;
  /** Drawn in mm. */
  readonly mesh: IndexedMesh;
  /** What differs from the default inputs. */
  readonly inputs: { readonly part: Partial<PartInputs>; readonly plies: Partial<PliesInputs> };
}

/** Two beads of this width make the demo's wall of 0.67 mm: what three plies fill, 0.70 mm, less what print and stone may be off. */
const print = { lineWidthMm: 0.335 };

/** Both halves of the wind meter; the meshes are worked out on each call. */
export function demoParts(): readonly DemoPart[] {
  return [
    {
      enclosure: 'Wind meter',
      name: 'Upper half',
      fileName: 'wind-meter-upper.stl',
      mesh: windMeterUpper(),
      inputs: { part: { unit: 'mm', pull: [0, 0, 1] }, plies: print },
    },
    {
      enclosure: 'Wind meter',
      name: 'Lower half',
      fileName: 'wind-meter-lower.stl',
      mesh: windMeterLower(),
      inputs: { part: { unit: 'mm', pull: [0, 0, -1] }, plies: print },
    },
  ];
}
