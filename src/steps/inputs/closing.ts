/** Inputs of the Mold closing step: clamps, the curve of the fiber bed, lands, debulking, resin. */
import { choice, folded, list, number, type InputsOf } from '../kit/inputTable';
import { bedPointTable, clampTable, defaultClamp } from './clamp';

export const closingTable = {
  clamps: list('Clamps', clampTable, [defaultClamp], {
    startWords: '8 spring clamps of 150 N, round the rim',
    meaning:
      'List of clamps: id, placed (round the rim, or at a place) and the numbers described under closing.clamps.N.',
  }),
  lands: choice('Lands', 'stone on stone', {
    meaning:
      'Whether the halves meet stone on stone round the part; lands stop the closing and then take load.',
    choices: {
      'stone on stone': 'stone on stone round the part',
      none: 'none: only the laminate holds the halves apart',
    },
  }),
  shimMm: number('Shim on the lands', 'mm', 0, [-5, 10, 2], {
    meaning: 'Height laid on the lands; negative when the lands were lowered by scraping.',
  }),
  debulk: choice('Debulked', 'by hand', {
    meaning:
      'How air is pressed out between the plies before closing. Under vacuum at 40 to 50 °C for about 15 min (common practice) next to none is left.',
    choices: { 'by hand': 'by hand, ply by ply', 'under vacuum': 'under a vacuum bag, warm' },
  }),
  debulkedMm: number('Stack after debulking, measured', 'mm', 0, [0, 50, 2], {
    meaning:
      'Caliper over the whole stack after pressing it by hand or vacuum, before closing; 0 when not measured.',
  }),
  debulkFactor: number('Debulked over as laid', '', 0.9, [0.5, 1, 2], {
    meaning:
      'Thickness after debulking over thickness as laid, used while none is measured: 0.85 to 0.9 (from memory); 1 is no debulking. Never under what fiber and resin fill.',
  }),
  resin: choice('Resin', 'trapped', {
    meaning:
      'Which case the verdicts use: resin held in by a sealed or dammed rim, as it should be, or free to leave over an open one. Both are shown.',
    choices: { trapped: 'held in by a sealed or dammed rim', free: 'free to leave' },
  }),
  acceptedStandOffMm: number('Stand-off you accept', 'mm', 0.1, [0, 5, 2], {
    meaning:
      'Resin that is held in keeps the mold open by a few hundredths, which is no fault; by more than this anywhere round its lands it has not closed (common practice).',
  }),
  wantedFiberFraction: number('Fiber volume fraction you want', '', 0.5, [0.2, 0.75, 2], {
    meaning: 'For the clamp force that presses the faces across the pull to it.',
  }),
  ...folded('Given: fiber bed and friction', {
    bedLaw: choice('Fiber-bed curve', 'by weave', {
      meaning:
        'How plies push back when pressed: by the weave on each card, or one curve for all. A measured curve under closing.bedPoints goes before both.',
      choices: { 'by weave': 'by the weave of each card', woven: 'woven', aligned: 'aligned tows' },
    }),
    bedPoints: list('Measured fiber-bed curves', bedPointTable, [], {
      startWords: 'none',
      meaning:
        'List of materials measured under two weights: materialId and the numbers described under closing.bedPoints.N.',
    }),
    scatterPercent: number('Scatter of the fiber bed', '%', 40, [0, 90, 0], {
      meaning:
        'How far the pressure at one thickness may be off: laboratories differ by about 40 %; your own two points may be better.',
    }),
    frictionCoefficient: number('Most friction on the stone', '', 0.25, [0, 1, 2], {
      meaning:
        'Friction of the stack on released stone for the upper bound; the lower bound is none. Cold prepreg is tacky, warm resin runs. Measured on tools: 0.17 to 0.45 (J. Manuf. Mater. Process. 7, 2023, 14, abstract).',
    }),
  }),
  ...folded('Given: resin flow', {
    timeToGelMin: number('Gel time', 'min', 60, [1, 6000, 0], {
      meaning:
        'From the supplier’s data sheet, at the temperature below; with the oven program it tells where the laminate gels. 60 min at 70 °C is from memory for resins that cure from 70 °C.',
    }),
    gelTimeAtC: number('Gel time is for', '°C', 70, [20, 200, 0], {
      meaning: 'Temperature that the data sheet gives beside the gel time; not that of your oven.',
    }),
    resinMarginKPa: number('Resin pressure over the need', 'kPa', 50, [0, 2000, 0], {
      meaning: 'What the resin should have at gel beyond what keeps moisture from boiling (common practice).',
    }),
    bagged: choice('Vacuum bag round the mold', 'none', {
      meaning:
        'A rigid mold shields the resin from the air outside; only in a bag does the air press on it too, with 101 kPa.',
      choices: { none: 'none', bagged: 'the closed mold is bagged' },
    }),
    humidityPercent: number('Humidity the prepreg was stored at', '%', 50, [0, 100, 0], {
      meaning: 'Relative humidity of the air that the open roll last lay in.',
    }),
  }),
};

export type ClosingInputs = InputsOf<typeof closingTable>;
