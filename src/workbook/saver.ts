/** Writes changed projects after a short pause, and keeps those that could not be written. */
import type { Project } from './project';
import type { WriteOutcome } from './records';

/** Long enough to take a burst of typing together, short enough that a closed lid loses nothing. */
export const savePauseMs = 300;

export interface SaverOptions {
  readonly write: (project: Project) => WriteOutcome;
  /** The pause is over: whoever owns the saver calls `flush` and tidies up after it. */
  readonly onDue: () => void;
  /** Called whenever `status` may have changed. */
  readonly onStatus: () => void;
}

export type SaverStatus = 'saved' | 'saving' | 'full' | 'denied';

export function createSaver({ write, onDue, onStatus }: SaverOptions) {
  const unsaved = new Map<string, Project>();
  let failure: 'full' | 'denied' | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;

  function flush(): void {
    clearTimeout(timer);
    timer = undefined;
    failure = null;
    for (const [id, project] of unsaved) {
      const outcome = write(project);
      if (outcome === 'saved') unsaved.delete(id);
      else failure = outcome;
    }
    onStatus();
  }

  return {
    /** Takes the newest version of a project; it is written after the pause. */
    mark(project: Project): void {
      unsaved.set(project.id, project);
      clearTimeout(timer);
      timer = setTimeout(onDue, savePauseMs);
      onStatus();
    },
    /** Tries everything that is waiting, now. */
    flush,
    /** The version that storage does not have yet. */
    waiting: (id: string): Project | undefined => unsaved.get(id),
    allWaiting: (): Iterable<Project> => unsaved.values(),
    /** Drops what waits for a project that is being deleted. */
    forget(id: string): void {
      unsaved.delete(id);
      if (unsaved.size > 0) return;
      clearTimeout(timer);
      timer = undefined;
      failure = null;
      onStatus();
    },
    /** A failure stays visible until a write succeeds. */
    status: (): SaverStatus => failure ?? (unsaved.size > 0 ? 'saving' : 'saved'),
  };
}
