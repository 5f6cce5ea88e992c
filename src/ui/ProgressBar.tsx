import { useId } from 'react';
import { Button } from './Button';

export interface ProgressBarProps {
  /** In the maker's words, e.g. "measuring walls". */
  readonly doing: string;
  /** 0 to 1. */
  readonly share: number;
  readonly onCancel?: () => void;
}

/** How far a long job is, and a way to stop it. */
export function ProgressBar({ doing, share, onCancel }: ProgressBarProps) {
  const id = useId();
  const percent = Math.round(Math.min(1, Math.max(0, share)) * 100);
  return (
    <div className="progress">
      <label htmlFor={id}>
        {doing.charAt(0).toUpperCase() + doing.slice(1)} · {percent} %
      </label>
      <progress id={id} max={100} value={percent} />
      {onCancel ? <Button onClick={onCancel}>Cancel</Button> : null}
    </div>
  );
}
