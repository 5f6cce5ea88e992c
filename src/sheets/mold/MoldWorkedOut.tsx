import type { Figure } from '../../core/figure';
import { FigureGroups, type FigureGroup } from '../FigureGroups';
import { PoursTable } from './PoursTable';

const ofHalves = (...fields: readonly string[]) =>
  ['negative', 'positive'].flatMap((half) => fields.map((field) => `mold.${half}.${field}`));

const groups: readonly FigureGroup[] = [
  {
    title: 'Box and volumes',
    shown: ['mold.boxSheets'],
    ids: [
      'mold.boxTurnDeg',
      'mold.boxSheets',
      'mold.negative.volumeMl',
      'mold.positive.volumeMl',
      'mold.envelopeMl',
      'mold.cavityMl',
      'mold.patternMl',
      'mold.volumeCheckPercent',
      'mold.lockingMl',
      'mold.keysPlaced',
    ],
  },
  {
    title: 'Mix and batches',
    shown: ['mold.batches', 'mold.powderKg'],
    ids: [
      ...ofHalves('powderG', 'waterG', 'slurryMl', 'batches', 'joinAgeMin'),
      'mold.batches',
      'mold.powderKg',
      'mold.price',
    ],
  },
  {
    title: 'The stone',
    shown: ['mold.waterPowderRatio', 'mold.workingMin', 'mold.settingExpansionPercent'],
    ids: [
      'mold.waterPowderRatio',
      'mold.workingMin',
      'mold.initialSetMin',
      'mold.finalSetMin',
      'mold.demoldMin',
      'mold.settingExpansionPercent',
      'mold.strengthMPa',
      'mold.detailUm',
      'mold.slurryDensityGMl',
      'mold.wetDensityGMl',
      'mold.dryDensityGMl',
      'mold.porosityPercent',
    ],
  },
  {
    title: 'Float-up',
    shown: ['mold.floatUpForceN'],
    ids: ['mold.patternG', 'mold.floatUpForceN', 'mold.leakCounterweightG', 'mold.sealPressureKPa'],
  },
  {
    title: 'Heat of setting',
    shown: ['mold.settingPeakC'],
    ids: ['mold.settingPeakC', 'mold.adiabaticRiseK', 'mold.patternSoftensC'],
  },
  {
    title: 'Sizes',
    shown: ['mold.printScale'],
    ids: ['mold.wantedLengthMm', 'mold.printScale', 'mold.coolingMismatchMm', 'mold.liftToFreeMm'],
  },
  {
    title: 'The two rims of the enclosure',
    shown: ['mold.rimOutlineOffMm'],
    ids: ['mold.rimLengthOffMm', 'mold.rimWidthOffMm', 'mold.rimOutlineOffMm'],
  },
  {
    title: 'Drying',
    shown: ofHalves('dryTargetG'),
    ids: [
      ...ofHalves('freshG', 'freeWaterG', 'dryTargetG', 'dryEndG', 'hoursToDry', 'waterLeftPercent'),
      'mold.evaporationKJ',
      'mold.chalkySkinMm',
    ],
  },
  {
    title: 'Sealer and release',
    shown: ['mold.sealerMl', 'mold.releaseMl'],
    ids: [
      ...ofHalves('faceCm2'),
      'mold.sealerMl',
      'mold.sealerWaitMin',
      'mold.releaseMl',
      'mold.releaseWaitMin',
      'mold.coatFilmUm',
      'mold.sealerLimitC',
      'mold.releaseLimitC',
    ],
  },
  {
    title: 'Repairs',
    shown: ['mold.repairCount'],
    ids: ['mold.repairCount', 'mold.repairThinnerMm', 'mold.repairThickerMm'],
  },
];

/** Both pours as a table, the few numbers that decide open, the rest by subject. */
export function MoldWorkedOut({ figures }: { readonly figures: readonly Figure[] }) {
  return (
    <>
      <PoursTable figures={figures} />
      <FigureGroups figures={figures} groups={groups} />
    </>
  );
}
