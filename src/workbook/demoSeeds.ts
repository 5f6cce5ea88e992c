/** The demo parts as projects, made the way an imported file is. Loaded only when the demo is put in. */
import { meshKey } from '../core/mesh/meshKey';
import { packMesh, preparePack } from '../core/mesh/pack';
import { preparePattern } from '../core/part/preparePattern';
import { writeStlBinary } from '../core/mesh/writeStl';
import { demoInputs, demoParts, type DemoPart } from './demo/demoParts';
import type { ProjectSeed } from './workbookApi';

export async function demoSeeds(): Promise<readonly ProjectSeed[]> {
  await preparePack();
  return demoParts().map(seedOf);
}

function seedOf({ enclosure, name, fileName, mesh, inputs }: DemoPart): ProjectSeed {
  const { canonical, ...facts } = preparePattern(writeStlBinary(mesh), fileName);
  const packedMesh = packMesh(canonical);
  return {
    enclosure,
    name,
    inputs: demoInputs(inputs),
    pattern: {
      ...facts,
      fileName,
      meshKey: meshKey(packedMesh),
      packErrorFileUnits: canonical.errorFileUnits,
    },
    packedMesh,
  };
}
