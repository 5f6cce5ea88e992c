/**
 * The table of everything that is worked out from a saved mesh and the inputs. Each stage needs others and has a key: the same
 * key and the same needs, the same result. What it does stands under its name in `stageWork.ts`, apart, so that a page which
 * leaves the work to a worker need not load it. Page and command walk this table by the same `evaluate`.
 */
import type { CureChoices } from '../core/cure/predictCure';
import type { MoldGeometry } from '../core/stone/moldGeometry';
import { patchBand } from '../steps/shared/band';
import { cureChoicesOf } from '../steps/cure/cureChoicesOf';
import { pourChoicesOf } from '../steps/mold/pourChoicesOf';
import { meshChoices, type Question } from './question';
import type { StageName } from './told';

export interface Stage {
  readonly needs: readonly StageName[];
  /**
   * Plain data that says what is asked; null where nothing can be asked with these inputs, which the step reports then say.
   * @param mold the halves as cast, for a stage that needs them
   */
  readonly key: (question: Question, mold: MoldGeometry | null) => unknown;
  /** What is said of it until it says more itself. */
  readonly doing?: string;
  /** Takes seconds: it waits until typing has settled, and is worth a new worker when nobody wants it any longer. */
  readonly isLong: boolean;
  /** Long, but ended sooner than a new worker has measured the part again: an outdated one runs to its end. */
  readonly endsSoon?: boolean;
  /** Its `Problem` is a result: the step reports say why it cannot be had. */
  readonly mayRefuse?: boolean;
}

/** Nothing is cast or heated along a pull that may be the wrong one. */
const isAsked = ({ part }: Question['inputs']) => part.rightWayUp === 'asked';

/** The mold is heated with the water that the cast halves hold; null where the inputs give no run. */
export function heatChoices(
  { inputs, thermocouple }: Question,
  mold: MoldGeometry | null,
): CureChoices | null {
  const choices = cureChoicesOf(inputs, mold);
  if (isAsked(inputs)) return null;
  return choices.known ? { ...choices.value, thermocouple } : null;
}

const ovenRun: Stage = {
  needs: ['part', 'halves', 'filled mold'],
  key: heatChoices,
  doing: 'filling the mold',
  isLong: true,
  endsSoon: true,
  mayRefuse: true,
};

/** In an order in which each comes after all that it needs, and what the maker looks at first comes first. */
export const stages: Readonly<Record<StageName, Stage>> = {
  part: {
    needs: [],
    key(question) {
      const { pull: _, ...choices } = meshChoices(question);
      return [question.mesh, choices];
    },
    doing: 'checking the model',
    isLong: true,
  },
  walls: { needs: ['part'], key: () => [], doing: 'measuring walls', isLong: true },
  measurement: {
    needs: ['part', 'walls'],
    key: ({ inputs }) => inputs.part.pull,
    doing: 'looking for undercuts',
    isLong: true,
  },
  places: { needs: ['part', 'measurement'], key: ({ inputs }) => patchBand(inputs), isLong: false },
  'repaired walls': { needs: ['measurement'], key: ({ inputs }) => inputs.mold.repairs, isLong: false },
  halves: {
    needs: ['part'],
    key: ({ inputs }) => (isAsked(inputs) ? null : pourChoicesOf(inputs)),
    doing: 'finding the parting',
    isLong: true,
    mayRefuse: true,
  },
  'filled mold': {
    needs: ['part'],
    key: ({ inputs }) => (isAsked(inputs) ? null : pourChoicesOf(inputs)),
    isLong: false,
    mayRefuse: true,
  },
  'oven run': ovenRun,
  'fine oven run': ovenRun,
};

export const stageNames = Object.keys(stages) as readonly StageName[];
