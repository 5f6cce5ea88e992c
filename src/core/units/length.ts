/** Length units that a model file may be drawn in, and their size in mm (exact by definition; 1 in = 25.4 mm). */
export type LengthUnit = 'mm' | 'cm' | 'm' | 'in';

export const mmPerUnit: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4 };

export const lengthUnitNames: Readonly<Record<LengthUnit, string>> = {
  mm: 'millimeters',
  cm: 'centimeters',
  m: 'meters',
  in: 'inches',
};
