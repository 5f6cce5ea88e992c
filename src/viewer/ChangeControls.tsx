import { useId } from 'react';
import { formatNumber } from '../core/units/formatNumber';
import type { PartBox } from './orbitView';
import { axisNumber } from './sectionFrame';
import type { SectionPlane } from '../core/mesh/types';

/** Across the longest side of the part, in its middle. */
export function middleSplit({ boxMinMm, boxMaxMm }: PartBox): SectionPlane {
  const sizeMm = (axis: SectionPlane['axis']) => boxMaxMm[axisNumber[axis]] - boxMinMm[axisNumber[axis]];
  const axis = (['y', 'z'] as const).reduce<SectionPlane['axis']>(
    (longest, one) => (sizeMm(one) > sizeMm(longest) ? one : longest),
    'x',
  );
  return { axis, atMm: (boxMinMm[axisNumber[axis]] + boxMaxMm[axisNumber[axis]]) / 2 };
}

/** Past both ends of the part, so that either is shown whole. */
const pastMm = 30;

export interface ChangeControlsProps {
  readonly split: SectionPlane;
  readonly box: PartBox;
  readonly onSplit: (split: SectionPlane) => void;
}

/** Where along the part the made pattern ends and the import begins. */
export function ChangeControls({ split, box, onSplit }: ChangeControlsProps) {
  const id = useId();
  const { axis, atMm } = split;
  const low = box.boxMinMm[axisNumber[axis]] - pastMm;
  const high = box.boxMaxMm[axisNumber[axis]] + pastMm;
  const at = `${axis} = ${formatNumber(atMm, 1)} mm`;
  return (
    <div className="halves-controls" role="group" aria-label="Import and pattern">
      <label htmlFor={id}>Pattern up to {at}, import past it</label>
      <input
        id={id}
        className="section-slider"
        type="range"
        min={low}
        max={high}
        step={0.1}
        value={atMm}
        aria-valuetext={at}
        onChange={(event) => onSplit({ axis, atMm: Number(event.target.value) })}
      />
    </div>
  );
}
