import type { FitInputs } from '../../steps/inputs/fit';
import type { Project } from '../../workbook';
import type { ListedProject } from '../../workbook/state';

export interface MateFound {
  /** null where none is chosen, or it cannot be compared; `why` tells. */
  readonly listed: ListedProject | null;
  /** Why the chosen one cannot be compared, for the maker; null when nothing is wrong. */
  readonly why: string | null;
}

/**
 * The project that is kept as the other half: by its id, whatever it is called by now; a project that was opened from a file under
 * another id, by its name within the enclosure.
 */
export function mateOf(
  kept: FitInputs['mate'],
  { id, enclosure }: Pick<Project, 'id' | 'enclosure'>,
  projects: readonly ListedProject[],
): MateFound {
  if (kept === null) return { listed: null, why: null };
  const others = projects.filter((one) => one.id !== id);
  const listed =
    others.find((one) => one.id === kept.projectId) ??
    others.find((one) => one.enclosure === enclosure && one.name === kept.name) ??
    null;
  if (listed === null)
    return {
      listed,
      why: `${kept.name}, the other half, is not in this browser: it was deleted, or its file was not opened here.`,
    };
  if (listed.condition !== 'ok') return { listed, why: `${listed.name}, the other half, cannot be read.` };
  if (listed.meshKey === null) return { listed, why: `${listed.name}, the other half, has no model yet.` };
  return { listed, why: null };
}

/** What the maker may choose among, the chosen one always with them; value is the project's id. */
export function mateChoices(
  kept: FitInputs['mate'],
  own: Pick<Project, 'id' | 'enclosure'>,
  projects: readonly ListedProject[],
): {
  readonly choices: readonly { readonly value: string; readonly label: string }[];
  readonly chosen: string;
} {
  const { listed } = mateOf(kept, own, projects);
  const offered = projects.filter(
    (one) =>
      one.id === listed?.id || (one.enclosure === own.enclosure && one.id !== own.id && one.meshKey !== null),
  );
  const choices = offered.map((one) => ({
    value: one.id,
    label: one.enclosure === own.enclosure ? one.name : `${one.enclosure}, ${one.name}`,
  }));
  if (kept === null) return { choices, chosen: '' };
  if (listed !== null) return { choices, chosen: listed.id };
  const gone = { value: kept.projectId, label: `${kept.name}, not here` };
  return { choices: [...choices, gone], chosen: kept.projectId };
}
