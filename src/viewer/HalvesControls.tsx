import { useId } from 'react';
import { formatNumber } from '../core/units/formatNumber';
import { Button } from '../ui/Button';
import type { StoneView } from './scene/sceneMessages';

export interface HalvesControlsProps {
  readonly stone: StoneView;
  /** As far as the halves go. */
  readonly mostApartMm: number;
  readonly onStone: (stone: StoneView) => void;
}

const shown = [
  ['negative', 'Negative'],
  ['pattern', 'Pattern'],
  ['positive', 'Positive'],
] as const;

/** What is shown of the mold, and how far it is pulled apart. */
export function HalvesControls({ stone, mostApartMm, onStone }: HalvesControlsProps) {
  const id = useId();
  return (
    <div className="halves-controls" role="group" aria-label="Mold">
      <div className="button-row">
        {shown.map(([name, label]) => (
          <Button
            key={name}
            aria-pressed={stone.shows[name]}
            onClick={() => onStone({ ...stone, shows: { ...stone.shows, [name]: !stone.shows[name] } })}
          >
            {label}
          </Button>
        ))}
      </div>
      <label htmlFor={id}>Pulled apart by {formatNumber(stone.apartMm, 0)} mm each</label>
      <input
        id={id}
        className="section-slider"
        type="range"
        min={0}
        max={mostApartMm}
        step={1}
        value={stone.apartMm}
        aria-valuetext={`${formatNumber(stone.apartMm, 0)} mm`}
        onChange={(event) => onStone({ ...stone, apartMm: Number(event.target.value) })}
      />
    </div>
  );
}
