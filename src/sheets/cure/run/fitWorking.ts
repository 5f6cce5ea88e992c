/** What a fit to a log compared and took for granted, in plain sentences. */
import type { LogFit } from '../../../core/cure/fitToLog';
import type { CurePrediction } from '../../../core/cure/predictCure';
import type { LaminatePlace } from '../../../core/cure/laminatePlace';
import { formatNumber } from '../../../core/units/formatNumber';
import { treatmentNames } from '../../../steps/cure/say';
import type { OvenRunLog } from '../../../workbook';

export const placeNames: Readonly<Record<LaminatePlace['kind'], string>> = {
  coldest: 'coldest place of the laminate',
  hottest: 'hottest place of the laminate',
  'show middle': 'middle of the show face',
  point: 'a point of the part',
};

const mm = (value: number) => formatNumber(value, 1);

function placeText(place: LaminatePlace): string {
  return place.kind === 'point'
    ? `the point ${place.atMm.map(mm).join(', ')} mm of the part`
    : `the ${placeNames[place.kind]}`;
}

/** Where the drawn prediction is read: where the thermocouple sits, or the coldest place where that is not at the laminate. */
export function drawnPlaceText({ place }: OvenRunLog, { runs }: CurePrediction): string {
  const found = place.kind === 'coldest' || runs.every(({ thermocouple }) => thermocouple !== null);
  return found
    ? placeText(place)
    : `${placeText({ kind: 'coldest' })}: ${placeText(place)} is not worked out, or not at the laminate`;
}

/** The log that was fitted and what came of it. */
export function fitWorking(
  { fits, best, placeOffMm, readings }: LogFit,
  { columns, laminate, air, place, startsAfterS }: OvenRunLog,
): readonly string[] {
  const measured = columns[laminate];
  const logged = air === null ? undefined : columns[air];
  return [
    `Compared: ${readings} readings of “${measured?.name ?? ''}” with the prediction at ${placeText(place)}${placeOffMm > 0.05 ? `, whose nearest brick of laminate is ${mm(placeOffMm)} mm away` : ''}.`,
    ...(startsAfterS === 0
      ? []
      : [`The log's clock stands ${formatNumber(startsAfterS / 60, 1)} min after the oven's.`]),
    logged === undefined
      ? 'Air: none was logged, so it is taken as predicted from the program and the oven. What the oven really did goes into film and dampness.'
      : `Air: as logged in “${logged.name}”, whose sensor reads ${formatNumber(Math.abs(best.airOffsetK ?? 0), 1)} K too ${(best.airOffsetK ?? 0) < 0 ? 'low' : 'high'} by the fit; as predicted before its first and after its last reading.`,
    ...gapText(measured?.gaps.length ?? 0, 'laminate', 'nothing is compared there'),
    ...gapText(logged?.gaps.length ?? 0, 'air', 'the air runs straight there'),
    `Air film and free water are found by least squares with cells of 4 mm or more; everything else is as given above. Misfits: ${fits
      .map(({ treatment, misfitK }) => `${formatNumber(misfitK, 1)} K if ${treatmentNames[treatment]}`)
      .join(', ')}.`,
    'The dehydration rate is kept as given: a wrong one shows as a misfit.',
  ];
}

const gapText = (gaps: number, what: string, how: string) =>
  gaps === 0 ? [] : [`The log of the ${what} has ${gaps === 1 ? '1 gap' : `${gaps} gaps`}: ${how}.`];
