import { createStore, type StoreApi } from 'zustand/vanilla';
import { Problem } from '../../core/problem';
import { outdatedReason, wasDropped } from '../../jobs/client';
import type { BenchClient, JobOptions } from '../../jobs/protocol';
import type { AnswerShelf } from '../../pipeline/answerShelf';
import type { AskName, Asks } from '../../pipeline/asks';
import { answerOf, askedOf, nextStage, type Answers, type RunStage } from '../../pipeline/evaluate';
import type { Question } from '../../pipeline/question';
import { stageNames, stages } from '../../pipeline/stages';
import type { StageName } from '../../pipeline/told';
import type { PatternRecord } from '../../steps/context';
import type { ProjectInputs } from '../../steps/inputs';
import { nothingKnown, type DeskProject, type DeskState } from './deskState';
import { shownOf } from './shownOf';

export interface MeasuringDesk {
  readonly store: StoreApi<DeskState>;
  readonly client: BenchClient;
  /** Tells the desk what the project is now; it works out what has changed. */
  follow(project: DeskProject): void;
  /** Resolves with the pattern and its packed mesh once it has been measured and packed; null when it was not. */
  importFile(file: File, inputs: ProjectInputs): Promise<{ pattern: PatternRecord; packed: string } | null>;
  /** A long question of the maker's, under the progress bar and its cancel; null when it was canceled or failed. */
  run<Name extends AskName>(
    doing: string,
    name: Name,
    given: Asks[Name]['given'],
  ): Promise<Asks[Name]['reply'] | null>;
  /** A short question (a cut, a probe); null when it was dropped or failed. */
  ask<Name extends AskName>(name: Name, given: Asks[Name]['given']): Promise<Asks[Name]['reply'] | null>;
  /** Ends what the progress bar shows. */
  cancel(): void;
  /** Begins again what was stopped. */
  goOn(): void;
  dispose(): void;
}

/** Typing and undo settle before a long stage starts. */
const settleMs = 250;

const goneMesh =
  'The saved mesh of this project is missing or damaged. Import the pattern file again; everything else is still here.';

/** What is done of a file before it is the project's pattern. */
const stagesOfImport = ['part', 'walls', 'measurement'] as const;

/** Imports of this session: what is imported has no other name until it is packed. */
let imports = 0;

/** What is left of a failed job as a sentence for the page. */
const sentenceOf = (error: unknown): string =>
  error instanceof Error ? error.message : `Something unexpected went wrong: ${String(error)}`;

const isCanceled = (error: unknown) => error instanceof Problem && error.code === 'job.canceled';

function questionOf({ pattern, inputs, thermocouple }: DeskProject): Question | null {
  if (pattern === null) return null;
  return { mesh: pattern.meshKey, declaredUnit: pattern.declaredUnit, inputs, thermocouple };
}

/** What is stopped holds up all that would come after it. */
const stoppedWith = (stopped: StageName | null): ReadonlySet<StageName> =>
  new Set(stopped === null ? [] : stageNames.slice(stageNames.indexOf(stopped)));

/** Keeps one open project worked out: walks the stages for its present question, one at a time. */
export function createMeasuringDesk(client: BenchClient, shelf: AnswerShelf): MeasuringDesk {
  const store = createStore<DeskState>(() => nothingKnown);
  let project: DeskProject | null = null;
  /** Name of the mesh that the worker has. */
  let openName: string | null = null;
  /** Names of meshes that were imported here, by the key under which they are saved. */
  const imported = new Map<string, string>();
  let changedAtMs = 0;
  let isWalking = false;
  let isDisposed = false;
  /** The stage in work, and what it was asked. */
  let stageInWork: { readonly name: StageName; readonly key: string; readonly own: AbortController } | null =
    null;
  /** The long question in work. */
  let asking: AbortController | null = null;
  let stoppedKey: string | null = null;

  const isPresent = (question: Question) => store.getState().question === question;

  /** Not of what was asked of a mesh that an import has taken the place of. */
  function complain(error: unknown, asked: Question | null): void {
    const isOutdated = asked !== null && asked.mesh !== store.getState().question?.mesh;
    if (!isOutdated && !wasDropped(error)) store.setState({ problem: sentenceOf(error) });
  }

  /** As the worker names the mesh. */
  const toWorker = (question: Question): Question => ({
    ...question,
    mesh: imported.get(question.mesh) ?? question.mesh,
  });
  const tell =
    (options: JobOptions): RunStage =>
    (name, question) =>
      client.tell(name, toWorker(question), options);

  /** What is known of the question is shown at once; answers to an older one go. */
  function put(question: Question | null): void {
    const before = store.getState();
    const answers = question === null ? {} : shelf.recall(question);
    const { stopped } = before;
    const isStillStopped =
      stopped !== null && question !== null && askedOf(stopped, question, answers) === stoppedKey;
    store.setState({
      question,
      answers,
      stopped: isStillStopped ? stopped : null,
      ...(question === null ? { shape: null, reply: null, lastRun: null } : shownOf(answers, before)),
    });
    if (stageInWork !== null && question !== null) {
      const { name, key, own } = stageInWork;
      if (askedOf(name, question, answers) !== key) own.abort(outdatedReason);
    }
  }

  function stop(name: StageName, question: Question): void {
    stoppedKey = askedOf(name, question, store.getState().answers);
    store.setState({ stopped: name });
  }

  async function openFor(question: Question, options: JobOptions): Promise<void> {
    const { mesh } = toWorker(question);
    if (openName === mesh) return;
    const packed = project?.packedMesh() ?? null;
    if (packed === null) throw new Problem('desk.goneMesh', goneMesh);
    // Also one that is dropped may have opened it.
    openName = null;
    await client.openMesh(packed, question.mesh, options);
    imported.delete(question.mesh);
    openName = question.mesh;
  }

  /** One stage; throws when it was dropped or has failed. */
  async function work(name: StageName, question: Question): Promise<void> {
    const { answers } = store.getState();
    const own = new AbortController();
    stageInWork = { name, key: askedOf(name, question, answers) ?? '', own };
    store.setState({ problem: null });
    const options: JobOptions = {
      signal: own.signal,
      onProgress: (progress) => {
        if (asking === null && !own.signal.aborted)
          store.setState({ progress: { ...progress, stage: name } });
      },
    };
    if (stages[name].isLong) options.onProgress?.({ doing: 'opening the saved pattern', share: 0 });
    try {
      await openFor(question, options);
      const answer = await answerOf(name, question, answers, tell(options));
      shelf.keep(name, answer);
      const present = store.getState().question;
      if (present !== null) put(present);
    } finally {
      stageInWork = null;
      if (asking === null) store.setState({ progress: null });
    }
  }

  /** Walks on while anything is asked that is not known. */
  async function walk(): Promise<void> {
    if (isWalking) return;
    isWalking = true;
    try {
      for (;;) {
        const { question, answers, stopped, importing } = store.getState();
        if (question === null || importing || isDisposed) return;
        const name = nextStage(question, answers, stoppedWith(stopped));
        if (name === null) return;
        if (stages[name].isLong) await settled();
        if (isPresent(question) && !isDisposed) await step(name, question);
      }
    } finally {
      isWalking = false;
    }
  }

  async function step(name: StageName, question: Question): Promise<void> {
    try {
      await work(name, question);
    } catch (error) {
      if (error instanceof Problem && error.code.startsWith('pack.')) project?.setMeshAside();
      if (isCanceled(error)) stop(name, question);
      else if (!wasDropped(error)) {
        store.setState({ problem: sentenceOf(error) });
        stop(name, question);
      }
    }
  }

  async function settled(): Promise<void> {
    for (;;) {
      const restMs = changedAtMs + settleMs - Date.now();
      if (restMs <= 0) return;
      await new Promise((resolve) => setTimeout(resolve, restMs));
    }
  }

  function follow(next: DeskProject): void {
    project = next;
    // What is being imported takes the place of the old pattern, or the old one is followed again at its end.
    if (store.getState().importing) return;
    changedAtMs = Date.now();
    store.setState({ incoming: null });
    put(questionOf(next));
    void walk();
  }

  async function takeFile(file: File, inputs: ProjectInputs, own: AbortController) {
    const name = `import ${(imports += 1)}`;
    const options: JobOptions = {
      signal: own.signal,
      onProgress: (progress) => {
        if (asking === own) store.setState({ progress: { ...progress, stage: null } });
      },
    };
    const facts = await client.importFile(file, file.name, name, options);
    openName = name;
    const unsaved = { fileName: file.name, ...facts };
    store.setState({ incoming: { ...unsaved, meshKey: '' }, shape: null, reply: null, lastRun: null });
    const question = { mesh: name, declaredUnit: facts.declaredUnit, inputs, thermocouple: null };
    put(question);
    for (const stage of stagesOfImport) {
      const { answers } = store.getState();
      const answer = await answerOf(stage, question, answers, tell(options));
      shelf.keep(stage, answer);
      put(question);
    }
    options.onProgress?.({ doing: 'packing the mesh for saving', share: 1 });
    const { meshKey, packed } = await client.packOpenMesh(options);
    imported.set(meshKey, name);
    keepUnder(meshKey, question);
    return { pattern: { ...unsaved, meshKey }, packed };
  }

  /** The import's answers are those of the saved mesh, which has its name only now. */
  function keepUnder(meshKey: string, question: Question): void {
    const { answers } = store.getState();
    const saved = { ...question, mesh: meshKey };
    let known: Answers = {};
    for (const stage of stagesOfImport) {
      const answer = answers[stage];
      const key = askedOf(stage, saved, known);
      if (answer === undefined || key === null) return;
      known = { ...known, [stage]: { ...answer, key } };
      shelf.keep<StageName>(stage, { ...answer, key });
    }
    put(saved);
  }

  function beginAsking(doing: string): AbortController {
    asking?.abort();
    const own = new AbortController();
    asking = own;
    store.setState({ problem: null, progress: { doing, share: 0, stage: null } });
    return own;
  }

  function endAsking(own: AbortController): void {
    if (asking !== own) return;
    asking = null;
    store.setState({ progress: null });
  }

  return {
    store,
    client,
    follow,
    async importFile(file, inputs) {
      stageInWork?.own.abort(outdatedReason);
      const own = beginAsking(`reading ${file.name}`);
      store.setState({ importing: true, importProblem: null });
      try {
        return await takeFile(file, inputs, own);
      } catch (error) {
        if (!wasDropped(error)) store.setState({ importProblem: sentenceOf(error) });
        if (asking === own && project !== null) {
          store.setState({ importing: false });
          follow(project);
        }
        return null;
      } finally {
        // What follows must not take the place of a newer import.
        if (asking === own) store.setState({ importing: false });
        endAsking(own);
        void walk();
      }
    },
    async run(doing, name, given) {
      const { question } = store.getState();
      const own = beginAsking(doing);
      try {
        const options: JobOptions = {
          signal: own.signal,
          onProgress: (progress) => {
            if (asking === own) store.setState({ progress: { ...progress, stage: null } });
          },
        };
        if (question !== null) await openFor(question, options);
        return await client.ask(name, question && toWorker(question), given, options);
      } catch (error) {
        complain(error, question);
        return null;
      } finally {
        endAsking(own);
      }
    },
    async ask(name, given) {
      const { question } = store.getState();
      try {
        if (question !== null) await openFor(question, {});
        return await client.ask(name, question && toWorker(question), given);
      } catch (error) {
        complain(error, question);
        return null;
      }
    },
    cancel() {
      (asking ?? stageInWork?.own)?.abort();
    },
    goOn() {
      store.setState({ stopped: null, problem: null });
      void walk();
    },
    dispose() {
      isDisposed = true;
      asking?.abort();
      stageInWork?.own.abort();
      client.dispose();
    },
  };
}
