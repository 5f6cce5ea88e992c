import type { Material } from '../../steps/inputs/material';
import { Button } from '../../ui/Button';

export interface MaterialLibraryProps {
  readonly cards: readonly Material[];
  /** Names of the cards in this project. */
  readonly namesHere: ReadonlySet<string>;
  readonly disabled: boolean;
  readonly onTake: (card: Material) => void;
  readonly onForget: (name: string) => void;
}

/** Rolls kept for all projects: taken into this one, or forgotten. */
export function MaterialLibrary({ cards, namesHere, disabled, onTake, onForget }: MaterialLibraryProps) {
  if (cards.length === 0)
    return <p className="quiet">No card yet. Open a card above and save it to the library.</p>;
  return (
    <ul className="library-list">
      {cards.map((card) => (
        <li key={card.name}>
          <span>
            {card.name}
            <span className="row-note">
              {card.arealWeightGsm} g/m² {card.weave}, {card.hoursOutH} h out
            </span>
          </span>
          <span className="button-row">
            <Button
              disabled={disabled}
              aria-label={`${namesHere.has(card.name) ? 'Update from the library' : 'Add to this project'}: ${card.name}`}
              onClick={() => onTake(card)}
            >
              {namesHere.has(card.name) ? 'Update here' : 'Add here'}
            </Button>
            <Button aria-label={`Forget in the library: ${card.name}`} onClick={() => onForget(card.name)}>
              Forget
            </Button>
          </span>
        </li>
      ))}
    </ul>
  );
}
