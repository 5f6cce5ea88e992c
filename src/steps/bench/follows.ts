/** What follows from a reading, worked out: one sentence. */
import { requiredS } from '../../core/cure/dose';
import { formatFigure } from '../../core/units/formatFigure';
import { formatNumber } from '../../core/units/formatNumber';
import type { Figure } from '../../core/figure';
import { doseWords, enteredCure } from '../cure/logWords';
import type { StepContext } from '../shared/context';
import { wallsFor } from '../shared/band';
import { resolveStack } from '../shared/stack';
import type { BenchBlank } from './blank';
import { measuredAt, standingOf } from './written';

const mm = (length: number) => `${formatNumber(length, 2)} mm`;

/** @returns '' where nothing was read */
export function followsFrom(
  blank: BenchBlank,
  context: StepContext,
  figures: ReadonlyMap<string, Figure>,
): string {
  const value = measuredAt(context.inputs, blank);
  if (value === null) return '';
  const told = tellers[blank.id.split('.')[0] ?? '']?.(value, blank, context) ?? null;
  if (told !== null) return told;
  return blank.figures
    .flatMap((id) => figures.get(id) ?? [])
    .filter((one) => one.value !== null)
    .map((one) => `${one.label} ${formatFigure(one)}`)
    .join('; ');
}

type Teller = (value: number, blank: BenchBlank, context: StepContext) => string | null;

const tellers: Readonly<Record<string, Teller>> = {
  wall: wallWords,
  standOff: (value, blank) =>
    standingOf(value, blank.band) === 'as expected'
      ? 'It closes as expected; warm, it sinks as the clamps are tightened again.'
      : 'It stands off too far: open it, look for a crumb or a ply on the lands, debulk again, and tighten in the order of the card.',
  ovenPeak: (value, { band }) =>
    band !== null && value < band[0]
      ? 'Colder than expected: hold by the log, not by the clock, and look at the oven’s air.'
      : band !== null && value > band[1]
        ? 'Hotter than expected: turn the dial down; look at the limits of stone, clamps and coats.'
        : null,
  held: heldWords,
  finished: (value, blank, context) =>
    blank.id === 'finished.wall'
      ? wallWords(value, blank, context)
      : blank.id === 'finished.mass'
        ? massWords(value, blank)
        : sizeWords(value, blank, context),
};

function wallWords(value: number, blank: BenchBlank, { inputs }: StepContext): string | null {
  const stack = resolveStack(inputs.plies);
  if (!stack.known) return null;
  const { voidFreeMm, goLowMm, goHighMm } = wallsFor(stack, inputs.walls);
  const isPart = blank.id === 'finished.wall';
  if (value > goHighMm) {
    const air = formatNumber(100 * (1 - Math.min(1, voidFreeMm / value)), 0);
    return isPart
      ? `${air} % of it is air: make the next pattern ${mm(value - goHighMm)} thinner, or lay more plies.`
      : `The plies fill ${mm(voidFreeMm)}: ${air} % of it would be air. Sand ${mm(value - goHighMm)} off, or print it anew.`;
  }
  if (value < goLowMm)
    return isPart
      ? 'Thinner than the plies want: short of resin. Make the next pattern thicker, or lay fewer plies.'
      : `Too thin by ${mm(goLowMm - value)}: the fibers would hold the mold open. Fill it, or print it anew.`;
  return 'It suits the plies.';
}

function heldWords(minutes: number, _blank: BenchBlank, { inputs }: StepContext): string | null {
  const supplier = enteredCure(inputs.cure);
  const dwellC = inputs.cure.stages.at(-1)?.targetC;
  if (supplier === null || dwellC === undefined) return null;
  // Within 5 K counts as the lower end of it: the safe side.
  const atC = Math.min(dwellC, inputs.bench.laminatePeakC ?? dwellC) - 5;
  const wholeS = requiredS(supplier, atC);
  const dose = Number.isFinite(wholeS) ? (60 * minutes) / wholeS : 0;
  return `Taken at ${formatNumber(atC, 0)} °C: ${doseWords(dose, dwellC, supplier)}.`;
}

function sizeWords(value: number, { expected, band }: BenchBlank, { inputs }: StepContext): string | null {
  if (expected === null) return null;
  const off = value - expected;
  const told = `${formatNumber(Math.abs(off), 2)} mm ${off < 0 ? 'short' : 'long'}`;
  return standingOf(value, band) === 'as expected'
    ? `${told}: within what you accept.`
    : `${told}: print the next pattern at scale ${formatNumber((inputs.mold.printScale * expected) / value, 4)}.`;
}

function massWords(value: number, { expected, band }: BenchBlank): string | null {
  if (expected === null || standingOf(value, band) === 'as expected') return null;
  return value < expected
    ? `${formatNumber(expected - value, 1)} g lighter than planned: resin has left, or plies are missing; enter the resin lost at the Ply schedule.`
    : `${formatNumber(value - expected, 1)} g heavier than planned: excess resin, or a wall wider than the plies.`;
}
