/** Whether a roll's out-time (hours out of the freezer that its data sheet allows) still covers the layup planned. */
import { Problem } from '../problem';

export interface OutTime {
  /** Allowed less used, before the layup; negative when overdrawn. */
  readonly remainingH: number;
  /** Left when the layup is done; negative when it will not do. */
  readonly afterLayupH: number;
  readonly enough: boolean;
}

/** Plain difference of hours; the allowance is the supplier's, at the room temperature of the data sheet. */
export function outTime(allowedH: number, usedH: number, plannedLayupH: number): OutTime {
  if (![allowedH, usedH, plannedLayupH].every((hours) => hours >= 0 && Number.isFinite(hours)))
    throw new Problem('laminate.hours', 'Hours allowed, hours out and hours of layup must be zero or more.');
  const remainingH = allowedH - usedH;
  const afterLayupH = remainingH - plannedLayupH;
  return { remainingH, afterLayupH, enough: afterLayupH >= 0 };
}
