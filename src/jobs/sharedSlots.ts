import { measureSlotsHere, type MeasureSlots } from '../pipeline/partStages';
import type { IndexedPart } from '../pipeline/results';
import { measureTogether, type SliceHelper } from './measureTogether';
import { answeredWithin, helperSilenceMs } from './silenceWatch';
import type { WallsHelper } from './startWallsHelper';

interface HelpBounds {
  /** Up to so many facets, starting it costs more than it saves. */
  readonly over: number;
  /** From here on its copy of the part takes more room than its hands are worth once the walls are measured: it is ended. */
  readonly wallsOnlyFrom: number;
  /** Not heard of for so long, it is taken to have ended. */
  readonly silenceMs: number;
}
const usualHelp: HelpBounds = { over: 40_000, wallsOnlyFrom: 500_000, silenceMs: helperSilenceMs };

/** Measures slots with a second worker beside this one, where the part is large enough and a worker can start another. */
export function createSharedSlots(start: () => WallsHelper, help: Partial<HelpBounds> = {}): MeasureSlots {
  const { over, wallsOnlyFrom, silenceMs } = { ...usualHelp, ...help };
  let helper: WallsHelper | null = null;
  let shared: { readonly part: IndexedPart; readonly measure: Promise<SliceHelper | null> } | null = null;

  /** The part is measured on alone; the next one gets another helper. */
  function goOnAlone(part: IndexedPart): void {
    helper?.end();
    helper = null;
    shared = { part, measure: Promise.resolve(null) };
  }

  async function load(part: IndexedPart): Promise<SliceHelper | null> {
    try {
      const own = (helper ??= start());
      await answeredWithin(own.load(part.measuring.mesh), silenceMs);
      return (from, to, task) => own.measure(from, to, task);
    } catch {
      // It has no room, has failed, or a worker can start no other here.
      goOnAlone(part);
      return null;
    }
  }

  return async (part, task, onShare, meanwhile) => {
    const { facetCount } = part.bench.index;
    if (facetCount <= over) return measureSlotsHere(part, task, onShare, meanwhile);
    if (shared?.part !== part) shared = { part, measure: load(part) };
    await measureTogether(part.bench, shared.measure, task, onShare, {
      first: meanwhile,
      onSilence: () => goOnAlone(part),
      silenceMs,
    });
    if (facetCount >= wallsOnlyFrom) goOnAlone(part);
  };
}
