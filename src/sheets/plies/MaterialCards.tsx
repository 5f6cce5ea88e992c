import { useState } from 'react';
import { materialSpecs, type Material } from '../../steps/plies/inputs';
import { Button } from '../../ui/Button';
import { ChoiceField } from '../../ui/ChoiceField';
import { NumberField } from '../../ui/NumberField';
import { TextField } from '../../ui/TextField';
import { withMaterialAdded, withMaterialChanged } from './stackEdits';

const weaves = [
  { value: 'woven', label: 'woven' },
  { value: 'unidirectional', label: 'unidirectional' },
  { value: 'non-crimp', label: 'non-crimp' },
] as const;

const requiredFields = [
  'arealWeightGsm',
  'resinMassFraction',
  'fiberDensityGCm3',
  'resinDensityGCm3',
] as const;

export interface MaterialCardsProps {
  readonly materials: readonly Material[];
  /** Cards that a ply of the stack uses; they can't be deleted. */
  readonly usedIds: ReadonlySet<string>;
  readonly disabled: boolean;
  readonly onChange: (materials: Material[]) => void;
}

/** The prepreg rolls at hand, one card each. */
export function MaterialCards({ materials, usedIds, disabled, onChange }: MaterialCardsProps) {
  const [openId, setOpenId] = useState<string | null>(null);
  return (
    <div className="cards">
      {materials.map((card) => (
        <section key={card.id} className="card" aria-label={card.name}>
          <div className="card-head">
            <Button
              aria-expanded={openId === card.id}
              onClick={() => setOpenId(openId === card.id ? null : card.id)}
            >
              {openId === card.id ? 'Close' : 'Edit'}
            </Button>
            <span>
              <strong>{card.name}</strong>
              <span className="row-note">
                {card.arealWeightGsm} g/m² {card.weave}, resin{' '}
                {Math.round(card.resinMassFraction * 1000) / 10} %,{' '}
                {card.laidThicknessMm === null
                  ? 'thickness as laid not measured'
                  : `${card.laidThicknessMm} mm as laid`}
              </span>
            </span>
          </div>
          {openId === card.id ? (
            <MaterialCard
              card={card}
              used={usedIds.has(card.id)}
              disabled={disabled}
              onChange={(change) => onChange(withMaterialChanged(materials, card.id, change))}
              onDuplicate={() => onChange(withMaterialAdded(materials, card))}
              onDelete={() => onChange(materials.filter((other) => other.id !== card.id))}
            />
          ) : null}
        </section>
      ))}
      <div className="button-row">
        <Button disabled={disabled} onClick={() => onChange(withMaterialAdded(materials, null))}>
          Add card
        </Button>
      </div>
    </div>
  );
}

interface MaterialCardProps {
  readonly card: Material;
  readonly used: boolean;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<Material>) => void;
  readonly onDuplicate: () => void;
  readonly onDelete: () => void;
}

function MaterialCard({ card, used, disabled, onChange, onDuplicate, onDelete }: MaterialCardProps) {
  return (
    <>
      <TextField
        label="Name"
        value={card.name}
        disabled={disabled}
        check={(text) => (text.trim() === '' ? 'A card needs a name.' : null)}
        onChange={(name) => onChange({ name: name.trim() })}
      />
      <ChoiceField
        label="Kind of fabric"
        meaning="How the fibers lie: crossing over and under, all one way, or stitched layers."
        choices={weaves}
        value={card.weave}
        disabled={disabled}
        onChange={(weave) => onChange({ weave })}
      />
      {requiredFields.map((field) => (
        <NumberField
          key={field}
          spec={materialSpecs[field]}
          value={card[field]}
          disabled={disabled}
          onChange={(value) => {
            if (value !== null) onChange({ [field]: value });
          }}
        />
      ))}
      <NumberField
        spec={materialSpecs.laidThicknessMm}
        value={card.laidThicknessMm}
        note={card.laidThicknessMm === null ? 'taken from the bulk factor' : 'measured'}
        emptyWord="none"
        disabled={disabled}
        onChange={(laidThicknessMm) => onChange({ laidThicknessMm })}
      />
      <div className="button-row card-foot">
        <Button disabled={disabled} onClick={onDuplicate}>
          Duplicate card
        </Button>
        <Button kind="danger" disabled={disabled || used} onClick={onDelete}>
          Delete card
        </Button>
        {used ? <span className="quiet">In use by the stack, so it can't be deleted.</span> : null}
      </div>
    </>
  );
}
