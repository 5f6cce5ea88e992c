import type { Vec3 } from '../../core/mesh/types';
import { formatNumber } from '../../core/units/formatNumber';
import { partTable } from '../../steps/inputs/part';
import { Button } from '../../ui/Button';
import { Row } from '../../ui/Row';

const axes: readonly { readonly name: string; readonly pull: Vec3 }[] = [
  { name: '+x', pull: [1, 0, 0] },
  { name: '−x', pull: [-1, 0, 0] },
  { name: '+y', pull: [0, 1, 0] },
  { name: '−y', pull: [0, -1, 0] },
  { name: '+z', pull: [0, 0, 1] },
  { name: '−z', pull: [0, 0, -1] },
];

const along = (pull: Vec3, axis: Vec3) =>
  pull[0] * axis[0] + pull[1] * axis[1] + pull[2] * axis[2] > 1 - 1e-9;

/** "+z", or the three numbers when the pull is askew. */
export function pullName(pull: Vec3): string {
  return (
    axes.find((axis) => along(pull, axis.pull))?.name ??
    pull.map((number) => formatNumber(number, 3)).join(', ')
  );
}

export interface PullChoiceRowProps {
  readonly pull: Vec3;
  readonly disabled: boolean;
  /** The next click on the view gives the pull. */
  readonly picking: boolean;
  readonly onPull: (pull: Vec3) => void;
  readonly onPick: () => void;
  readonly onFindBest: () => void;
}

/** The direction in which the negative leaves the show face. */
export function PullChoiceRow(props: PullChoiceRowProps) {
  const { pull, disabled, picking } = props;
  return (
    <Row
      label={partTable.pull.label}
      helpLabel={'What "Pull" means'}
      help={<p>{partTable.pull.meaning}</p>}
      value={<span className="words">{pullName(pull)}</span>}
      below={
        <div className="button-row pull-buttons" role="group" aria-label="Pull">
          {axes.map((axis) => (
            <Button
              key={axis.name}
              aria-pressed={along(pull, axis.pull)}
              disabled={disabled}
              onClick={() => props.onPull(axis.pull)}
            >
              {axis.name}
            </Button>
          ))}
          <Button aria-pressed={picking} disabled={disabled} onClick={props.onPick}>
            Along a facet
          </Button>
          <Button disabled={disabled} onClick={props.onFindBest}>
            Find the best
          </Button>
          {picking ? (
            <p className="quiet" role="status">
              Click the facet on the view that faces the way the negative leaves.
            </p>
          ) : null}
        </div>
      }
    />
  );
}
