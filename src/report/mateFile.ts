/** The other half, from its model or its project file. */
import { basename } from 'node:path';
import { Problem } from '../core/problem';
import type { Asks } from '../pipeline/asks';
import { packPattern, readPatternFile } from '../pipeline/patternFile';
import { meshChoices } from '../pipeline/question';
import type { OnProgress } from '../pipeline/told';
import type { ProjectInputs } from '../steps/inputs/project';
import { readProjectFile } from '../workbook/projectFile';

export interface MateLoaded {
  readonly mate: NonNullable<Asks['contents']['given']['mate']>;
  /** Of its own project; null for a model alone, which is taken to be cast like this half. */
  readonly inputs: ProjectInputs | null;
}

/**
 * A model is read in the unit of this half.
 * @throws Problem for a file that cannot be used
 */
export async function loadMate(
  path: string,
  bytes: Uint8Array<ArrayBuffer>,
  own: ProjectInputs,
  body: number | null,
  onProgress: OnProgress,
): Promise<MateLoaded> {
  if (bytes[0] === 0x7b) {
    const file = readProjectFile(new TextDecoder().decode(bytes));
    const name = basename(path);
    if ('message' in file) throw new Problem('file.project', `--mate ${name}: ${file.message}`);
    const { inputs, pattern } = file.project;
    if (file.packedMesh === null || pattern === null)
      throw new Problem(
        'fit.noMate',
        `--mate ${name}: the project has no model. Import one there, and save it again.`,
      );
    const part = meshChoices({ inputs, declaredUnit: pattern.declaredUnit });
    return { mate: { packed: file.packedMesh, part: { ...part, body: body ?? part.body } }, inputs };
  }
  const { facts, canonical } = await readPatternFile(bytes, basename(path), onProgress);
  const part = {
    ...meshChoices({ inputs: own, declaredUnit: facts.declaredUnit }),
    body: body ?? 0,
    scale: 1,
  };
  return { mate: { packed: packPattern(canonical).packed, part }, inputs: null };
}
