import type { Material } from '../../steps/inputs/material';

export interface MaterialSelectProps {
  readonly label: string;
  /** Keeps the focus when the row moves. */
  readonly controlName?: string;
  readonly materials: readonly Material[];
  readonly value: string;
  readonly disabled: boolean;
  readonly onChange: (materialId: string) => void;
}

/** Which card a ply or a patch is cut from; a card that is gone is said. */
export function MaterialSelect(props: MaterialSelectProps) {
  const { label, controlName, materials, value, disabled, onChange } = props;
  return (
    <select
      className="select"
      aria-label={label}
      data-control={controlName}
      value={value}
      disabled={disabled}
      onChange={(event) => onChange(event.target.value)}
    >
      {materials.some((card) => card.id === value) ? null : (
        <option value={value}>card is missing: choose one</option>
      )}
      {materials.map((card) => (
        <option key={card.id} value={card.id}>
          {card.name}
        </option>
      ))}
    </select>
  );
}
