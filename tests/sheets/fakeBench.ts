/** A bench whose answers say what was asked, and which notes it down. */
import { vi } from 'vitest';
import { Problem } from '../../src/core/problem';
import type { BenchClient, JobOptions } from '../../src/jobs/protocol';
import type { Question } from '../../src/pipeline/question';
import type { FileFacts, StageName } from '../../src/pipeline/told';
import type { DeskProject } from '../../src/sheets/measuring/deskState';
import type { PatternRecord } from '../../src/steps/shared/context';
import { questionWith, type InputChanges } from '../pipeline/support';
import { trayMold } from '../steps/contexts';

export const pattern: PatternRecord = {
  fileName: 'shell.stl',
  sha256: 'ab'.repeat(32),
  format: 'stl-binary',
  declaredUnit: null,
  triangles: 12,
  degenerateFacets: 0,
  meshKey: 'mesh-a',
  packErrorFileUnits: 0,
  notes: [],
};

export function project(changes: InputChanges = {}, of: PatternRecord | null = pattern): DeskProject {
  const { inputs } = questionWith(changes);
  return {
    pattern: of,
    inputs,
    thermocouple: null,
    packedMesh: () => (of === null ? null : `packed ${of.meshKey}`),
    setMeshAside: () => {},
  };
}

/** What of a question each stage says it was asked. */
const saysOf: Readonly<Record<StageName, ((question: Question) => string) | null>> = {
  part: ({ inputs }) => `scale ${inputs.part.scale}`,
  walls: null,
  measurement: ({ inputs }) => `scale ${inputs.part.scale} pull ${inputs.part.pull.join(' ')}`,
  places: ({ inputs }) => `void ${inputs.walls.goVoidPercent}`,
  'repaired walls': ({ inputs }) => `${inputs.mold.repairs.length} repairs`,
  halves: ({ inputs }) => `cover ${inputs.mold.coverOverShowMm}`,
  'filled mold': null,
  'oven run': ({ inputs }) => `from ${inputs.cure.startC ?? inputs.mold.roomC} °C`,
  'fine oven run': ({ inputs }) => `from ${inputs.cure.startC ?? inputs.mold.roomC} °C`,
};

/** With what the desk looks at, and no more. */
export function toldOf(name: StageName, question: Question): unknown {
  const says = saysOf[name]?.(question);
  const wallMm = Float32Array.of(question.inputs.mold.repairs.length);
  const closing = { says };
  if (name === 'measurement')
    return { health: { says }, summary: { says, closing }, maps: { kind: [], closing: { wallMm: [0] } } };
  if (name === 'repaired walls')
    return question.inputs.mold.repairs.length === 0 ? null : { closing, wallMm };
  if (name === 'halves') return { says, geometry: trayMold, findings: {} };
  if (name === 'places') return [{ says }];
  return says === undefined ? null : { says, facetCount: 12 };
}

/** What stages and questions are asked, the mesh that was opened for them, files that were read and packed. */
export function fakeBench() {
  const asked: string[] = [];
  const client = {
    openMesh: vi.fn((packed: string, meshName: string, _options?: JobOptions): Promise<void> => {
      asked.push(`open ${packed} as ${meshName}`);
      return Promise.resolve();
    }),
    importFile: vi.fn(
      (_file: Blob, fileName: string, _meshName: string, _options?: JobOptions): Promise<FileFacts> => {
        asked.push(`import ${fileName}`);
        if (fileName === 'bad.stl') return Promise.reject(new Problem('mesh.empty', 'The file is empty.'));
        const { fileName: _, meshKey: __, ...facts } = pattern;
        return Promise.resolve(facts);
      },
    ),
    packOpenMesh: vi.fn((_options?: JobOptions) => {
      asked.push('pack');
      return Promise.resolve({ meshKey: 'mesh-b', packed: 'packed mesh-b' });
    }),
    tell: vi.fn((name: StageName, question: Question, _options?: JobOptions): Promise<unknown> => {
      const says = saysOf[name]?.(question);
      asked.push(says === undefined ? name : `${name}: ${says}`);
      return Promise.resolve(toldOf(name, question));
    }),
    ask: vi.fn(
      (name: string, _question: unknown, _given: unknown, _options?: JobOptions): Promise<unknown> => {
        asked.push(name);
        return Promise.resolve(
          name === 'right way up' ? { pull: [0, 0, 1], toldBy: 'hollow' } : `the ${name}`,
        );
      },
    ),
    isSilent: () => false,
    onSilence: () => () => undefined,
    startAnew: vi.fn(),
    dispose: vi.fn(),
  };
  return { asked, mocks: client, client: client as unknown as BenchClient };
}

/** Answered only when told to, and dropped as a client drops it. */
export function held<Reply>() {
  let answer: ((reply: Reply) => void) | null = null;
  const question = (options?: JobOptions): Promise<Reply> =>
    new Promise((resolve, reject) => {
      answer = resolve;
      options?.signal?.addEventListener('abort', () => {
        const isOutdated = options.signal?.reason === 'outdated';
        reject(new Problem(isOutdated ? 'job.outdated' : 'job.canceled', 'Dropped.'));
      });
    });
  return { question, answer: (reply: Reply) => answer?.(reply) };
}
