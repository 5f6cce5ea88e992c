import { closingHistogram } from '../core/closing/closingHistogram';
import { closingSamples } from '../core/closing/closingSamples';
import { repairedSamples } from '../core/closing/repairedSamples';
import type { DehydrationTreatment } from '../core/cure/dehydration';
import type { CanonicalMesh } from '../core/mesh/canonicalMesh';
import { buildAdjacency } from '../core/mesh/adjacency';
import { bestPull } from '../core/mesh/bestPull';
import { drawnFacets } from '../core/mesh/drawnFacets';
import { findHealth } from '../core/mesh/health';
import { wholePart, type WholePart } from '../core/mesh/enclosedVolume';
import { facetSurroundings, measurePart, unitVector, type FacetSurroundings } from '../core/mesh/measure';
import { partFromSaved, type PartInMm } from '../core/part/measureSaved';
import { meshKey } from '../core/mesh/meshKey';
import { packMesh, preparePack, unpackMesh } from '../core/mesh/pack';
import { findPatches } from '../core/mesh/patches';
import { readPattern } from '../core/part/preparePattern';
import { childrenOf } from '../core/mesh/refineForMeasuring';
import { cutSection } from '../core/mesh/section';
import { findSelfTouching } from '../core/mesh/selfTouching';
import { summarize } from '../core/part/summary';
import { buildSurfaceIndex, type SurfaceIndex } from '../core/mesh/surfaceIndex';
import type { IndexedMesh, MeshHealth, Measurement, Vec3 } from '../core/mesh/types';
import type { LengthUnit } from '../core/units/length';
import { Problem } from '../core/problem';
import type { PourChoices } from '../core/stone/pours/pourChoices';
import { rimOfPart } from '../core/stone/pours/rimOfPart';
import type { Repair } from '../core/stone/repairs';
import { CureBench } from './cureBench';
import { findingFacetsOfPart } from './findingFacets';
import { hashOf } from './hashOf';
import { measureTogether } from './measureTogether';
import { answeredWithin, helperSilenceMs } from './silenceWatch';
import { probePart } from './probePart';
import type {
  BenchWorker,
  CureChoices,
  CurePrediction,
  HeatCutQuestion,
  LogToFit,
  MeasureChoices,
  MeasuredShape,
  OnProgress,
  PackReply,
  PartShape,
  PatchBand,
  SectionPlane,
  StoneHalf,
} from './protocol';
import { PoursBench } from './poursBench';
import { makeReady, type ReadyPart } from './readyPart';
import type { WallsHelper } from './startWallsHelper';

/** Facets of the parts that a second worker helps with. */
interface HelpBounds {
  /** Up to here, starting it costs more than it saves. */
  readonly over: number;
  /** From here on its copy of the part takes more room than its hands are worth once the walls are measured: it is ended. */
  readonly wallsOnlyFrom: number;
  /** Not heard of for so long, it is taken to have ended. */
  readonly silenceMs: number;
}
const usualHelp: HelpBounds = { over: 40_000, wallsOnlyFrom: 500_000, silenceMs: helperSilenceMs };

/** Told by `isWanted` whether to go on; see rehearsal.ts. */
type Rehearsal = (isWanted: () => boolean) => Promise<MeasuredShape | null>;

/** Stands for a health that is still being found out. */
const nothingKnown = findHealth({ positions: new Float64Array(0), facets: new Uint32Array(0) });

/** The mesh that is open: as imported, or as saved. */
interface OpenMesh {
  readonly mesh: IndexedMesh;
  /** Null for a saved mesh, which is packed already. */
  readonly canonical: CanonicalMesh | null;
  packed: string | null;
  health: MeshHealth | null;
}

/** The part that is on the bench. */
interface OpenPart extends Omit<ReadyPart, 'helper'> {
  readonly key: string;
  readonly part: PartInMm;
  wallsDone: boolean;
  helper: ReadyPart['helper'];
  /** What needs no walls: worked out while the helper measures the first of them. */
  known: { readonly whole: WholePart; readonly surroundings: FacetSurroundings } | null;
}

/** Same key, same part of the open mesh. */
const keyOf = (unit: LengthUnit, { body, scale, winding }: MeasureChoices) =>
  JSON.stringify([unit, body, scale, winding]);

/**
 * The bench itself: holds the open mesh and its last measurement, and answers for them. A plain class: the worker
 * offers it over messages, tests and other hosts call it on their own thread, and both get the same values.
 * An import that fails leaves the mesh that was open before.
 */
export class BenchSession implements BenchWorker {
  private open: OpenMesh | null = null;
  private part: OpenPart | null = null;
  private measurement: Measurement | null = null;
  private helper: WallsHelper | null = null;
  private readonly startHelper: (() => WallsHelper) | null;
  private readonly help: HelpBounds;
  private readonly rehearse: Rehearsal;
  private isIdle = true;
  private readonly pours: PoursBench;
  private readonly cure = new CureBench();

  /**
   * `startHelper` starts a second worker that shares the work on parts within `help`; `solidsWasmUrl` is where a browser
   * finds the solid booleans; `rehearse` is done while nothing is asked yet, and stops when told that something is.
   */
  constructor(
    startHelper: (() => WallsHelper) | null = null,
    help: Partial<HelpBounds> = {},
    solidsWasmUrl?: string,
    rehearse: Rehearsal = () => Promise.resolve(null),
  ) {
    this.startHelper = startHelper;
    this.help = { ...usualHelp, ...help };
    this.pours = new PoursBench(solidsWasmUrl);
    this.rehearse = rehearse;
  }

  async getReady() {
    return this.rehearse(() => this.isIdle);
  }

  async importFile(file: Blob, fileName: string, progress: OnProgress) {
    this.isIdle = false;
    progress({ doing: 'reading the file', share: 0 });
    await preparePack();
    const bytes = new Uint8Array(await file.arrayBuffer());
    const hash = hashOf(bytes);
    const { canonical, ...facts } = readPattern(bytes, fileName, (doing, share) =>
      progress({ doing, share }),
    );
    this.put({ mesh: canonical.mesh, canonical, packed: null, health: null });
    return { ...facts, sha256: await hash, packErrorFileUnits: canonical.errorFileUnits };
  }

  async packOpenMesh(): Promise<PackReply> {
    const open = this.opened();
    if (open.packed === null) {
      if (open.canonical === null) throw new Error('a mesh that is not packed was imported');
      open.packed = packMesh(open.canonical);
    }
    return { packed: open.packed, meshKey: meshKey(open.packed) };
  }

  async openMesh(packed: string) {
    this.isIdle = false;
    await preparePack();
    this.put({ mesh: unpackMesh(packed), canonical: null, packed, health: null });
  }

  async measure(choices: MeasureChoices, progress: OnProgress, onShape: (shape: PartShape) => void) {
    const open = this.opened();
    const pull = unitVector(choices.pull);
    progress({ doing: 'checking the model', share: 0 });
    const opened = await this.openPart(open, choices, onShape);
    const { part, measuring, basis, bench } = opened;

    const withWalls = !opened.wallsDone;
    let doing = withWalls ? 'measuring walls' : 'looking for what would lock';
    progress({ doing, share: 0.1 });
    const lookAround = () => {
      const { mesh } = measuring;
      if (opened.known === null) {
        const surroundings = facetSurroundings(
          mesh,
          buildAdjacency(mesh),
          basis === null ? {} : { corners: basis.cornersOfChildren, convexRadiusMm: basis.convexOfChildren },
        );
        const whole = wholePart(part.partMesh, part.health.watertight || surroundings.closed);
        opened.known = { whole, surroundings };
      }
      return opened.known;
    };
    const helper = await opened.helper;
    // One that has not taken the part is started anew for the next.
    if (helper === null) this.endHelper(opened);
    await measureTogether(
      bench,
      helper,
      pull,
      withWalls,
      (share) => progress({ doing, share: 0.1 + 0.75 * share }),
      {
        first: lookAround,
        silenceMs: this.help.silenceMs,
        onSilence: () => {
          this.endHelper(opened);
          doing += ', alone since the second worker fell silent';
        },
      },
    );
    opened.wallsDone = true;
    if (bench.index.facetCount >= this.help.wallsOnlyFrom) this.endHelper(opened);
    const { whole, surroundings } = lookAround();
    const measurement = measurePart(measuring.mesh, pull, {
      surroundings,
      walls: bench,
      reach: bench.reach,
      onProgress: (step, share) => progress({ doing: step, share: 0.85 + 0.1 * share }),
    });
    // The bench writes its reach anew for the next pull; this measurement keeps its own.
    bench.reach = new Uint8Array(measurement.facetCount);
    this.measurement = measurement;
    progress({ doing: 'summing up', share: 0.95 });
    const drawn = basis ? drawnFacets(basis, measurement) : measurement;
    const faces = closingSamples(measuring.mesh, measurement);
    const summary = summarize(part.partMesh, part.health, measurement, drawn, faces, whole);
    const { areaMm2, wallMm, pullCosine, armUMm, armVMm } = faces;
    progress({ doing: 'summing up', share: 1 });
    // Copies, since what is sent from a worker is gone here, and probes and patches still need it.
    return {
      health: structuredClone(part.health),
      findingFacets: findingFacetsOfPart(part.health, choices.body, measuring.split),
      summary,
      maps: {
        rayWallMm: measurement.rayWallMm.slice(),
        ballWallMm: measurement.ballWallMm.slice(),
        draftDeg: measurement.draftDeg.slice(),
        cornerRadiusMm: measurement.cornerRadiusMm.slice(),
        kind: measurement.kind.slice(),
        closing: { areaMm2, wallMm, pullCosine, armUMm, armVMm },
      },
    };
  }

  async findPatches(band: PatchBand) {
    const { measuring, measurement } = this.measured();
    return findPatches(measuring.mesh, measurement, band);
  }

  async cut(plane: SectionPlane) {
    const { measuring, measurement } = this.measured();
    return cutSection(measuring.mesh, measurement, plane);
  }

  async probe(originMm: Vec3, direction: Vec3) {
    const { bench, measurement } = this.measured();
    return probePart(bench.index, measurement, originMm, direction);
  }

  async bestPull(progress: OnProgress) {
    const { part } = this.measured();
    return bestPull(part.partMesh, this.drawnIndex(), (share) => progress({ doing: 'trying pulls', share }));
  }

  async findSelfTouching(progress: OnProgress) {
    const { part, measuring } = this.measured();
    progress({ doing: 'looking for faces that touch', share: 0 });
    const found = findSelfTouching(this.drawnIndex(), part.partMesh);
    return { facetCount: found.length, facets: childrenOf(measuring.split, found) };
  }

  async castHalves(choices: PourChoices, progress: OnProgress) {
    return this.pours.cast(this.measured().part.partMesh, choices, progress);
  }

  async predictCure(choices: CureChoices, stage: CurePrediction['stage'], progress: OnProgress) {
    return this.cure.predict(this.measured().part.partMesh, choices, stage, progress);
  }

  async compareCure(choices: CureChoices, mostC: number, progress: OnProgress) {
    return this.cure.compare(this.measured().part.partMesh, choices, mostC, progress);
  }

  async heatCut(question: HeatCutQuestion) {
    return this.cure.cut(question);
  }

  async heatAt(treatment: DehydrationTreatment, pointMm: Vec3) {
    return this.cure.at(treatment, pointMm);
  }

  async fitCure(choices: CureChoices, log: LogToFit, progress: OnProgress) {
    return this.cure.fit(this.measured().part.partMesh, choices, log, progress);
  }

  async saveHalf(half: StoneHalf, choices: PourChoices, progress: OnProgress) {
    return this.pours.save(half, this.measured().part.partMesh, choices, progress);
  }

  async repairedWalls(repairs: readonly Repair[]) {
    const { measuring, measurement } = this.measured();
    const samples = repairedSamples(closingSamples(measuring.mesh, measurement), measurement, repairs);
    return { closing: closingHistogram(samples, measurement.centerMm), wallMm: samples.wallMm };
  }

  async rimOf(packed: string, part: MeasureChoices, pours: PourChoices) {
    await preparePack();
    const mesh = unpackMesh(packed);
    return rimOfPart(partFromSaved(mesh, findHealth(mesh), part).partMesh, pours);
  }

  /** Of the part as drawn: what is told of the drawn facets is asked of them, as the headless command does. */
  private drawnIndex(): SurfaceIndex {
    const { part, measuring, bench } = this.measured();
    return measuring.split === null ? bench.index : buildSurfaceIndex(part.partMesh);
  }

  private put(open: OpenMesh): void {
    this.open = open;
    this.part = null;
    this.measurement = null;
    this.pours.forget();
    this.cure.forget();
    // Started now, it is ready when the walls are to be measured.
    this.helperFor(open.mesh.facets.length / 3);
  }

  /** The part that the choices make; told as a shape when it is another one than before. */
  private async openPart(
    open: OpenMesh,
    choices: MeasureChoices,
    onShape: (shape: PartShape) => void,
  ): Promise<OpenPart> {
    const { helper } = this;
    if (open.health === null && helper !== null && choices.body === 0) {
      // Nearly every file is wound right: its part is made ready while the helper looks whether this one is.
      const looking = helper.findHealth(open.mesh).catch(() => findHealth(open.mesh));
      const asFile = partFromSaved(open.mesh, nothingKnown, { ...choices, winding: 'asFile' });
      const { silenceMs } = this.help;
      const ready = makeReady(asFile, this.helperFor, onShape, silenceMs);
      open.health = await answeredWithin(looking, silenceMs).catch(() => findHealth(open.mesh));
      if (choices.winding === 'asFile' || open.health.flippedFacets === 0) {
        return this.putPart({ ...asFile, health: open.health }, ready, choices);
      }
    }
    open.health ??= findHealth(open.mesh);
    const part = partFromSaved(open.mesh, open.health, choices);
    if (this.part?.key === keyOf(part.unit, choices)) return this.part;
    return this.putPart(part, makeReady(part, this.helperFor, onShape, this.help.silenceMs), choices);
  }

  /** Started when it is first worth its while. */
  private readonly helperFor = (facetCount: number): WallsHelper | null => {
    if (facetCount <= this.help.over) return null;
    try {
      this.helper ??= this.startHelper?.() ?? null;
    } catch {
      // Some browsers start no worker from a worker: all is measured here.
    }
    return this.helper;
  };

  private endHelper(part: OpenPart): void {
    part.helper = Promise.resolve(null);
    this.helper?.end();
    this.helper = null;
  }

  private putPart(part: PartInMm, ready: ReadyPart, choices: MeasureChoices): OpenPart {
    this.measurement = null;
    this.part = { ...ready, part, key: keyOf(part.unit, choices), wallsDone: false, known: null };
    return this.part;
  }

  private opened(): OpenMesh {
    if (this.open === null) throw new Problem('job.noMesh', 'Import the pattern file of this project first.');
    return this.open;
  }

  private measured(): OpenPart & { readonly measurement: Measurement } {
    const { part, measurement } = this;
    if (part === null || measurement === null) {
      throw new Problem('job.notMeasured', 'The part has not been measured yet. Measure it first.');
    }
    return { ...part, measurement };
  }
}
