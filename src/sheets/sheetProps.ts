/** What every sheet is given. Sheets hold no state of the project: props in, callbacks out. */
import type { ReactNode } from 'react';
import type { StepReport } from '../core/figure';
import type { StepContext } from '../steps/shared/context';
import type { ProjectInputs } from '../steps/inputs/project';
import type { CardKind } from '../workbook/shelfKinds';

/** Changes some inputs of one step; one call is one step of undo. */
export type ChangeInputs = <StepId extends keyof ProjectInputs>(
  step: StepId,
  change: Partial<ProjectInputs[StepId]>,
) => void;

/** The control by which one kind of card fills the group that it stands at. */
export type FromShelf = (kind: CardKind) => ReactNode;

export interface SheetProps {
  readonly context: StepContext;
  readonly report: StepReport;
  /** Another tab holds the project, or it can't be saved: inputs are off. */
  readonly readOnly: boolean;
  readonly change: ChangeInputs;
  /** What of this sheet comes from cards of the shelf; left out, there is no shelf. */
  readonly fromShelf?: FromShelf;
}
