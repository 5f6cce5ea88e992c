/** The saved text of a project: an envelope with a format number around plain JSON. */
import { checksumAgrees, checksumReason, withChecksum } from './checksum';
import { isJsonObject } from './json';
import { currentFormat, migrate } from './migrations';
import { projectSchema, type Project } from './project';

/** How loading ended. Nothing but `ok` and `migrated` hands a project over. */
export type LoadOutcome =
  | { readonly outcome: 'ok'; readonly project: Project }
  | { readonly outcome: 'migrated'; readonly project: Project; readonly fromFormat: number }
  /** Written by a later version of this app; to be left alone. */
  | { readonly outcome: 'newer'; readonly format: number }
  | { readonly outcome: 'damaged'; readonly reason: string };

const envelopeKind = 'mold-layup-project';

export interface Envelope {
  readonly kind: typeof envelopeKind;
  readonly format: number;
  readonly project: unknown;
  readonly checksum: string;
}

function damaged(reason: string): LoadOutcome {
  return { outcome: 'damaged', reason };
}

export function sealProject(project: Project): Envelope {
  return withChecksum({ kind: envelopeKind, format: currentFormat, project } as const);
}

/** Checks an envelope that was already parsed as JSON: migrates by numbered steps, then validates every field. */
export function openEnvelope(value: unknown): LoadOutcome {
  if (!isJsonObject(value) || value['kind'] !== envelopeKind) return damaged('it is not a saved project');
  // The rule of the checksum is the same in every format, so a newer one that does not agree is damaged.
  if (!checksumAgrees(value)) return damaged(checksumReason);
  const { format, project: saved } = value;
  if (typeof format !== 'number' || !Number.isInteger(format) || format < 1) {
    return damaged('its format number is missing');
  }
  if (format > currentFormat) return { outcome: 'newer', format };
  if (!isJsonObject(saved)) return damaged('the project inside is missing');
  let current: unknown;
  try {
    current = migrate(saved, format);
  } catch (error) {
    const what = error instanceof Error ? error.message : String(error);
    return damaged(`it could not be brought from format ${format} to ${currentFormat}: ${what}`);
  }
  const checked = projectSchema.safeParse(current);
  if (!checked.success) {
    const paths = checked.error.issues.map(({ path }) => path.join('.') || 'the whole project');
    return damaged(`not as it should be: ${[...new Set(paths)].slice(0, 5).join(', ')}`);
  }
  return format === currentFormat
    ? { outcome: 'ok', project: checked.data }
    : { outcome: 'migrated', project: checked.data, fromFormat: format };
}

export function encodeProject(project: Project): string {
  return JSON.stringify(sealProject(project));
}

/** Reads a saved text; never throws. */
export function decodeProject(text: string): LoadOutcome {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return damaged('the text breaks off or was changed');
  }
  return openEnvelope(value);
}
