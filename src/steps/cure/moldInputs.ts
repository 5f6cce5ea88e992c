/** Input specs of what the oven heats: dampness of the stone, dehydration, limits, and how finely it is worked out. */
import { stoneHeatDefaults } from '../../core/cure/moldMaterials';
import { usualDemoldC } from '../../core/cure/coolDown';
import type { ChoiceSpec, NumberSpec } from '../inputSpec';

export const moldChoiceSpecs = {
  drying: {
    kind: 'choice',
    label: 'Water below 100 °C',
    unit: '',
    meaning:
      'How free water leaves the warm stone: pores carry it to the open faces, which it cools, or it stays until it boils. The two are bounds.',
    default: 'wicks',
    choices: [
      { value: 'wicks', label: 'dries through open faces' },
      { value: 'stays', label: 'stays until it boils' },
    ],
  },
  sealedFaces: {
    kind: 'choice',
    label: 'Sealed or taped faces',
    unit: '',
    meaning: 'Outside faces that let no water out.',
    default: 'none',
    choices: [
      { value: 'none', label: 'none' },
      { value: 'sides', label: 'the sides' },
      { value: 'all', label: 'all' },
    ],
  },
  patternInside: {
    kind: 'choice',
    label: 'The printed pattern',
    unit: '',
    meaning: 'A printed pattern softens far below the cure; it has to be out.',
    default: 'out',
    choices: [
      { value: 'out', label: 'is out of the mold' },
      { value: 'in', label: 'is still in the mold' },
    ],
  },
  clampLimitFrom: {
    kind: 'choice',
    label: 'What the clamps stand',
    unit: '',
    meaning:
      'Whether their limit was read off your own clamps. One empty clamp, set to a block for an hour at the hottest stage, tells: pads soft or force lost, and it does not stand it.',
    default: 'not read yet',
    choices: [
      { value: 'not read yet', label: 'is not read off them yet' },
      { value: 'read', label: 'is read off them, or tried in the oven' },
    ],
  },
} as const satisfies Record<string, ChoiceSpec>;

export const moldNumberSpecs = {
  freeWaterLeftPercent: {
    kind: 'number',
    label: 'Free water left in the stone',
    unit: '%',
    meaning:
      'Of what the mix left in it, 100 as demolded; a half that stands in the drying log of the Stone mold step counts as weighed instead. Stone dried below 49 °C to a steady weight holds a few percent (common practice).',
    default: 5,
    min: 0,
    max: 100,
    decimals: 0,
  },
  dehydrationRateFactor: {
    kind: 'number',
    label: 'Dehydration faster by',
    unit: '×',
    meaning:
      'Factor on the published rate of powder in open air; three times moves the peak by about 10 K. The first tenth of the water goes more slowly than that rate (published), so under 100 °C the band errs to the safe side for the part.',
    default: 1,
    min: 0,
    max: 100,
    decimals: 1,
  },
  stoneConductivityWPerMK: {
    kind: 'number',
    label: 'Conductivity of dry stone',
    unit: 'W/(m K)',
    meaning:
      'Plausible 0.7 to 1.0, between published gypsum plaster (0.51 at 1200 kg/m³) and gypsum rock (0.75 to 1.3).',
    default: stoneHeatDefaults.dryConductivityWPerMK,
    min: 0.1,
    max: 5,
    decimals: 2,
  },
  stoneHeatJPerKgK: {
    kind: 'number',
    label: 'Heat capacity of dry stone',
    unit: 'J/(kg K)',
    meaning: 'From memory.',
    default: stoneHeatDefaults.dryHeatJPerKgK,
    min: 300,
    max: 3000,
    decimals: 0,
  },
  stoneLimitC: {
    kind: 'number',
    label: 'The stone stands',
    unit: '°C',
    meaning:
      'Hottest oven that you allow the stone; over about 130 °C it turns to plaster right through (common practice).',
    default: 130,
    min: 30,
    max: 250,
    decimals: 0,
  },
  patternLimitC: {
    kind: 'number',
    label: 'The pattern stands',
    unit: '°C',
    meaning:
      'Where the print softens; polylactide softens at 52 to 58 °C, so 50 is its limit (data sheets). ABS softens at 76 to 95 °C, ASA at about 100.',
    default: 50,
    min: 30,
    max: 250,
    decimals: 0,
  },
  clampLimitC: {
    kind: 'number',
    label: 'The clamps stand',
    unit: '°C',
    meaning:
      'Steel screw clamps stand the cure; spring clamps with plastic pads or grips soften from about 80 °C (common practice). Read yours.',
    default: 150,
    min: 30,
    max: 400,
    decimals: 0,
  },
  demoldC: {
    kind: 'number',
    label: 'Demold under',
    unit: '°C',
    meaning: 'Temperature of the laminate; 50 °C in a published prepreg processing guide.',
    default: usualDemoldC,
    min: 25,
    max: 150,
    decimals: 0,
  },
  voxelMm: {
    kind: 'number',
    label: 'Worked out in bricks of',
    unit: 'mm',
    meaning:
      'Edge of the bricks that stone and laminate are cut into; halving it takes about ten times as long.',
    default: 2,
    min: 0.8,
    max: 10,
    decimals: 1,
  },
} as const satisfies Record<string, NumberSpec>;
