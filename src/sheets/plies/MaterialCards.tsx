import { useState } from 'react';
import type { Material } from '../../steps/inputs/material';
import { Button } from '../../ui/Button';
import { MaterialCard } from './MaterialCard';
import { withMaterialAdded, withMaterialChanged } from './stackEdits';

export interface MaterialCardsProps {
  readonly materials: readonly Material[];
  /** Cards that a ply or patch uses; they can't be deleted. */
  readonly usedIds: ReadonlySet<string>;
  readonly disabled: boolean;
  readonly onChange: (materials: Material[]) => void;
}

/** The prepreg rolls of the project, one card each. */
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
              <span className="row-note">{cardWords(card)}</span>
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

function cardWords(card: Material): string {
  const resin = `${Math.round(card.resinMassFraction * 1000) / 10} %`;
  const caliper = card.caliperTotalMm === null ? null : card.caliperTotalMm / card.caliperPlies;
  const laid =
    caliper === null
      ? card.laidThicknessMm === null
        ? 'thickness as laid not measured'
        : `${card.laidThicknessMm} mm as laid`
      : `${Math.round(caliper * 1000) / 1000} mm as laid, measured`;
  return `${card.arealWeightGsm} g/m² ${card.weave}, resin ${resin}, ${laid}`;
}
