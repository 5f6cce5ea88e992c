/** What answers each question about the results, and which stages it needs. */
import { compareCure } from '../core/cure/compareCure';
import { closedMoldVoxels } from '../core/cure/closedMold';
import { endOf } from '../core/cure/curve';
import { fitToLog } from '../core/cure/fitToLog';
import { cutFields, fieldBounds, heatAtPoint } from '../core/cure/heatFields';
import { placeInPullFrame } from '../core/cure/laminatePlace';
import { coarseVoxelMm, heatCaseOf } from '../core/cure/predictCure';
import { cutPlies } from '../core/drape/cutPlies';
import { fitFindings } from '../core/fit/findings';
import { splitSolid } from '../core/fit/splitSolid';
import type { IndexedMesh } from '../core/mesh/types';
import { bestPullOffTheRim } from '../core/mesh/bestPull';
import { facePictures } from '../core/mesh/facePictures';
import { findHealth } from '../core/mesh/health';
import { measurePart } from '../core/mesh/measure';
import { partFromSaved } from '../core/mesh/partFromSaved';
import { unpackMesh } from '../core/mesh/pack';
import { childrenOf } from '../core/mesh/refineForMeasuring';
import { cutSection } from '../core/mesh/section';
import { rightWayUp } from '../core/mesh/rightWayUp';
import { findSelfTouching } from '../core/mesh/selfTouching';
import { buildSurfaceIndex, type SurfaceIndex } from '../core/mesh/surfaceIndex';
import { readMeshFile } from '../core/mesh/read/readMeshFile';
import { weld } from '../core/mesh/weld';
import { write3mf } from '../core/mesh/write3mf';
import { writeStlBinary } from '../core/mesh/writeStl';
import { onPrintBed } from '../core/pattern/onPrintBed';
import { makePattern } from '../core/pattern/makePattern';
import { Problem } from '../core/problem';
import { intoFrame } from '../core/stone/pours/pullFrame';
import { prepareSolids } from '../core/stone/pours/solids';
import { rimOfPart } from '../core/stone/pours/rimOfPart';
import { nestPieces } from '../core/templates/nest';
import { templateFiles } from '../paper/templateFiles';
import type { AskName, Asks, SplitHalf } from './asks';
import { displayChunks } from './displayChunks';
import { packPattern, readPatternFile } from './patternFile';
import { planWith } from './planWith';
import { probePart } from './probePart';
import type { Question } from './question';
import type { IndexedPart, Results } from './results';
import type { OnProgress, StageName } from './told';
import type { ForkingMemory } from './whatIf';

interface AskWork<Name extends AskName> {
  readonly needs: (given: Asks[Name]['given']) => readonly StageName[];
  readonly answer: (
    given: Asks[Name]['given'],
    got: Results,
    progress: OnProgress,
    /** What is asked, and the memory that answers it, for what must ask again with other inputs. */
    asked: {
      readonly question: Question | null;
      readonly memory: ForkingMemory;
      /** Where a browser finds the solid booleans. */
      readonly solidsWasmUrl: string | undefined;
    },
  ) => Asks[Name]['reply'] | Promise<Asks[Name]['reply']>;
}

/** As a file of it would be taken in. */
async function keptHalf(
  mesh: IndexedMesh,
  fileName: string,
  volumeMm3: number,
  progress: OnProgress,
): Promise<SplitHalf> {
  const stl = new Uint8Array(writeStlBinary(mesh));
  const { facts, canonical } = await readPatternFile(stl, fileName, progress);
  const { packed, meshKey } = packPattern(canonical);
  return { pattern: { ...facts, fileName, meshKey }, packed, stl, volumeMm3 };
}

const always =
  (...needs: StageName[]) =>
  () =>
    needs;

/** Of the part as drawn: what is told of the drawn facets is asked of them. */
const drawnIndex = ({ measuring, bench, partMesh }: IndexedPart): SurfaceIndex =>
  measuring.split === null ? bench.index : buildSurfaceIndex(partMesh);

export const askWork: { readonly [Name in AskName]: AskWork<Name> } = {
  cut: {
    needs: always('part', 'measurement'),
    answer: (plane, { part, measurement }) => cutSection(part.measuring.mesh, measurement.measurement, plane),
  },
  probe: {
    needs: always('part', 'measurement'),
    answer: ({ originMm, direction }, { part, measurement }) =>
      probePart(part.bench.index, measurement.measurement, originMm, direction),
  },
  'best pull': {
    needs: always('part'),
    answer: (_, { part }, progress) =>
      bestPullOffTheRim(part.partMesh, drawnIndex(part), (share) => progress('trying pulls', share)),
  },
  'right way up': {
    needs: always('part'),
    answer(_, { part }, progress) {
      progress('looking for the right way up', 0);
      return rightWayUp(part.partMesh);
    },
  },
  'face pictures': {
    needs: always('part'),
    answer: (_, { part }) => facePictures(part.partMesh),
  },
  'self touching': {
    needs: always('part'),
    answer(_, { part }, progress) {
      progress('looking for faces that touch', 0);
      const found = findSelfTouching(drawnIndex(part), part.partMesh);
      return { facetCount: found.length, facets: childrenOf(part.measuring.split, found) };
    },
  },
  'saved half': {
    needs: always('halves'),
    answer(half, { halves: { halves, geometry } }) {
      if (halves === null)
        throw new Problem(
          'pours.noHalves',
          `There is no ${half} to save, only its volume. ${geometry.why} Repair the model and import it again.`,
        );
      return writeStlBinary(halves[half]);
    },
  },
  'heat cut': {
    needs: ({ run }) => [run],
    answer({ run, treatment, axis, atMm, timeS }, got) {
      const { fields: all, frame } = got[run];
      const fields = all.get(treatment);
      if (fields === undefined) return null;
      const { lowMm, highMm } = fieldBounds(fields);
      const cut = cutFields(fields, axis, atMm ?? (lowMm[axis] + highMm[axis]) / 2, timeS);
      return { cut, lowMm, highMm, frame };
    },
  },
  'heat at': {
    needs: ({ run }) => [run],
    answer({ run, treatment, pointMm }, got) {
      const { fields: all, frame } = got[run];
      const fields = all.get(treatment);
      if (fields === undefined) return { heat: null };
      const [x, y, z] = intoFrame(frame, Float64Array.from(pointMm));
      return { heat: heatAtPoint(fields, [x!, y!, z!]) };
    },
  },
  fit: {
    needs: always('part', 'filled mold'),
    // In coarse voxels: the log is not read to a tenth of a kelvin either.
    answer({ choices, log }, { part, 'filled mold': { voxelsAt } }, progress) {
      const place = placeInPullFrame(part.partMesh, choices.pour.pull, log.place);
      const voxels = voxelsAt(Math.max(coarseVoxelMm, choices.voxelMm));
      const one = heatCaseOf(choices, voxels, 'vapor-held', Math.max(1, endOf(log.laminate)));
      const doing = 'fitting to the log';
      progress(doing, 0);
      return fitToLog(one, { ...log, place }, (share) => progress(doing, share));
    },
  },
  comparison: {
    needs: always('part'),
    answer: ({ choices, mostC }, { part }, progress) =>
      compareCure(
        choices,
        (changed, voxelMm) => closedMoldVoxels(part.partMesh, changed.pour, voxelMm),
        mostC,
        progress,
      ),
  },
  pattern: {
    needs: always('part'),
    answer(choices, { part: { partMesh } }, progress) {
      const { mesh, changeMm, ...summary } = makePattern(partMesh, choices, progress);
      return { summary, stl: writeStlBinary(mesh), display: displayChunks(mesh), changeMm };
    },
  },
  'print file': {
    needs: always(),
    answer({ stl, pull, printScale, format }) {
      const placed = onPrintBed(weld(readMeshFile(stl, 'pattern.stl')).mesh, pull, printScale);
      return format === 'stl' ? writeStlBinary(placed) : write3mf(placed);
    },
  },
  cutting: {
    needs: ({ stl }) => (stl === null ? ['part', 'measurement'] : []),
    answer({ choices, stl }, { part, measurement }, progress) {
      if (stl === null) return cutPlies(part.measuring.mesh, measurement.measurement, choices, progress);
      const { mesh } = weld(readMeshFile(stl, 'pattern.stl'));
      return cutPlies(mesh, measurePart(mesh, choices.pull, { onProgress: progress }), choices, progress);
    },
  },
  nest: {
    needs: always(),
    answer({ pieces, rolls, choices }, _, progress) {
      progress('laying the pieces out on the roll', 0);
      return nestPieces(pieces, rolls, choices);
    },
  },
  templates: {
    needs: always(),
    answer({ nests, paper }, _, progress) {
      progress('drawing the templates', 0);
      return templateFiles(nests, paper);
    },
  },
  plan: {
    needs: always(),
    answer: (given, _, progress, { question, memory }) => planWith(given, question, memory, progress),
  },
  contents: {
    needs: always('part'),
    answer({ choices, mate }, { part: { partMesh } }, progress) {
      progress('looking whether all fits', 0);
      if (mate === null) return fitFindings(partMesh, null, choices);
      const mesh = unpackMesh(mate.packed);
      return fitFindings(partMesh, partFromSaved(mesh, findHealth(mesh), mate.part).partMesh, choices);
    },
  },
  split: {
    needs: always('part'),
    async answer({ heightMm, fileNames }, { part: { partMesh } }, progress, { question, solidsWasmUrl }) {
      await prepareSolids(solidsWasmUrl);
      progress('splitting the solid', 0);
      const halves = splitSolid(partMesh, question!.inputs.part.pull, heightMm);
      const [along, against] = fileNames;
      return {
        along: await keptHalf(halves.along, along, halves.alongMm3, progress),
        against: await keptHalf(halves.against, against, halves.againstMm3, progress),
      };
    },
  },
  rim: {
    needs: always(),
    answer({ packed, part, pours }) {
      const mesh = unpackMesh(packed);
      return rimOfPart(partFromSaved(mesh, findHealth(mesh), part).partMesh, pours);
    },
  },
};
