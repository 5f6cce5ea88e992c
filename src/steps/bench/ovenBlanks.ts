/** What is read in the oven, and on the finished part. */
import { around, upperCase, within, type BlankDraft, type Known } from './blank';

export function ovenBlanks({ context, number, band }: Known): readonly BlankDraft[] {
  const { supplierCures } = context.inputs.cure;
  return [
    {
      id: 'ovenPeak',
      phase: 'oven',
      label: 'hottest at the laminate',
      unit: '°C',
      decimals: 0,
      path: 'bench.laminatePeakC',
      expected: number('cure.coldest.peakC'),
      band: band('cure.coldest.peakC'),
      figures: [],
      verdicts: [],
      isOnCard: true,
    },
    // Without a cure of the supplier's there is nothing to hold it against.
    { ...held(number, band), isAsked: supplierCures.length > 0 },
  ];
}

const inMinutes = (seconds: number) => seconds / 60;

function held(number: Known['number'], band: Known['band']): BlankDraft {
  const needed = number('cure.neededDwellS');
  const reach = band('cure.coldest.timeAtDwellS');
  const expected = number('cure.coldest.timeAtDwellS');
  return {
    id: 'held',
    phase: 'oven',
    label: 'laminate within 5 K of the last dwell for',
    unit: 'min',
    decimals: 0,
    path: 'bench.laminateHeldMin',
    expected: needed === null ? (expected === null ? null : inMinutes(expected)) : inMinutes(needed),
    band: reach === null ? null : [inMinutes(reach[0]), Math.max(inMinutes(reach[1]), 1)],
    figures: [],
    verdicts: [],
    isOnCard: true,
  };
}

const one = (
  blank: Pick<BlankDraft, 'id' | 'label' | 'unit' | 'decimals' | 'path' | 'expected' | 'band'>,
): BlankDraft => ({
  ...blank,
  phase: 'finish',
  figures: [],
  verdicts: [],
});

export function finishBlanks({ context, number }: Known): readonly BlankDraft[] {
  const { sizeToleranceMm } = context.inputs.mold;
  const wanted = context.measured?.summary;
  const lengths = (['x', 'y'] as const).map((axis, at) => {
    const drawnMm = wanted === undefined ? null : (wanted.boxMaxMm[at] ?? 0) - (wanted.boxMinMm[at] ?? 0);
    const wantedMm = context.inputs.mold.wanted[`${axis}Mm`] ?? drawnMm;
    return one({
      id: `finished.${axis}`,
      label: `finished along ${axis}`,
      unit: 'mm',
      decimals: 2,
      path: `bench.finished${upperCase[axis]}Mm`,
      expected: wantedMm,
      band: within(wantedMm, sizeToleranceMm),
    });
  });
  const wallMm = number('plies.moldedThicknessMm');
  const lowMm = number('walls.bandLowMm');
  const highMm = number('walls.bandHighMm');
  const massG = number('plies.partMassG');
  return [
    ...lengths,
    one({
      id: 'finished.wall',
      label: 'finished wall, typical place',
      unit: 'mm',
      decimals: 2,
      path: 'bench.finishedWallMm',
      expected:
        wallMm !== null && lowMm !== null && highMm !== null && wallMm >= lowMm && wallMm <= highMm
          ? wallMm
          : null,
      band: lowMm === null || highMm === null ? null : [lowMm, highMm],
    }),
    one({
      id: 'finished.mass',
      label: 'finished part on the scale',
      unit: 'g',
      decimals: 1,
      path: 'bench.finishedMassG',
      expected: massG,
      band: around(massG, 0.05),
    }),
  ];
}
