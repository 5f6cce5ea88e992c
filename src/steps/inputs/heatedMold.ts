/** Input specs of what the oven heats: dampness of the stone, dehydration, limits, and how finely it is worked out. */
import { stoneHeatDefaults } from '../../core/cure/moldMaterials';
import { usualDemoldC } from '../../core/cure/coolDown';
import { choice, folded, number } from '../kit/inputTable';

export const moldChoices = {
  patternInside: choice('The printed pattern', 'out', {
    meaning: 'A printed pattern softens far below the cure; it has to be out.',
    choices: { out: 'is out of the mold', in: 'is still in the mold' },
  }),
  ...folded('Limits', {
    clampLimitFrom: choice('Heat that the clamps bear', 'not read yet', {
      meaning:
        'Whether their limit was read off your own clamps. One empty clamp, set to a block for an hour at the hottest stage, tells: pads soft or force lost, and it does not stand it.',
      choices: { 'not read yet': 'is not read off them yet', read: 'is read off them, or tried in the oven' },
    }),
  }),
  ...folded('Water and dehydration', {
    drying: choice('Water below 100 °C', 'wicks', {
      meaning:
        'How free water leaves the warm stone: pores carry it to the open faces, which it cools, or it stays until it boils. The two are bounds.',
      choices: { wicks: 'dries through open faces', stays: 'stays until it boils' },
    }),
    sealedFaces: choice('Sealed or taped faces', 'none', {
      meaning: 'Outside faces that let no water out.',
      choices: { none: 'none', sides: 'the sides', all: 'all' },
    }),
  }),
};

export const moldNumbers = {
  freeWaterLeftPercent: number('Free water left in the stone', '%', 5, [0, 100, 0], {
    meaning:
      'Of what the mix left in it, 100 as demolded; a half that stands in the drying log of the Stone mold step counts as weighed instead. Stone dried below 49 °C to a steady weight holds a few percent (common practice).',
  }),
  ...folded('Limits', {
    stoneLimitC: number('Hottest oven for the stone', '°C', 130, [30, 250, 0], {
      meaning:
        'Hottest oven that you allow the stone; over about 130 °C it turns to plaster right through (common practice).',
    }),
    clampLimitC: number('The clamps stand', '°C', 150, [30, 400, 0], {
      meaning:
        'Steel screw clamps stand the cure; spring clamps with plastic pads or grips soften from about 80 °C (common practice). Read yours.',
    }),
    patternLimitC: number('The pattern stands', '°C', 50, [30, 250, 0], {
      meaning:
        'Where the print softens; polylactide softens at 52 to 58 °C, so 50 is its limit (data sheets). ABS softens at 76 to 95 °C, ASA at about 100.',
    }),
    demoldC: number('Demold under', '°C', usualDemoldC, [25, 150, 0], {
      meaning: 'Temperature of the laminate; 50 °C in a published prepreg processing guide.',
    }),
  }),
  ...folded('Water and dehydration', {
    dehydrationRateFactor: number('Speed of dehydration, against typical stone', '×', 1, [0, 100, 1], {
      meaning:
        'Factor on the published rate of powder in open air; three times moves the peak by about 10 K. The first tenth of the water goes more slowly than that rate (published), so under 100 °C the band errs to the safe side for the part.',
    }),
    stoneConductivityWPerMK: number(
      'Conductivity of dry stone',
      'W/(m K)',
      stoneHeatDefaults.dryConductivityWPerMK,
      [0.1, 5, 2],
      {
        meaning:
          'Plausible 0.7 to 1.0, between published gypsum plaster (0.51 at 1200 kg/m³) and gypsum rock (0.75 to 1.3).',
      },
    ),
    stoneHeatJPerKgK: number(
      'Heat capacity of dry stone',
      'J/(kg K)',
      stoneHeatDefaults.dryHeatJPerKgK,
      [300, 3000, 0],
      { meaning: 'From memory.' },
    ),
  }),
  ...folded('How finely it is worked out', {
    voxelMm: number('Edge of a calculation cell', 'mm', 2, [0.8, 10, 1], {
      meaning:
        'Edge of the cells that stone and laminate are cut into; halving it takes about ten times as long.',
    }),
  }),
};
