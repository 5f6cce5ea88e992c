/** Parts opened in a memory of stages, and questions about them. */
import type { IndexedMesh } from '../../src/core/mesh/types';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import type { AskName, Asks } from '../../src/pipeline/asks';
import { readPatternFile } from '../../src/pipeline/patternFile';
import type { Question } from '../../src/pipeline/question';
import { StageMemory } from '../../src/pipeline/stageMemory';
import type { MeasureReply, PartShape, StageName, Told } from '../../src/pipeline/told';
import type { ProjectInputs } from '../../src/steps/inputs/project';
import { inputsWith } from '../steps/contexts';
import { tray } from '../support/meshes';

export const ignore = (): void => undefined;

/** Open along +z, so the negative leaves downward; few facets, and cast and heated in a moment. */
export const smallTray = tray([40, 30, 10], 1.5, 3);

export type InputChanges = { readonly [Step in keyof ProjectInputs]?: Partial<ProjectInputs[Step]> };

/** About a part in mm that is pulled along +z unless said. */
export function questionWith({ part, pattern, mold, ...steps }: InputChanges = {}): Question {
  const inputs = inputsWith({
    ...steps,
    part: { unit: 'mm', ...part },
    ...(mold !== undefined && { moldInputs: mold }),
    ...(pattern !== undefined && { patternInputs: pattern }),
  });
  return { mesh: 'the mesh', declaredUnit: null, inputs, thermocouple: null };
}

/** The small tray pulled off its open side, in bricks so large that the oven run takes no time worth saving. */
export const trayQuestion = (changes: InputChanges = {}): Question =>
  questionWith({
    ...changes,
    part: { pull: [0, 0, -1], ...changes.part },
    cure: { voxelMm: 8, ...changes.cure },
  });

/** As an import leaves it: in its saved form, and nothing worked out. */
export async function memoryOf(mesh: IndexedMesh): Promise<StageMemory> {
  const memory = new StageMemory();
  const { canonical } = await readPatternFile(new Uint8Array(writeStlBinary(mesh)), 'part.stl', ignore);
  memory.openMesh('the mesh', canonical.mesh);
  return memory;
}

/** A part in a memory of its own, and how to ask about it. */
export async function openPart(mesh: IndexedMesh, question: Question = questionWith()) {
  const memory = await memoryOf(mesh);
  return {
    memory,
    question,
    tell: <Name extends StageName>(name: Name, asked = question): Promise<Told[Name]> =>
      memory.tell(name, asked, ignore),
    ask: <Name extends AskName>(name: Name, given: Asks[Name]['given']): Promise<Asks[Name]['reply']> =>
      memory.ask(name, question, given, ignore),
  };
}
export type OpenPart = Awaited<ReturnType<typeof openPart>>;

/** An open part with its shape and measurement. */
export async function measuredPart(
  mesh: IndexedMesh,
  question?: Question,
): Promise<OpenPart & { readonly shape: PartShape; readonly reply: MeasureReply }> {
  const part = await openPart(mesh, question);
  return { ...part, shape: await part.tell('part'), reply: await part.tell('measurement') };
}
