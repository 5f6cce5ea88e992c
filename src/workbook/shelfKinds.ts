/**
 * The kinds of cards on the shop's shelf. A kind names the inputs of a project that its card fills; label, unit, range
 * and meaning of each are those of the input itself. `N` in a path stands for the place in a list.
 */
import { coatNumbers } from '../steps/inputs/moldBench';
import { clampTable } from '../steps/inputs/clamp';
import { finishCoatTable } from '../steps/inputs/finish';
import { materialTable } from '../steps/inputs/material';
import { inputTables } from '../steps/inputs/project';
import { bagTable } from '../steps/inputs/stone';
import type { InputTable } from '../steps/kit/inputTable';

export const cardKinds = [
  'roll',
  'stone',
  'oven',
  'clamps',
  'print material',
  'sealer',
  'release',
  'coat',
  'finish coat',
] as const;
export type CardKind = (typeof cardKinds)[number];

export interface KindOfCard {
  /** Heading of its cards. */
  readonly title: string;
  /** Paths of the inputs that a card fills. */
  readonly fills: readonly string[];
  /** Those of them that nobody but the maker can know: entered in a project they count as measured. */
  readonly measured: readonly string[];
  /** The list that a picked card is an entry of; null where it fills inputs that a project has once. */
  readonly list: 'plies.materials' | 'closing.clamps' | 'finish.coats' | null;
}

const below = (prefix: string, fields: readonly string[]) => fields.map((field) => `${prefix}.${field}`);
const fieldsOf = (table: InputTable, ...without: readonly string[]) =>
  Object.keys(table).filter((field) => !without.includes(field));
const coatFields = (which: 'sealer' | 'release') => [
  `mold.${which}`,
  ...below(
    'mold',
    Object.keys(coatNumbers).filter((field) => field.startsWith(which)),
  ),
  `mold.coatSheet.${which}LimitC`,
];

const clampFields = below('closing.clamps.N', fieldsOf(clampTable, 'id', 'placed', 'count', 'xMm', 'yMm'));
const ownStone = below('mold.measured', ['slurryGMl', 'settingExpansionPercent']);
const ownOven = below('cure', ['ownFilmWPerM2K', 'ovenLagS', 'ovenFastestKPerMin', 'overshootK']);
const ownPrint = ['plies.lineWidthMm', 'mold.printShrinkPercent'];

export const kindsOfCards: Readonly<Record<CardKind, KindOfCard>> = {
  roll: {
    title: 'Rolls of prepreg',
    fills: below('plies.materials.N', fieldsOf(materialTable, 'id', 'name')),
    measured: below('plies.materials.N', [
      'caliperTotalMm',
      'caliperPlies',
      'offcutMassG',
      'offcutAreaCm2',
      'hoursOutH',
      'remnantLengthMm',
      'remnantWidthMm',
    ]),
    list: 'plies.materials',
  },
  stone: {
    title: 'Stones',
    fills: [
      'mold.stoneType',
      ...below('mold.bag', fieldsOf(bagTable)),
      ...ownStone,
      ...below('mold', ['degreeOfReactionPercent', 'stoneExpansionPerMK']),
      ...below('cure', ['stoneLimitC', 'stoneConductivityWPerMK', 'stoneHeatJPerKgK']),
    ],
    measured: ownStone,
    list: null,
  },
  oven: { title: 'Ovens', fills: ['cure.air', ...ownOven], measured: ownOven, list: null },
  clamps: { title: 'Clamps', fills: clampFields, measured: clampFields, list: 'closing.clamps' },
  'print material': {
    title: 'Print materials',
    fills: [...ownPrint, 'mold.patternDensityGCm3', 'mold.patternSoftensC', 'cure.patternLimitC'],
    measured: ownPrint,
    list: null,
  },
  sealer: { title: 'Sealers', fills: coatFields('sealer'), measured: [], list: null },
  release: { title: 'Releases', fills: coatFields('release'), measured: [], list: null },
  coat: {
    title: 'Coats of the finished part',
    fills: ['plies.coatThicknessMm', 'plies.coatSetC'],
    measured: [],
    list: null,
  },
  'finish coat': {
    title: 'Coats over the cured part',
    fills: below('finish.coats.N', fieldsOf(finishCoatTable, 'id', 'name', 'count')),
    measured: [],
    list: 'finish.coats',
  },
};

export type InputRow = InputTable[string];

/** The row of the input that a path of a kind names. */
export function rowAt(path: string): InputRow {
  const [step = '', ...keys] = path.split('.');
  let table: InputTable | undefined = (inputTables as Readonly<Record<string, InputTable>>)[step];
  let row: InputRow | undefined;
  for (const key of keys.filter((one) => one !== 'N')) {
    row = table?.[key];
    table = row?.within?.table;
  }
  if (row === undefined) throw new Error(`no input "${path}" for a card to fill`);
  return row;
}

/** Stands in a project for "nobody has said"; on a card that is a field left empty. */
export const notSaid = 'not said';

/** The rows of a card's form, by path: each may be left empty. */
export function cardTableOf(kind: CardKind): InputTable {
  return Object.fromEntries(kindsOfCards[kind].fills.map((path) => [path, emptyRow(rowAt(path))]));
}

const noChoice = { value: '', label: 'not on the card' };

function emptyRow({ fold: _fold, ...row }: InputRow): InputRow {
  if (row.kind === 'choice')
    return {
      ...row,
      start: '',
      choices: [noChoice, ...row.choices.filter(({ value }) => value !== notSaid)],
    };
  if (row.kind !== 'plain') return { ...row, start: null };
  const { shown } = row;
  if (shown?.choices === undefined) return row;
  return { ...row, start: '', shown: { ...shown, choices: [noChoice, ...shown.choices] } };
}
