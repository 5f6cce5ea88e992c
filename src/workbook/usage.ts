/** What fills the browser's storage. */
import { keptAsidePrefix, meshPrefix, parseBenchKey, parseEntryKey, parseRecordKey } from './keys';
import type { SizedStorage } from './storageSizes';

/** UTF-16 units, keys counted, that the common browsers give one site. */
const storageLimitUnits = 5_242_880;

export interface Usage {
  readonly limitUnits: number;
  readonly totalUnits: number;
  /** Records (both slots), list entry, timers and oven run per project. */
  readonly projects: readonly { readonly id: string; readonly units: number }[];
  readonly meshes: readonly { readonly meshKey: string; readonly units: number }[];
  readonly keptAsideUnits: number;
  /** Anything else that this site keeps. */
  readonly otherUnits: number;
}

export function measureUsage(storage: SizedStorage): Usage {
  const projectUnits = new Map<string, number>();
  const meshes: { meshKey: string; units: number }[] = [];
  let keptAsideUnits = 0;
  let otherUnits = 0;
  let totalUnits = 0;
  for (const [key, units] of storage.sizes()) {
    totalUnits += units;
    const projectId = parseEntryKey(key) ?? parseRecordKey(key)?.id ?? parseBenchKey(key);
    if (projectId !== undefined) projectUnits.set(projectId, (projectUnits.get(projectId) ?? 0) + units);
    else if (key.startsWith(meshPrefix)) meshes.push({ meshKey: key.slice(meshPrefix.length), units });
    else if (key.startsWith(keptAsidePrefix)) keptAsideUnits += units;
    else otherUnits += units;
  }
  return {
    limitUnits: storageLimitUnits,
    totalUnits,
    projects: [...projectUnits].map(([id, units]) => ({ id, units })),
    meshes,
    keptAsideUnits,
    otherUnits,
  };
}
