import { highestC, valueAt } from '../../core/cure/curve';
import type { HeatAtPoint } from '../../core/cure/heatFields';
import type { OvenProgram } from '../../core/cure/ovenProgram';
import type { Vec3 } from '../../core/mesh/types';
import { formatNumber } from '../../core/units/formatNumber';
import { celsius } from '../../steps/cure/say';
import { Button } from '../../ui/Button';
import { NumberCell } from '../../ui/NumberCell';
import type { PartBox } from '../../viewer/orbitView';
import { HeatCurves } from './HeatCurves';

/** A point of the heated mold, and its temperature over the run. */
export interface HeatPoint {
  /** In the part's own axes. */
  readonly pointMm: Vec3;
  /** It is the coldest place of the laminate, which stands here until another point is chosen. */
  readonly isColdest: boolean;
  /** null where the mold has nothing: outside of it, or in a corner that is rounded away. */
  readonly heat: HeatAtPoint | null;
}

export interface HeatPointReadoutProps {
  readonly point: HeatPoint;
  /** The whole mold, in the part's own axes. */
  readonly box: PartBox;
  readonly program: OvenProgram;
  readonly timeS: number;
  /** null goes back to the coldest place. */
  readonly onPoint: (pointMm: Vec3 | null) => void;
}

const fillNames = {
  laminate: 'laminate',
  negative: "the negative's stone",
  positive: "the positive's stone",
} as const;

const axisNames = ['x', 'y', 'z'] as const;

/** One point of the mold over the whole run; clicked on the cut, or given by its coordinates. */
export function HeatPointReadout({ point, box, program, timeS, onPoint }: HeatPointReadoutProps) {
  const { pointMm, isColdest, heat } = point;
  const place = `${pointMm.map((mm) => formatNumber(mm, 1)).join(', ')} mm`;
  return (
    <figure className="heat-point">
      <div className="heat-coordinates" role="group" aria-label="Point that is told, in the part's own axes">
        {axisNames.map((name, axis) => (
          <label key={name}>
            {name}
            <NumberCell
              label={`Point at ${name}`}
              limits={{ unit: 'mm', min: box.boxMinMm[axis]!, max: box.boxMaxMm[axis]!, decimals: 1 }}
              value={pointMm[axis]!}
              onChange={(mm) => {
                if (mm !== null)
                  onPoint(pointMm.map((at, other) => (other === axis ? mm : at)) as unknown as Vec3);
              }}
            />
          </label>
        ))}
        <Button aria-pressed={isColdest} onClick={() => onPoint(null)}>
          coldest place
        </Button>
      </div>
      <figcaption aria-live="polite">
        {heat === null
          ? `At ${place} there is neither stone nor laminate: the mold does not reach there.`
          : `At ${place}, in ${fillNames[heat.fill]}: ${celsius(valueAt(heat.curve, timeS))} now, ${celsius(highestC(heat.curve))} at most (estimate).`}{' '}
        Click the cut, or give the coordinates, for another point.
      </figcaption>
      {heat === null ? null : (
        <HeatCurves
          program={program}
          prediction={null}
          logs={[
            { name: 'point', label: isColdest ? 'At the coldest place' : 'At the point', curve: heat.curve },
          ]}
          nowS={timeS}
        />
      )}
    </figure>
  );
}
