import { useState } from 'react';
import { bedPointTable, type BedPoints } from '../../steps/inputs/clamp';
import type { Material } from '../../steps/inputs/material';
import { Button } from '../../ui/Button';
import { NumberField } from '../../ui/NumberField';

const fields = [
  ['lightKpa', 'Light weight over the area'],
  ['lightPlyMm', 'One ply under the light weight'],
  ['heavyKpa', 'Heavy weight over the area'],
  ['heavyPlyMm', 'One ply under the heavy weight'],
] as const;

type Readings = Readonly<Record<(typeof fields)[number][0], number | null>>;

const unread: Readings = { lightKpa: null, lightPlyMm: null, heavyKpa: null, heavyPlyMm: null };

export interface MeasuredBedsProps {
  /** Cards of the stack. */
  readonly materials: readonly Material[];
  readonly bedPoints: readonly BedPoints[];
  readonly disabled: boolean;
  readonly onChange: (bedPoints: BedPoints[]) => void;
}

/** The maker's own fiber-bed curves: an offcut stack under two weights, for each material. */
export function MeasuredBeds({ materials, bedPoints, disabled, onChange }: MeasuredBedsProps) {
  return materials.map((card) => {
    const points = bedPoints.find(({ materialId }) => materialId === card.id) ?? null;
    const others = bedPoints.filter(({ materialId }) => materialId !== card.id);
    return (
      <MeasuredBed
        key={card.id}
        name={card.name}
        points={points}
        disabled={disabled}
        onPoints={(next) => onChange(next === null ? others : [...others, { materialId: card.id, ...next }])}
      />
    );
  });
}

interface MeasuredBedProps {
  readonly name: string;
  /** null while the usual curve is in use. */
  readonly points: BedPoints | null;
  readonly disabled: boolean;
  readonly onPoints: (points: Omit<BedPoints, 'materialId'> | null) => void;
}

/** Nothing counts before all four readings are in: a curve of half-guessed numbers would pass for a measured one. */
function MeasuredBed({ name, points, disabled, onPoints }: MeasuredBedProps) {
  const [draft, setDraft] = useState<Readings | null>(null);
  const readings = points ?? draft;
  if (readings === null)
    return (
      <div className="button-row measured-bed">
        <Button
          disabled={disabled}
          aria-label={`Enter two measured points of ${name}`}
          onClick={() => setDraft(unread)}
        >
          Enter two measured points
        </Button>
        <span className="quiet">{name}: a stack of offcuts pressed under two weights</span>
      </div>
    );
  const set = (change: Partial<Readings>) => {
    const next = { ...readings, ...change };
    const { lightKpa, lightPlyMm, heavyKpa, heavyPlyMm } = next;
    if (lightKpa === null || lightPlyMm === null || heavyKpa === null || heavyPlyMm === null) setDraft(next);
    else onPoints({ lightKpa, lightPlyMm, heavyKpa, heavyPlyMm });
  };
  return (
    <section className="measured-bed" aria-label={`Measured fiber bed of ${name}`}>
      <p className="row-note">
        {name}, a stack of offcuts pressed under two weights
        {points === null ? '; used as soon as all four readings are in' : ''}
      </p>
      {fields.map(([field, label]) => (
        <NumberField
          key={field}
          spec={{ ...bedPointTable[field], label }}
          value={readings[field]}
          {...(points === null ? { emptyWord: 'none' } : {})}
          disabled={disabled}
          onChange={(value) => set({ [field]: value })}
        />
      ))}
      <div className="button-row">
        <Button
          disabled={disabled}
          onClick={() => {
            setDraft(null);
            if (points !== null) onPoints(null);
          }}
        >
          Back to the usual curve
        </Button>
      </div>
    </section>
  );
}
