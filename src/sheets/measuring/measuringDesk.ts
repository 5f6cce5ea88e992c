import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Patch } from '../../core/mesh/types';
import { Problem } from '../../core/problem';
import { wasDropped } from '../../jobs/client';
import type { BenchClient, JobOptions, MeasuredShape, RepairedWalls } from '../../jobs/protocol';
import { pourChoicesOf } from '../../steps/mold/pourChoicesOf';
import { patchBand } from '../../steps/band';
import type { PatternRecord } from '../../steps/context';
import type { ProjectInputs } from '../../steps/inputs';
import { createCastingHalves } from './castingHalves';
import { createDeskJobs, sentenceOf } from './deskJobs';
import { nothingKnown, type DeskProject, type DeskState } from './deskState';
import type { MeasureCache } from './measureCache';
import { measureChoices, measureQuestion } from './measureQuestion';
import { measuredPart } from './measuredPart';
import { withRepairedWalls } from './repairedReply';
import { doAhead, madeUpPattern, type WorkAhead } from './workAhead';

export interface MeasuringDesk {
  readonly store: StoreApi<DeskState>;
  readonly client: BenchClient;
  /** Tells the desk what the project is now; it measures what has changed after a short pause. */
  follow(project: DeskProject): void;
  /** Resolves with the pattern and its packed mesh once it has been measured and packed; null when it was not. */
  importFile(file: File, inputs: ProjectInputs): Promise<{ pattern: PatternRecord; packed: string } | null>;
  /** Runs one more long job under the same progress and cancel; null when it was canceled or failed. */
  run<Reply>(doing: string, job: (options: JobOptions) => Promise<Reply>): Promise<Reply | null>;
  /** Waits for a short question (a cut, a probe); null when it was dropped or failed. */
  ask<Reply>(question: Promise<Reply>): Promise<Reply | null>;
  cancel(): void;
  measureAgain(): void;
  castAgain(): void;
  dispose(): void;
}

/** Typing and undo settle before a new measurement starts. */
const settleMs = 250;

const goneMesh =
  'The saved mesh of this project is missing or damaged. Import the pattern file again; everything else is still here.';

/** What the walls are with the repairs of the stone; the same text, the same answer. */
interface Repaired {
  readonly key: string;
  readonly walls: RepairedWalls;
}

/** What the patches answer: the measurement and the band they were looked for in. */
const patchQuestionOf = (measured: string, inputs: ProjectInputs): string =>
  `${measured} ${JSON.stringify(patchBand(inputs))}`;

/**
 * Keeps one open project measured: opens its saved mesh, measures when what goes in has changed (an older question
 * is dropped), then finds the patches for the present band, corrects the walls by the repairs of the stone and casts the
 * two halves.
 */
export function createMeasuringDesk(
  client: BenchClient,
  cache: MeasureCache,
  workAhead: WorkAhead | null = null,
): MeasuringDesk {
  const store = createStore<DeskState>(() => nothingKnown);
  let project: DeskProject | null = null;
  let question: string | null = null;
  let openMeshKey: string | null = null;
  /** The question that the worker's own measurement answers. */
  let workerQuestion: string | null = null;
  let patchQuestion: string | null = null;
  /** What was measured, before any repair, and its patches. */
  let taken: { readonly reply: MeasuredShape; readonly patches: readonly Patch[] | null } | null = null;
  let repaired: Repaired | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** Imports begun so far. */
  let imports = 0;
  let gotReady = false;

  const jobs = createDeskJobs((change) => store.setState(change));

  const casting = createCastingHalves(client, (doing) => jobs.begin(doing), {
    now: store.getState,
    tell: (state) => store.setState(state),
  });

  const repairsKey = (of: string) => `${of} ${JSON.stringify(project?.inputs.mold.repairs ?? [])}`;

  function repairsAwaited(): boolean {
    const isRepaired = repaired !== null || (project?.inputs.mold.repairs.length ?? 0) > 0;
    return question !== null && isRepaired && repaired?.key !== repairsKey(question);
  }

  function take(answered: string, reply: MeasuredShape, patches: readonly Patch[] | null): void {
    if (question !== answered) return;
    taken = { reply, patches };
    const shown = repaired?.key === repairsKey(answered) ? withRepairedWalls(reply, repaired.walls) : reply;
    store.setState({
      shape: shown.shape,
      reply: shown,
      measured: measuredPart(shown, patches),
      repairsAwaited: repairsAwaited(),
    });
  }

  async function prepare(pattern: PatternRecord, inputs: ProjectInputs, reply: MeasuredShape): Promise<void> {
    if (workAhead !== null) await doAhead(workAhead, pattern, inputs, reply);
  }

  /** Whoever has no pattern yet is about to bring one: worker and page go through it on a made-up part. */
  async function getReady(inputs: ProjectInputs): Promise<void> {
    try {
      const rehearsed = await client.getReady();
      const isIdle = project?.pattern === null && jobs.isIdle();
      if (rehearsed !== null && isIdle) await prepare(madeUpPattern, inputs, rehearsed);
    } catch {
      // It would go wrong again when it matters, and be told of then.
    }
  }

  async function findRepairedWalls(): Promise<void> {
    if (project === null || question === null || taken === null || workerQuestion !== question) return;
    const answered = question;
    const key = repairsKey(answered);
    const { repairs } = project.inputs.mold;
    if (repaired?.key === key || (repaired === null && repairs.length === 0)) return;
    try {
      const walls = repairs.length === 0 ? null : await client.repairedWalls(repairs);
      if (repairsKey(answered) !== key) return;
      repaired = walls === null ? null : { key, walls };
      take(answered, taken.reply, taken.patches);
    } catch (error) {
      if (!wasDropped(error)) store.setState({ problem: sentenceOf(error) });
    }
  }

  /** What follows from the measurement that the worker holds. */
  async function followUp(): Promise<void> {
    await findPatches();
    await findRepairedWalls();
    const isFree = jobs.isIdle() || casting.isBusy();
    if (question !== null && workerQuestion === question && isFree) await casting.cast();
  }

  async function findPatches(): Promise<void> {
    if (project === null || question === null || taken === null || workerQuestion !== question) return;
    const { reply } = taken;
    const band = patchBand(project.inputs);
    const answered = question;
    const wanted = patchQuestionOf(answered, project.inputs);
    if (patchQuestion === wanted) return;
    patchQuestion = wanted;
    take(answered, reply, null);
    try {
      const patches = await client.findPatches(band);
      // The band may have changed meanwhile, and the next search not have started yet.
      if (patchQuestion === wanted) take(answered, reply, patches);
    } catch (error) {
      if (patchQuestion === wanted) patchQuestion = null;
      if (!wasDropped(error)) store.setState({ problem: sentenceOf(error) });
    }
  }

  async function measure(): Promise<void> {
    if (project === null || project.pattern === null || question === null || workerQuestion === question)
      return;
    const { pattern, inputs, packedMesh, setMeshAside } = project;
    const wanted = question;
    const job = jobs.begin('opening the saved pattern');
    try {
      if (openMeshKey !== pattern.meshKey) {
        const packed = packedMesh();
        if (packed === null) {
          store.setState({ problem: goneMesh });
          return;
        }
        await client.openMesh(packed, job);
        openMeshKey = pattern.meshKey;
      }
      const reply = await client.measure(measureChoices(inputs, pattern.declaredUnit), {
        ...job,
        onShape: (shape) => store.setState({ shape }),
      });
      workerQuestion = wanted;
      cache.put(wanted, reply);
      await prepare(pattern, inputs, reply);
      take(wanted, reply, null);
    } catch (error) {
      if (error instanceof Problem && error.code.startsWith('pack.')) setMeshAside();
      job.fail(error);
    } finally {
      job.end();
    }
    if (question === wanted && workerQuestion !== wanted && jobs.isIdle()) store.setState({ stopped: true });
    await followUp();
  }

  function later(work: () => Promise<void>): void {
    clearTimeout(timer);
    timer = setTimeout(() => void work(), settleMs);
  }

  function follow(next: DeskProject): void {
    project = next;
    // What is being imported takes the place of the old pattern, or the old one is followed again at its end.
    if (store.getState().importing) return;
    const { pattern, inputs } = next;
    const asked = pattern
      ? measureQuestion(pattern.meshKey, measureChoices(inputs, pattern.declaredUnit))
      : null;
    casting.want(asked, pourChoicesOf(inputs));
    if (asked === null) {
      question = null;
      taken = null;
      store.setState({ ...nothingKnown, importProblem: store.getState().importProblem });
      if (!gotReady) void getReady(inputs);
      gotReady = true;
      return;
    }
    if (asked !== question) {
      question = asked;
      patchQuestion = null;
      taken = null;
      store.setState({ incoming: null, measured: null });
      const kept = cache.get(asked);
      if (kept !== null) take(asked, kept, null);
    }
    // Places found, or still looked for, in another band would contradict the verdict beside them.
    if (patchQuestion !== null && patchQuestion !== patchQuestionOf(asked, inputs)) {
      patchQuestion = null;
      if (taken?.patches) take(asked, taken.reply, null);
    }
    store.setState({ repairsAwaited: repairsAwaited() });
    later(workerQuestion === asked ? followUp : measure);
  }

  return {
    store,
    client,
    follow,
    async importFile(file, inputs) {
      clearTimeout(timer);
      const own = ++imports;
      store.setState({ importing: true, importProblem: null });
      const job = jobs.begin(`reading ${file.name}`);
      let isTaken = false;
      try {
        const facts = await client.importFile(file, file.name, job);
        openMeshKey = null;
        workerQuestion = null;
        const unsaved = { fileName: file.name, ...facts };
        const { progress } = store.getState();
        store.setState({ ...nothingKnown, progress, importing: true, incoming: { ...unsaved, meshKey: '' } });
        const choices = measureChoices(inputs, facts.declaredUnit);
        const reply = await client.measure(choices, {
          ...job,
          onShape: (shape) => store.setState({ shape }),
        });
        question = measureQuestion('', choices);
        await prepare({ ...unsaved, meshKey: '' }, inputs, reply);
        take(question, reply, null);
        job.onProgress({ doing: 'packing the mesh for saving', share: 1 });
        const { meshKey, packed } = await client.packOpenMesh(job);
        openMeshKey = meshKey;
        workerQuestion = measureQuestion(meshKey, choices);
        cache.put(workerQuestion, reply);
        isTaken = true;
        return { pattern: { ...unsaved, meshKey }, packed };
      } catch (error) {
        if (!wasDropped(error)) store.setState({ importProblem: sentenceOf(error) });
        return null;
      } finally {
        job.end();
        // What follows must not take the job away from a newer import.
        const isLast = own === imports;
        if (isLast) store.setState({ importing: false });
        if (isLast && !isTaken && project !== null) {
          question = null;
          openMeshKey = null;
          workerQuestion = null;
          store.setState({ incoming: null });
          follow(project);
        }
      }
    },
    async run(doing, work) {
      const job = jobs.begin(doing);
      try {
        return await work(job);
      } catch (error) {
        job.fail(error);
        return null;
      } finally {
        job.end();
        // A casting that had to give way goes on.
        if (jobs.isIdle()) void followUp();
      }
    },
    async ask(asked) {
      try {
        return await asked;
      } catch (error) {
        if (!wasDropped(error)) store.setState({ problem: sentenceOf(error) });
        return null;
      }
    },
    cancel() {
      jobs.cancel();
    },
    measureAgain() {
      workerQuestion = null;
      patchQuestion = null;
      void measure();
    },
    castAgain() {
      void casting.castAgain();
    },
    dispose() {
      clearTimeout(timer);
      jobs.cancel();
      client.dispose();
    },
  };
}
