/** Inputs of stone, mix and pour. Ready-made values carry their status on the figures; the bag and the scale rule. */
import { choice, folded, number, optional } from '../kit/inputTable';

export const stoneType = choice('Stone', '4', {
  meaning: 'Gypsum type as in ISO 6873; its card fills in what the bag does not tell.',
  choices: {
    '1': 'type 1, impression plaster',
    '2': 'type 2, model plaster',
    '3': 'type 3, dental stone',
    '4': 'type 4, die stone, low expansion',
    '5': 'type 5, die stone, high expansion',
  },
});

export const pourMethod = choice('How the pattern is held', 'pressed in', {
  meaning: 'For the negative pour: pressed into the stone from above, or lying rim down on a board.',
  choices: {
    'pressed in': 'pressed in from above, rim flush',
    'board, sealed': 'rim down on a board, sealed all round',
    'board, leaking': 'rim down on a board, not sealed',
  },
});

/** What the bag says; null where the card's value stands. Paths are `mold.bag.<field>`. */
export const bagTable = {
  waterPowderRatio: optional('Water per powder (W/P), from the bag', 'g/g', 0.23, [0.1, 1, 3], {
    meaning:
      'Grams of water per gram of powder. It is no knob for expansion: more water only costs strength.',
  }),
  workingMin: optional('Working time, from the bag', 'min', 4, [0.5, 60, 1], {
    meaning: 'From water meeting powder until the slurry no longer flows.',
  }),
  initialSetMin: optional('Initial set, from the bag', 'min', 12, [1, 120, 0], {
    meaning:
      'When the surface loses its gloss. The standard lets it be off by 20 % of what the bag says; warm water shortens it.',
  }),
  finalSetMin: optional('Final set, from the bag', 'min', 30, [2, 240, 0], {
    meaning: 'When a nail leaves no mark. The standard lets it be off by 20 % of what the bag says.',
  }),
  demoldMin: optional('Demold after, from the bag', 'min', 60, [5, 1440, 0], {
    meaning: 'From the pour until the half may be handled.',
  }),
  settingExpansionPercent: optional('Setting expansion, from the bag', '%', 0.1, [0, 1, 2], {
    meaning:
      'Linear, two hours after mixing, at 23 °C and half humidity as the standard tests it. Die stones go on growing for four days.',
  }),
  strengthMPa: optional('Compressive strength, from the bag', 'MPa', 35, [0.5, 200, 0], {
    meaning: 'One hour after mixing, wet.',
  }),
  pricePerKg: optional('Price of the stone', 'per kg', 5, [0, 10_000, 2], { meaning: 'In your own money.' }),
};

/** What the maker has measured; null until then. Paths are `mold.measured.<field>`. */
export const measuredTable = {
  ...folded('Bowl, mixing and losses', {
    slurryGMl: optional('Slurry, weighed', 'g/mL', 2, [1, 2.5, 3], {
      meaning:
        'A cup of known volume filled level with slurry, its weight less the cup; tells how much air is in.',
    }),
  }),
  ...folded('The pattern in the stone', {
    patternG: optional('Pattern, weighed', 'g', 50, [0.1, 100_000, 1], {
      meaning: 'The printed pattern on the scale, as it goes into the stone.',
    }),
    peakC: optional('Peak while setting, measured', '°C', 50, [0, 120, 0], {
      meaning: 'Thermometer in the middle of a trial cup as thick as the thickest stone.',
    }),
  }),
  ...folded('Sizes from print to part', {
    printXMm: printed('x'),
    printYMm: printed('y'),
    printZMm: printed('z'),
    settingExpansionPercent: optional('Setting expansion, measured', '%', 0.1, [-0.5, 1, 3], {
      meaning: 'Caliper on a cast bar of known length, two hours after mixing: 100 × growth / length.',
    }),
  }),
};

function printed(axis: string) {
  return optional(`Printed pattern along ${axis}, measured`, 'mm', 100, [0.1, 10_000, 2], {
    meaning: `Caliper over the whole print along ${axis}; replaces print scale and shrinkage there.`,
  });
}

export const mixNumbers = {
  ...folded('Bowl, mixing and losses', {
    bowlMl: number('Mixing bowl', 'mL', 750, [20, 50_000, 0], { meaning: 'Full to the brim.' }),
    bowlFillPercent: number('Bowl filled at most', '%', 60, [10, 100, 0], {
      meaning: 'So that it can be stirred without spilling.',
    }),
    lossPercent: number('Slurry lost', '%', 10, [0, 100, 0], {
      meaning: 'Left in the bowl and spilled; mixed on top of what the half takes.',
    }),
    mixingMin: number('Mixing takes', 'min', 1, [0.2, 20, 1], {
      meaning: 'From water meeting powder until the slurry is smooth; about half of that under vacuum.',
    }),
    pouringMlPerMin: number('Pouring', 'mL/min', 200, [10, 5000, 0], {
      meaning: 'How fast you pour without trapping air; a thin stream from one corner.',
    }),
    roomC: number('Room, water and powder', '°C', 21, [5, 40, 0], {
      meaning:
        'Temperature at which the stone is mixed and sizes are measured; the oven starts and ends there, and the part is used there, unless you say otherwise.',
    }),
    degreeOfReactionPercent: number('Powder that sets', '%', 100, [50, 100, 0], {
      meaning:
        'Share of the powder that turns to set stone; with less, more water stays free (100 is usual).',
    }),
  }),
  ...folded('The pattern in the stone', {
    patternDensityGCm3: number('Density of the printed material', 'g/cm³', 1.24, [0.1, 10, 2], {
      meaning: 'For a pattern that was not weighed; PLA is 1.24 to 1.31 (data sheets).',
    }),
    patternSoftensC: number('Pattern softens at', '°C', 55, [30, 300, 0], {
      meaning:
        'From the data sheet of the printed material. PLA softens at 52 to 58 °C and should stay under 50; ABS at 76 to 95, ASA at about 100 (data sheets).',
    }),
    counterweightMargin: number('Counterweight over uplift', '×', 1.5, [1, 5, 1], {
      meaning: 'How many times the uplift the counterweight holds.',
    }),
  }),
};
