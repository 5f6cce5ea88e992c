import type { CurePrediction, PredictedRun } from '../../core/cure/predictCure';
import { formatNumber } from '../../core/units/formatNumber';
import { celsius, clockHours, treatmentNames } from '../../steps/cure/say';
import { DataTable } from '../../ui/DataTable';

/** When the dial and when the laminate reaches each dwell, in hours and minutes from the start. */
export function DwellTable({ prediction }: { readonly prediction: CurePrediction }) {
  const { dwells, runs } = prediction;
  return (
    <DataTable
      caption="When each dwell is reached, h:min from the start; the laminate counts from 5 K under it"
      columns={[
        {
          id: 'target',
          header: 'Dwell',
          numeric: true,
          cell: (index: number) => celsius(dwells[index]?.targetC ?? 0),
        },
        {
          id: 'dial',
          header: 'Dial',
          numeric: true,
          cell: (index: number) => clockHours(dwells[index]?.fromS ?? 0),
        },
        ...runs.map((run) => ({
          id: run.treatment,
          header: `If ${treatmentNames[run.treatment]}`,
          numeric: true,
          cell: (index: number) => {
            const atS = run.coldest.dwells[index]?.atS ?? null;
            return atS === null ? 'never' : clockHours(atS);
          },
        })),
      ]}
      rows={dwells.map((_, index) => index)}
      rowKey={(index) => String(index)}
    />
  );
}

/** The three runs beside each other. */
export function BandTable({ prediction }: { readonly prediction: CurePrediction }) {
  return (
    <DataTable
      caption="What the stone may do, and what comes of it; times in h:min"
      columns={[
        {
          id: 'name',
          header: 'The stone',
          cell: (run: PredictedRun) => capital(treatmentNames[run.treatment]),
        },
        {
          id: 'coldest',
          header: 'Coldest place',
          numeric: true,
          cell: ({ coldest }) => celsius(coldest.peakC),
        },
        {
          id: 'hottest',
          header: 'Hottest place',
          numeric: true,
          cell: ({ hottest }) => celsius(hottest.peakC),
        },
        {
          id: 'dose',
          header: 'Dose',
          numeric: true,
          cell: ({ coldest }) => (coldest.dose === null ? '–' : formatNumber(coldest.dose.total, 2)),
        },
        {
          id: 'met',
          header: 'Met at',
          numeric: true,
          cell: ({ coldest }) => hours(coldest.dose?.metAtS ?? null),
        },
        {
          id: 'dwell',
          header: 'Last dwell needed',
          numeric: true,
          cell: ({ neededDwellS }) => hours(neededDwellS),
        },
        {
          id: 'turned',
          header: 'Stone turned',
          numeric: true,
          cell: ({ crystalWaterLostPercent }) => `${formatNumber(crystalWaterLostPercent, 0)} %`,
        },
      ]}
      rows={prediction.runs}
      rowKey={({ treatment }) => treatment}
    />
  );
}

const hours = (seconds: number | null) => (seconds === null ? '–' : clockHours(seconds));
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
