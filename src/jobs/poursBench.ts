import { facetBox } from '../core/mesh/integrals';
import type { IndexedMesh } from '../core/mesh/types';
import { writeStlBinary } from '../core/mesh/writeStl';
import { Problem } from '../core/problem';
import { castHalves, type CastMold } from '../core/stone/pours/castHalves';
import type { PourChoices } from '../core/stone/pours/pourChoices';
import { prepareSolids } from '../core/stone/pours/solids';
import { displayChunks } from './displayChunks';
import type { HalfShape, MoldReply, OnProgress, StoneHalf } from './protocol';

/** Casts the two halves around the part on the bench and keeps the last ones for saving. */
export class PoursBench {
  private held: { readonly mesh: IndexedMesh; readonly key: string; readonly mold: CastMold } | null = null;
  private readonly wasmUrl: string | undefined;

  constructor(wasmUrl?: string) {
    this.wasmUrl = wasmUrl;
  }

  async cast(mesh: IndexedMesh, choices: PourChoices, progress: OnProgress): Promise<MoldReply> {
    const { geometry, findings, halves } = await this.mold(mesh, choices, progress);
    return {
      geometry,
      findings,
      halves:
        halves === null ? null : { negative: shapeOf(halves.negative), positive: shapeOf(halves.positive) },
    };
  }

  /** @throws Problem `pours.noHalves` where only volumes could be had */
  async save(
    half: StoneHalf,
    mesh: IndexedMesh,
    choices: PourChoices,
    progress: OnProgress,
  ): Promise<Uint8Array> {
    const { geometry, halves } = await this.mold(mesh, choices, progress);
    if (halves === null) {
      throw new Problem(
        'pours.noHalves',
        `There is no ${half} to save, only its volume. ${geometry.why} Repair the model and import it again.`,
      );
    }
    return writeStlBinary(halves[half]);
  }

  forget(): void {
    this.held = null;
  }

  private async mold(mesh: IndexedMesh, choices: PourChoices, progress: OnProgress): Promise<CastMold> {
    const key = JSON.stringify(choices);
    if (this.held?.mesh === mesh && this.held.key === key) return this.held.mold;
    progress({ doing: 'finding the parting', share: 0 });
    await prepareSolids(this.wasmUrl);
    const mold = castHalves(mesh, choices, (doing, share) => progress({ doing, share }));
    this.held = { mesh, key, mold };
    return mold;
  }
}

function shapeOf(mesh: IndexedMesh): HalfShape {
  const { min, max } = facetBox(mesh);
  return {
    facetCount: mesh.facets.length / 3,
    boxMinMm: min,
    boxMaxMm: max,
    display: displayChunks(mesh),
  };
}
