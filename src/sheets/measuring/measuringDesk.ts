import { createStore, type StoreApi } from 'zustand/vanilla';
import { Problem } from '../../core/problem';
import { outdatedReason, wasDropped } from '../../jobs/client';
import type { BenchClient, JobOptions } from '../../jobs/protocol';
import type { AnswerShelf } from '../../pipeline/answerShelf';
import type { AskName, Asks } from '../../pipeline/asks';
import { answerOf, askedOf, nextStage, type Answers, type RunStage } from '../../pipeline/evaluate';
import type { Question } from '../../pipeline/question';
import { stages } from '../../pipeline/stages';
import type { StageName } from '../../pipeline/told';
import type { PatternRecord } from '../../steps/shared/context';
import type { ProjectInputs } from '../../steps/inputs/project';
import {
  isCanceled,
  nothingShown,
  questionOf,
  sentenceOf,
  stoppedWith,
  type StageInWork,
} from './deskQuestion';
import { nothingKnown, type DeskProject, type DeskState } from './deskState';
import { shownOf } from './shownOf';

/** Typing and undo settle before a long stage starts. */
const settleMs = 250;

const goneMesh =
  'The saved mesh of this project is missing or damaged. Import the pattern file again; everything else is still here.';

interface ImportedPattern {
  readonly pattern: PatternRecord;
  readonly packed: string;
  /** By its shape where that tells, else as it was given. */
  readonly pull: ProjectInputs['part']['pull'];
  readonly rightWayUp: ProjectInputs['part']['rightWayUp'];
}

/** A model from outside may lie any way up; one that was made along the pull keeps it. */
export type PullOfImport = 'by its shape' | 'as given';

/** What is done of a file before it is the project's pattern. */
const stagesOfImport = ['part', 'walls', 'measurement'] as const;

/** Imports of this session: what is imported has no other name until it is packed. */
let imports = 0;

/** Keeps one open project worked out: walks the stages for its present question, one at a time. */
export class MeasuringDesk {
  readonly store: StoreApi<DeskState> = createStore<DeskState>(() => nothingKnown);
  readonly client: BenchClient;
  private readonly shelf: AnswerShelf;
  private project: DeskProject | null = null;
  /** Name of the mesh that the worker has. */
  private openName: string | null = null;
  /** Names of meshes that were imported here, by the key under which they are saved. */
  private readonly imported = new Map<string, string>();
  private changedAtMs = 0;
  private isWalking = false;
  private isDisposed = false;
  private stageInWork: StageInWork | null = null;
  /** The maker's own long question in work. */
  private asking: AbortController | null = null;
  private stoppedKey: string | null = null;

  constructor(client: BenchClient, shelf: AnswerShelf) {
    this.client = client;
    this.shelf = shelf;
  }

  /** Tells the desk what the project is now; it works out what has changed. */
  follow(project: DeskProject): void {
    this.project = project;
    // What is being imported takes the place of the old pattern, or the old one is followed again at its end.
    if (this.store.getState().importing) return;
    this.changedAtMs = Date.now();
    this.store.setState({ incoming: null });
    this.put(questionOf(project));
    void this.walk();
  }

  /**
   * Resolves with the pattern, its packed mesh and the pull that it was measured along once it has been measured and packed;
   * null when it was not.
   */
  async importFile(
    file: File,
    inputs: ProjectInputs,
    pullOfImport: PullOfImport = 'by its shape',
  ): Promise<ImportedPattern | null> {
    this.stageInWork?.own.abort(outdatedReason);
    const own = this.beginAsking(`reading ${file.name}`);
    this.store.setState({ importing: true, importProblem: null });
    let taken: ImportedPattern | null = null;
    try {
      taken = await this.takeFile(file, inputs, pullOfImport, own);
    } catch (error) {
      if (!wasDropped(error)) this.store.setState({ importProblem: sentenceOf(error) });
    }
    // What follows must not take the place of a newer import.
    if (this.asking !== own) return taken;
    this.endAsking(own);
    this.store.setState({ importing: false });
    if (taken === null && this.project !== null) this.follow(this.project);
    return taken;
  }

  /** A long question of the maker's, under the progress bar and its cancel; null when it was canceled or failed. */
  async run<Name extends AskName>(
    doing: string,
    name: Name,
    given: Asks[Name]['given'],
  ): Promise<Asks[Name]['reply'] | null> {
    const own = this.beginAsking(doing);
    try {
      return await this.answerTo(name, given, this.askingOptions(own));
    } finally {
      this.endAsking(own);
    }
  }

  /** A short question (a cut, a probe); null when it was dropped or failed. */
  ask<Name extends AskName>(name: Name, given: Asks[Name]['given']): Promise<Asks[Name]['reply'] | null> {
    return this.answerTo(name, given, {});
  }

  /** Ends what the progress bar shows. */
  cancel(): void {
    (this.asking ?? this.stageInWork?.own)?.abort();
  }

  /** Begins again what was stopped. */
  goOn(): void {
    this.store.setState({ stopped: null, problem: null });
    void this.walk();
  }

  dispose(): void {
    this.isDisposed = true;
    this.asking?.abort();
    this.stageInWork?.own.abort();
    this.client.dispose();
  }

  /** What is known of the question is shown at once; answers to an older one go. */
  private put(question: Question | null): void {
    const before = this.store.getState();
    const answers = question === null ? {} : this.shelf.recall(question);
    const { stopped } = before;
    const isStillStopped =
      stopped !== null && question !== null && askedOf(stopped, question, answers) === this.stoppedKey;
    this.store.setState({
      question,
      answers,
      stopped: isStillStopped ? stopped : null,
      ...(question === null ? nothingShown : shownOf(answers, before)),
    });
    if (this.stageInWork === null || question === null) return;
    const { name, key, own } = this.stageInWork;
    if (askedOf(name, question, answers) !== key) own.abort(outdatedReason);
  }

  /** Walks on while anything is asked that is not known. */
  private async walk(): Promise<void> {
    if (this.isWalking) return;
    this.isWalking = true;
    try {
      for (;;) {
        const { question, answers, stopped, importing } = this.store.getState();
        if (question === null || importing || this.isDisposed) return;
        const name = nextStage(question, answers, stoppedWith(stopped));
        if (name === null) return;
        if (stages[name].isLong) await this.settled();
        const isPresent = this.store.getState().question === question;
        if (isPresent && !this.isDisposed) await this.step(name, question);
      }
    } finally {
      this.isWalking = false;
    }
  }

  private async settled(): Promise<void> {
    for (;;) {
      const restMs = this.changedAtMs + settleMs - Date.now();
      if (restMs <= 0) return;
      await new Promise((resolve) => setTimeout(resolve, restMs));
    }
  }

  private async step(name: StageName, question: Question): Promise<void> {
    const key = askedOf(name, question, this.store.getState().answers);
    const own = new AbortController();
    this.stageInWork = { name, key, own };
    try {
      await this.work(name, question, own);
    } catch (error) {
      if (error instanceof Problem && error.code.startsWith('pack.')) this.project?.setMeshAside();
      if (!wasDropped(error)) this.store.setState({ problem: sentenceOf(error) });
      if (!wasDropped(error) || isCanceled(error)) {
        this.stoppedKey = key;
        this.store.setState({ stopped: name });
      }
    } finally {
      this.stageInWork = null;
      if (this.asking === null) this.store.setState({ progress: null });
    }
  }

  private async work(name: StageName, question: Question, own: AbortController): Promise<void> {
    const options: JobOptions = {
      signal: own.signal,
      onProgress: (progress) => {
        if (this.asking === null && !own.signal.aborted)
          this.store.setState({ progress: { ...progress, stage: name } });
      },
    };
    this.store.setState({ problem: null });
    await this.openFor(question, options);
    const { doing } = stages[name];
    if (doing !== undefined) options.onProgress?.({ doing, share: 0 });
    const { answers } = this.store.getState();
    this.shelf.keep(name, await answerOf(name, question, answers, this.tell(options)));
    const present = this.store.getState().question;
    if (present !== null) this.put(present);
  }

  private async takeFile(
    file: File,
    inputs: ProjectInputs,
    pullOfImport: PullOfImport,
    own: AbortController,
  ) {
    const name = `import ${(imports += 1)}`;
    const options = this.askingOptions(own);
    const facts = await this.client.importFile(file, file.name, name, options);
    this.openName = name;
    const unsaved = { fileName: file.name, ...facts };
    this.store.setState({ incoming: { ...unsaved, meshKey: '' }, ...nothingShown });
    const asGiven = { mesh: name, declaredUnit: facts.declaredUnit, inputs, thermocouple: null };
    const part = pullOfImport === 'as given' ? inputs.part : await this.partRightWayUp(asGiven, options);
    const question = { ...asGiven, inputs: { ...inputs, part } };
    this.put(question);
    for (const stage of stagesOfImport) {
      const { answers } = this.store.getState();
      this.shelf.keep(stage, await answerOf(stage, question, answers, this.tell(options)));
      this.put(question);
    }
    options.onProgress?.({ doing: 'packing the mesh for saving', share: 1 });
    const { meshKey, packed } = await this.client.packOpenMesh(options);
    this.imported.set(meshKey, name);
    this.keepUnder(meshKey, question);
    return { pattern: { ...unsaved, meshKey }, packed, pull: part.pull, rightWayUp: part.rightWayUp };
  }

  /** With the pull that the shape tells; else the maker is asked. */
  private async partRightWayUp(asGiven: Question, options: JobOptions): Promise<ProjectInputs['part']> {
    const { pull, toldBy } = await this.client.ask('right way up', this.toWorker(asGiven), null, options);
    const { part } = asGiven.inputs;
    return toldBy === null
      ? { ...part, rightWayUp: 'asked' }
      : { ...part, rightWayUp: 'settled', pull: [pull[0], pull[1], pull[2]] };
  }

  /** The import's answers are those of the saved mesh, which has its name only now. */
  private keepUnder(meshKey: string, question: Question): void {
    const { answers } = this.store.getState();
    const saved = { ...question, mesh: meshKey };
    let known: Answers = {};
    for (const stage of stagesOfImport) {
      const answer = answers[stage];
      const key = askedOf(stage, saved, known);
      if (answer === undefined || key === null) return;
      known = { ...known, [stage]: { ...answer, key } };
      this.shelf.keep<StageName>(stage, { ...answer, key });
    }
    this.put(saved);
  }

  private async answerTo<Name extends AskName>(
    name: Name,
    given: Asks[Name]['given'],
    options: JobOptions,
  ): Promise<Asks[Name]['reply'] | null> {
    const { question } = this.store.getState();
    try {
      if (question !== null) await this.openFor(question, options);
      return await this.client.ask(name, question && this.toWorker(question), given, options);
    } catch (error) {
      // Not of what was asked of a mesh that an import has taken the place of.
      const isOutdated = question !== null && question.mesh !== this.store.getState().question?.mesh;
      if (!isOutdated && !wasDropped(error)) this.store.setState({ problem: sentenceOf(error) });
      return null;
    }
  }

  /** As the worker names the mesh. */
  private toWorker(question: Question): Question {
    return { ...question, mesh: this.imported.get(question.mesh) ?? question.mesh };
  }

  private tell(options: JobOptions): RunStage {
    return (name, question) => this.client.tell(name, this.toWorker(question), options);
  }

  private async openFor(question: Question, options: JobOptions): Promise<void> {
    if (this.openName === this.toWorker(question).mesh) return;
    const packed = this.project?.packedMesh() ?? null;
    if (packed === null) throw new Problem('desk.goneMesh', goneMesh);
    options.onProgress?.({ doing: 'opening the saved pattern', share: 0 });
    // Also one that is dropped may have opened it.
    this.openName = null;
    await this.client.openMesh(packed, question.mesh, options);
    this.imported.delete(question.mesh);
    this.openName = question.mesh;
  }

  private beginAsking(doing: string): AbortController {
    this.asking?.abort();
    const own = new AbortController();
    this.asking = own;
    this.store.setState({ problem: null, progress: { doing, share: 0, stage: null } });
    return own;
  }

  private askingOptions(own: AbortController): JobOptions {
    return {
      signal: own.signal,
      onProgress: (progress) => {
        if (this.asking === own) this.store.setState({ progress: { ...progress, stage: null } });
      },
    };
  }

  private endAsking(own: AbortController): void {
    if (this.asking !== own) return;
    this.asking = null;
    this.store.setState({ progress: null });
  }
}
