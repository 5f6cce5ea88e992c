import { useId } from 'react';
import type { Section, SectionPlane } from '../core/mesh/types';
import { formatNumber } from '../core/units/formatNumber';
import { Button } from '../ui/Button';
import { SectionDrawing } from '../ui/charts/SectionDrawing';
import { DataTable } from '../ui/DataTable';
import { NumberField } from '../ui/NumberField';
import type { PartBox } from './orbitView';
import { axisNumber, planeAxes } from './sectionFrame';

export interface SectionControlsProps extends PartBox {
  readonly plane: SectionPlane;
  /** The cut that was asked for last; null while it is being made. */
  readonly section: Section | null;
  readonly onPlane: (plane: SectionPlane) => void;
}

const stepMm = 0.1;
const toStep = (mm: number) => Math.round(mm / stepMm) * stepMm;

/** The middle of the part across an axis, where a cut starts. */
export function middleCut(axis: SectionPlane['axis'], { boxMinMm, boxMaxMm }: PartBox): SectionPlane {
  const i = axisNumber[axis];
  return { axis, atMm: Number(toStep((boxMinMm[i] + boxMaxMm[i]) / 2).toFixed(1)) };
}

/** Where to cut, and the cut itself with its walls, as a drawing and as a table. */
export function SectionControls({ plane, section, boxMinMm, boxMaxMm, onPlane }: SectionControlsProps) {
  const id = useId();
  const axis = axisNumber[plane.axis];
  const low = boxMinMm[axis];
  const high = boxMaxMm[axis];
  const [across, up] = planeAxes[plane.axis];
  return (
    <section className="section-controls" aria-label="Cut">
      <div className="button-row" role="group" aria-label="Cut across">
        {(['x', 'y', 'z'] as const).map((name) => (
          <Button
            key={name}
            aria-pressed={plane.axis === name}
            onClick={() => onPlane(middleCut(name, { boxMinMm, boxMaxMm }))}
          >
            across {name}
          </Button>
        ))}
      </div>
      <label htmlFor={id} className="visually-hidden">
        {`Position of the cut along ${plane.axis}, mm`}
      </label>
      <input
        id={id}
        className="section-slider"
        type="range"
        min={low}
        max={high}
        step={stepMm}
        value={plane.atMm}
        aria-valuetext={`${formatNumber(plane.atMm, 1)} mm`}
        onChange={(event) => onPlane({ ...plane, atMm: Number(Number(event.target.value).toFixed(1)) })}
      />
      <NumberField
        spec={{
          label: `Cut at ${plane.axis}`,
          meaning: `Where the part is cut across ${plane.axis}, counted as in the pattern file after scaling.`,
          unit: 'mm',
          min: low,
          max: high,
          decimals: 1,
        }}
        value={plane.atMm}
        onChange={(atMm) => {
          if (atMm !== null) onPlane({ ...plane, atMm });
        }}
      />
      {section === null ? (
        <p className="places-note">Cutting…</p>
      ) : (
        <>
          <SectionDrawing section={section} across={across} up={up} />
          {section.walls.length === 0 ? null : (
            <DataTable
              caption="Walls along this cut"
              columns={[
                {
                  id: 'at',
                  header: `at ${across}, ${up} mm`,
                  cell: ({ fromMm }) => fromMm.map((mm) => formatNumber(mm, 1)).join(', '),
                },
                {
                  id: 'wall',
                  header: 'wall mm',
                  numeric: true,
                  cell: ({ wallMm }) => formatNumber(wallMm, 2),
                },
              ]}
              rows={section.walls}
              rowKey={({ fromMm, toMm }) => `${fromMm.join()} ${toMm.join()}`}
            />
          )}
        </>
      )}
    </section>
  );
}
