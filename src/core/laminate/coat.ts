/** A coat on one face of the laminate, as one more layer that is the same in every direction. */
import type { LaminateLayer } from './lamination';
import { isotropicElastic } from './plyElastic';

export interface Coat {
  readonly eGPa: number;
  readonly nu: number;
  readonly expansionPerK: number;
  readonly thicknessMm: number;
}

/** A clear epoxy coat at room temperature; constants from memory (`materialsFromMemory` in core/sources). */
export const typicalEpoxyCoat: Omit<Coat, 'thicknessMm'> = { eGPa: 3, nu: 0.35, expansionPerK: 60e-6 };

/**
 * The stack with the coat outside its first layer (show face) or its last (core face). One change of temperature then
 * counts for all layers, from the temperature at which the coat set; a coat brushed on at room temperature pulls on
 * cooling below or warming above that, not from the cure.
 */
export function withCoat(
  layers: readonly LaminateLayer[],
  coat: Coat,
  face: 'show' | 'core',
): readonly LaminateLayer[] {
  const layer: LaminateLayer = {
    elastic: isotropicElastic(coat.eGPa, coat.nu, coat.expansionPerK),
    angleDeg: 0,
    thicknessMm: coat.thicknessMm,
  };
  return face === 'show' ? [layer, ...layers] : [...layers, layer];
}
