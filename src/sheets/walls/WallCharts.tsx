import { useMemo } from 'react';
import { areaHistogram } from '../../core/mesh/areaHistogram';
import type { AreaShares } from '../../core/numeric/areaShares';
import { formatNumber } from '../../core/units/formatNumber';
import type { AcceptedWalls } from '../../core/laminate/acceptedWalls';
import type { StepContext } from '../../steps/shared/context';
import { Histogram } from '../../ui/charts/Histogram';
import { ShareBar } from '../../ui/charts/ShareBar';

export interface WallChartsProps {
  readonly context: StepContext;
  readonly shares: AreaShares;
  readonly band: AcceptedWalls;
  /** One wall everywhere, from the print: there is nothing to draw a histogram of. */
  readonly nominal: boolean;
}

const binCount = 40;

/** The show face by its wall: shares in and out of the band, and how much area has which wall. */
export function WallCharts({ context, shares, band, nominal }: WallChartsProps) {
  const { measured, inputs } = context;
  const { goLowMm: lowMm, goHighMm: highMm } = band;
  const byBall = inputs.walls.measure === 'ball';
  const distribution = byBall ? measured?.summary.showWallByBall : measured?.summary.showWall;
  const histogram = useMemo(() => {
    if (nominal || distribution === undefined || distribution.wallMm.length === 0) return null;
    // Wide enough to show the band whole and what lies about as far off again on either side.
    const margin = Math.max(highMm - lowMm, 0.1);
    const { wallMm, cumulativeAreaMm2 } = distribution;
    return areaHistogram(
      wallMm,
      cumulativeAreaMm2,
      Math.max(0, lowMm - margin),
      highMm + 2 * margin,
      binCount,
    );
  }, [distribution, nominal, lowMm, highMm]);
  return (
    <div className="charts">
      <ShareBar
        title="Show face by wall"
        segments={[
          { id: 'under', label: 'too thin', share: shares.under, tone: 'tight', hatch: 'cross' },
          { id: 'within', label: 'right', share: shares.within, tone: 'fits', hatch: 'none' },
          { id: 'over', label: 'too thick', share: shares.over, tone: 'loose', hatch: 'slant' },
        ]}
      />
      {histogram === null ? null : (
        <Histogram
          title="Wall of the show face"
          description={`Area of the show face by wall; ${formatNumber(100 * shares.within, 0)} % lies in the band of ${formatNumber(lowMm, 2)} to ${formatNumber(highMm, 2)} mm.`}
          histogram={histogram}
          unit="mm"
          decimals={2}
          band={{ low: lowMm, high: highMm, label: 'right' }}
        />
      )}
    </div>
  );
}
