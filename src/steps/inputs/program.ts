/** Input specs of the oven program and of the oven itself. */
import { usualOven } from '../../core/cure/ovenAir';
import { gentleKPerMin } from '../../core/cure/ovenProgram';
import { choice, folded, number, optional, type InputsOf } from '../kit/inputTable';

/** One stage of the program. Paths `cure.stages.N.<field>`. */
export const stageTable = {
  targetC: number('Stage goes to', '°C', 70, [-20, 250, 0], {
    meaning: 'What the dial is set to; the laminate gets there later.',
  }),
  rampKPerMin: optional('Ramp', 'K/min', gentleKPerMin, [0.01, 100, 2], {
    meaning: 'How fast the dial is turned; left empty, it is turned there at once.',
  }),
  dwellHours: number('Dwell', 'h', 3, [0, 200, 2], { meaning: 'How long the dial stays there.' }),
};

export type OvenStageInput = InputsOf<typeof stageTable>;

/** 70 °C for 3 h, then 120 °C for 1.5 h, at 1 K/min (common practice). */
export const defaultStages: OvenStageInput[] = [
  { targetC: 70, rampKPerMin: gentleKPerMin, dwellHours: 3 },
  { targetC: 120, rampKPerMin: gentleKPerMin, dwellHours: 1.5 },
];

/** One cure of the supplier's data sheet. Paths `cure.supplierCures.N.<field>`. */
export const supplierCureTable = {
  hours: number('Held for', 'h', 16, [0.01, 1000, 2], {
    meaning:
      "Least time of this cure on the supplier's data sheet. Published ones, as examples: 20 h at 80, 4 h at 120 or 2 h at 130 °C; 25 min at 120 °C; 4 h at 132 or 1 h at 154 °C.",
  }),
  temperatureC: number('At', '°C', 70, [0, 250, 0], {
    meaning: "Temperature of this cure on the supplier's data sheet; of the laminate, not of the oven.",
  }),
};

export const ovenChoices = {
  air: choice('Air in the oven', 'fan', {
    meaning: 'A fan brings heat into the mold about twice as fast as still air (common practice).',
    choices: { fan: 'moved by a fan', still: 'still', own: 'as fitted to your log' },
  }),
  support: choice('The mold stands on', 'rack', {
    meaning: 'On a rack air reaches it all round; a tray brings heat by contact and lets no water out.',
    choices: {
      rack: 'a rack, air all round',
      'tray, positive down': 'a tray, positive down',
      'tray, negative down': 'a tray, negative down',
    },
  }),
};

/** Temperatures that follow from something else until one is entered. */
export const followedRows = {
  ...folded('Kinetics and Tg of this resin', {
    gelC: optional('Laminate gels at', '°C', null, [15, 200, 0], {
      meaning:
        'Where the resin stops flowing and the laminate takes the size of the mold. Empty takes it from the oven program and the gel time of the Mold closing step; enter one only if you know better.',
    }),
  }),
  ...folded('The oven itself', {
    startC: optional('Mold and oven start at', '°C', null, [-20, 100, 0], {
      meaning: 'Of the whole mold, right through. Empty takes the room of the Stone mold step.',
    }),
  }),
};

export const ovenNumbers = {
  ownFilmWPerM2K: number('Air film, your own', 'W/(m² K)', 18, [1, 200, 1], {
    meaning: 'Used when the air is "as fitted to your log"; by convection alone, radiation is added.',
  }),
  trayGapMm: number('Gap to the tray', 'mm', 0.2, [0, 20, 1], {
    meaning: 'Air between stone and tray, in the mean; 0 for solid contact.',
  }),
  ...folded('The oven itself', {
    supplierRampKPerMin: number('The supplier allows a ramp of', 'K/min', 0, [0, 100, 1], {
      meaning: 'Fastest heating on the data sheet of the prepreg; 0 while you have not read it.',
    }),
    ovenLagS: number('The air follows the dial within', 's', usualOven.lagS, [0, 7200, 0], {
      meaning:
        'Time constant of the oven: after it about two thirds of a change are done (common practice; log yours).',
    }),
    ovenFastestKPerMin: number(
      'The air heats no faster than',
      'K/min',
      usualOven.fastestKPerMin,
      [0.1, 100, 1],
      { meaning: 'Full power with the mold inside.' },
    ),
    overshootK: number('Oven overshoot', 'K', usualOven.overshootK, [0, 50, 1], {
      meaning: 'By how much the air is hotter than the dial shortly after it arrives.',
    }),
  }),
  ...folded('Limits', {
    serviceC: number('Hottest in use', '°C', 60, [-40, 250, 0], {
      meaning:
        'What the finished part has to bear without softening; dark parts in the sun get to about 70 °C.',
    }),
  }),
};
