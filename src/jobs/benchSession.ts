import { meshKey } from '../core/mesh/meshKey';
import { Problem } from '../core/problem';
import type { AskName, Asks } from '../pipeline/asks';
import type { MeasureSlots } from '../pipeline/partStages';
import { openPacked, packPattern, readPatternFile, type PackedMesh } from '../pipeline/patternFile';
import type { Question } from '../pipeline/question';
import { StageMemory } from '../pipeline/stageMemory';
import type { OnProgress, StageName } from '../pipeline/told';
import type { BenchWorker } from './protocol';

/** The bench itself, on whatever thread: the open mesh, and the memory of its stages. */
export class BenchSession implements BenchWorker {
  private readonly memory: StageMemory;
  /** Packs the open mesh. */
  private pack: (() => PackedMesh) | null = null;
  private packed: PackedMesh | null = null;

  /** @param solidsWasmUrl where a browser finds the solid booleans */
  constructor(measureSlots?: MeasureSlots, solidsWasmUrl?: string) {
    this.memory = new StageMemory(measureSlots, solidsWasmUrl);
  }

  async importFile(file: Blob, fileName: string, meshName: string, progress: OnProgress) {
    progress('reading the file', 0);
    const bytes = new Uint8Array(await file.arrayBuffer());
    const { facts, canonical } = await readPatternFile(bytes, fileName, progress);
    this.memory.openMesh(meshName, canonical.mesh);
    this.pack = () => packPattern(canonical);
    this.packed = null;
    return facts;
  }

  async packOpenMesh() {
    if (this.pack === null) throw new Problem('job.noMesh', 'Import the pattern file of this project first.');
    this.packed ??= this.pack();
    return this.packed;
  }

  async openMesh(packed: string, meshName: string) {
    this.memory.openMesh(meshName, await openPacked(packed));
    this.pack = () => ({ packed, meshKey: meshKey(packed) });
    this.packed = null;
  }

  tell<Name extends StageName>(name: Name, question: Question, progress: OnProgress) {
    return this.memory.tell(name, question, progress);
  }

  ask<Name extends AskName>(
    name: Name,
    question: Question | null,
    given: Asks[Name]['given'],
    progress: OnProgress,
  ) {
    return this.memory.ask(name, question, given, progress);
  }
}
