/** How much free water the stone takes into the oven: weighed where a half was weighed, typed where not. */
import type { MoldGeometry } from '../../core/stone/moldGeometry';
import { formatNumber } from '../../core/units/formatNumber';
import type { ProjectInputs } from '../inputs/project';
import { halfDryness } from './dryness';
import { halves, moldWork, type Half } from './work';

export interface WaterLeft {
  /** Of the wetter half, % of what the mix left in it, 0 to 100: the laminate waits for that one. */
  readonly percent: number;
  /** Halves whose weighings told. */
  readonly weighed: readonly Half[];
  /** Both halves were weighed and passed the dry gate. */
  readonly isDry: boolean;
  /** Where the percentage comes from, half by half, as a sentence. */
  readonly how: string;
}

interface HalfWater {
  readonly half: Half;
  readonly percent: number;
  readonly isWeighed: boolean;
  readonly isDry: boolean;
  readonly how: string;
}

/** @param mold null while the pours are not worked out; then only a half that was weighed fresh can tell */
export function waterLeft(inputs: ProjectInputs, mold: MoldGeometry | null): WaterLeft {
  const typed = inputs.cure.freeWaterLeftPercent;
  if (inputs.mold.dryingLog.length === 0)
    return {
      percent: typed,
      weighed: [],
      isDry: false,
      how: `Nothing is weighed: the ${said(typed)} entered counts.`,
    };
  const work = moldWork({ inputs, mold, pattern: null, measured: null });
  const told = halves.map((half): HalfWater => {
    const dryness = halfDryness({ inputs }, work, half);
    const share = dryness.known ? dryness.value.waterLeftShare : null;
    if (!dryness.known || share === null)
      return {
        half,
        percent: typed,
        isWeighed: false,
        isDry: false,
        how: `${half} not weighed, the ${said(typed)} entered`,
      };
    const percent = Math.min(100, Math.max(0, 100 * share));
    const { expected, isDry } = dryness.value;
    return {
      half,
      percent,
      isWeighed: true,
      isDry,
      how: `${half} ${said(percent)} by weighing, expected weight from its ${expected.by}${beyond(share)}`,
    };
  });
  return {
    percent: Math.max(...told.map(({ percent }) => percent)),
    weighed: told.flatMap(({ half, isWeighed }) => (isWeighed ? [half] : [])),
    isDry: told.every(({ isDry }) => isDry),
    how: `Free water left: ${told.map(({ how }) => how).join('; ')}. The wetter half counts.`,
  };
}

const said = (percent: number) => `${formatNumber(percent, 0)} %`;

function beyond(share: number): string {
  if (share < 0) return ' (it weighs less than dry)';
  return share > 1 ? ' (it weighs more than fresh)' : '';
}
