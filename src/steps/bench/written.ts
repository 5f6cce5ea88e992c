/** What was written into a blank: the value of the input that it is. */
import { formatNumber } from '../../core/units/formatNumber';
import { benchTable } from '../inputs/bench';
import { defaultClamp } from '../inputs/clamp';
import { measuredTable } from '../inputs/stone';
import { startOf } from '../kit/inputTable';
import type { ProjectInputs } from '../inputs/project';
import type { BenchBlank } from './blank';

/** The number at a dotted path of the inputs; null where there is none. */
export function inputAt(inputs: ProjectInputs, path: string): number | null {
  let node: unknown = inputs;
  for (const key of path.split('.'))
    node = typeof node === 'object' && node !== null ? (node as Record<string, unknown>)[key] : undefined;
  return typeof node === 'number' ? node : null;
}

/** What was measured; null until it was. Where an input is a number from the start, its ready-made value is no reading. */
export function measuredAt(inputs: ProjectInputs, { path }: Pick<BenchBlank, 'path'>): number | null {
  const value = inputAt(inputs, path);
  return value === unread(path) ? null : value;
}

const isDebulked = (path: string) => path === 'closing.debulkedMm';
const isClampForce = (path: string) => /^closing\.clamps\.\d+\.forceN$/u.test(path);

function unread(path: string): number | null {
  if (isDebulked(path)) return 0;
  return isClampForce(path) ? defaultClamp.forceN : null;
}

/** Puts a reading where the step that asks for it has it; null takes it away again. */
export function writeReading(draft: ProjectInputs, path: string, value: number | null): void {
  const [step, list, position, field] = path.split('.');
  if (step === 'mold' && list === 'dryingLog') {
    const { dryingLog, dryingHours } = draft.mold;
    for (let at = dryingLog.length; at <= Number(position); at++)
      dryingLog.push({ hours: at === 0 ? 0 : dryingHours + 4 * (at - 1), negativeG: null, positiveG: null });
    Object.assign(dryingLog[Number(position)] ?? {}, { [field ?? '']: value });
    return;
  }
  const keys = path.split('.');
  const last = keys.pop() ?? '';
  let node: unknown = draft;
  for (const key of keys)
    node = typeof node === 'object' && node !== null ? (node as Record<string, unknown>)[key] : undefined;
  if (typeof node === 'object' && node !== null) Object.assign(node, { [last]: value ?? unread(path) });
}

/** The inputs as they were planned: without anything that is read at the bench. */
export function withoutReadings(inputs: ProjectInputs): ProjectInputs {
  const { plies, closing, mold, bench } = inputs;
  const isRead =
    plies.materials.some(({ caliperTotalMm }) => caliperTotalMm !== null) ||
    closing.debulkedMm !== 0 ||
    mold.dryingLog.length > 0 ||
    [...Object.values(mold.measured), ...Object.values(bench)].some((value) => value !== null);
  if (!isRead) return inputs;
  return {
    ...inputs,
    plies: { ...plies, materials: plies.materials.map((card) => ({ ...card, caliperTotalMm: null })) },
    closing: { ...closing, debulkedMm: 0 },
    mold: { ...mold, dryingLog: [], measured: startOf(measuredTable) },
    bench: startOf(benchTable),
  };
}

export function writtenInto(inputs: ProjectInputs, blank: BenchBlank): string {
  const value = measuredAt(inputs, blank);
  return value === null ? '' : formatNumber(value, blank.decimals);
}

type Standing = 'not measured' | 'as expected' | 'out of band';

export function standingOf(value: number | null, band: BenchBlank['band']): Standing {
  if (value === null) return 'not measured';
  return band === null || (value >= band[0] && value <= band[1]) ? 'as expected' : 'out of band';
}

/** "0.75 mm (0.69 to 0.81)"; '' where nothing is expected. */
export function expectedWords({
  expected,
  band,
  unit,
  decimals,
}: Pick<BenchBlank, 'expected' | 'band' | 'unit' | 'decimals'>): string {
  const range =
    band === null ? '' : `${formatNumber(band[0], decimals)} to ${formatNumber(band[1], decimals)}`;
  if (expected === null) return range === '' ? '' : `${range} ${unit}`;
  const value = `${formatNumber(expected, decimals)} ${unit}`;
  return range === '' ? value : `${value} (${range})`;
}
