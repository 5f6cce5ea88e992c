import type { MoldGeometry } from '../core/stone/moldGeometry';
import { Problem } from '../core/problem';
import type { IndexedMesh } from '../core/mesh/types';
import type { AskName, Asks } from './asks';
import { askWork } from './askWork';
import { measureSlotsHere, type MeasureSlots, type OpenMesh } from './partStages';
import type { Question } from './question';
import type { Results } from './results';
import { stages } from './stages';
import { stageWork } from './stageWork';
import type { OnProgress, StageName, Told } from './told';

interface Kept {
  readonly key: string;
  readonly result: unknown;
}

/**
 * The open mesh with the last result of every stage. Whatever is asked, what it needs is worked out first, and nothing twice:
 * a memory that has lost everything, in a new worker, comes back by being asked.
 */
export class StageMemory {
  private open: (OpenMesh & { readonly name: string }) | null = null;
  private kept = new Map<StageName, Kept>();
  private readonly measureSlots: MeasureSlots;
  private readonly solidsWasmUrl: string | undefined;

  constructor(
    measureSlots: MeasureSlots = measureSlotsHere,
    /** Where a browser finds the solid booleans. */
    solidsWasmUrl?: string,
  ) {
    this.measureSlots = measureSlots;
    this.solidsWasmUrl = solidsWasmUrl;
  }

  /** @param name `Question.mesh` of the questions about it */
  openMesh(name: string, mesh: IndexedMesh): void {
    this.open = { name, mesh, health: null };
    this.kept.clear();
  }

  /** A memory for a what-if: it holds all that this one holds, and what it works out beside that stays its own. */
  fork(): StageMemory {
    const fork = new StageMemory(this.measureSlots, this.solidsWasmUrl);
    fork.open = this.open;
    fork.kept = new Map(this.kept);
    return fork;
  }

  /** @throws Problem `job.noMesh`, and whatever the stages throw */
  async tell<Name extends StageName>(
    name: Name,
    question: Question,
    progress: OnProgress,
  ): Promise<Told[Name]> {
    const result = await this.result(name, question, progress);
    const work: { readonly tell: (typeof stageWork)[Name]['tell'] } = stageWork[name];
    return work.tell(result, question, this.got());
  }

  /** @throws Problem `job.noMesh`, and whatever the stages and the question throw */
  async ask<Name extends AskName>(
    name: Name,
    question: Question | null,
    given: Asks[Name]['given'],
    progress: OnProgress,
  ): Promise<Asks[Name]['reply']> {
    const work: {
      readonly needs: (typeof askWork)[Name]['needs'];
      readonly answer: (typeof askWork)[Name]['answer'];
    } = askWork[name];
    for (const need of work.needs(given)) if (question !== null) await this.result(need, question, progress);
    return work.answer(given, this.got(), progress, {
      question,
      memory: this,
      solidsWasmUrl: this.solidsWasmUrl,
    });
  }

  private async result<Name extends StageName>(
    name: Name,
    question: Question,
    progress: OnProgress,
  ): Promise<Results[Name]> {
    const { open } = this;
    if (open?.name !== question.mesh)
      throw new Problem('job.noMesh', 'Import the pattern file of this project first.');
    for (const need of stages[name].needs) await this.result(need, question, progress);
    const key = this.keyOf(name, question);
    const kept = this.kept.get(name);
    if (kept?.key === key) return kept.result as Results[Name];
    const { measureSlots, solidsWasmUrl } = this;
    const host = { open, measureSlots, solidsWasmUrl, progress };
    const work: { readonly run: (typeof stageWork)[Name]['run'] } = stageWork[name];
    const result = await work.run(question, this.got(), host);
    this.kept.set(name, { key, result });
    return result;
  }

  private keyOf(name: StageName, question: Question): string {
    const { needs, key } = stages[name];
    const halves = this.kept.get('halves')?.result as Results['halves'] | undefined;
    const mold: MoldGeometry | null = needs.includes('halves') ? (halves?.geometry ?? null) : null;
    return JSON.stringify([key(question, mold), ...needs.map((need) => this.kept.get(need)?.key)]);
  }

  /** What is kept; a stage reads only what it needs, which is there by then. */
  private got(): Results {
    return Object.fromEntries(
      [...this.kept].map(([name, { result }]) => [name, result]),
    ) as unknown as Results;
  }
}
