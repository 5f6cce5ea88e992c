/**
 * How warm a pour gets while it sets. The adiabatic rise is an upper bound; the estimate lets heat leave through the
 * outside of the pour while it is set free evenly over the setting. Constants from memory (`settingHeatConstants` in
 * core/sources): an estimate for "may the print soften?", not a prediction.
 */
import { settingHeatJPerG, settingWaterRatio, type PowderForm } from './gypsum';

/** J/(g K). */
const stoneHeatJPerGK = 1.08;
const waterHeatJPerGK = 4.18;
/** Damp young stone, W/(m K). */
const wetConductivityWPerMK = 0.9;
/** Share of the heat that comes by the final set; the rest comes slowly, after the peak. */
const earlyShare = { low: 0.6, usual: 0.8 } as const;
/** Air and radiation on a box that stands in a corner, and a set that is a third faster than the card's (common practice). */
const stillFilmWPerM2K = 6;
const fastSetting = 2 / 3;
/** 4/pi^2: adds the inside of a slab to its film in a lumped time constant (first root of the slab series). */
const insideShare = 4 / Math.PI ** 2;

export interface HeatChoices {
  readonly waterPowderRatio: number;
  readonly powder: PowderForm;
  readonly wetDensityGMl: number;
  /** Stone of the pour, mL, and the outside through which it cools, mm2. */
  readonly volumeMl: number;
  readonly outsideMm2: number;
  /** Over which the heat comes, min; about the final set. */
  readonly settingMin: number;
  readonly roomC: number;
}

export interface SettingHeat {
  readonly adiabaticRiseK: number;
  /** Middle of the pour; at the face against the pattern it is somewhat less. */
  readonly peakC: number;
  /** Strong air film, slow setting and a late share of the heat, to weak film, fast setting and all of it. */
  readonly lowC: number;
  readonly highC: number;
}

/** Rise without any loss: q / ((1 + ws) c_stone + (W/P - ws) c_water), K. */
export function adiabaticRiseK(waterPowderRatio: number, powder: PowderForm): number {
  return settingHeatJPerG(powder) / heatCapacityJPerGK(waterPowderRatio);
}

/** Of set stone with its free water, J/K per gram of powder. */
function heatCapacityJPerGK(waterPowderRatio: number): number {
  return (1 + settingWaterRatio) * stoneHeatJPerGK + (waterPowderRatio - settingWaterRatio) * waterHeatJPerGK;
}

export function settingHeat(choices: HeatChoices): SettingHeat {
  const { waterPowderRatio, powder, wetDensityGMl, volumeMl, outsideMm2, settingMin, roomC } = choices;
  const riseK = adiabaticRiseK(waterPowderRatio, powder);
  const heatJPerM3K = ((wetDensityGMl * heatCapacityJPerGK(waterPowderRatio)) / (1 + waterPowderRatio)) * 1e6;
  const depthM = volumeMl / outsideMm2;
  const peak = (share: number, filmWPerM2K: number, overMin: number) => {
    const coolingS =
      heatJPerM3K * depthM * (1 / filmWPerM2K + (insideShare * depthM) / wetConductivityWPerMK);
    const ratio = (60 * overMin) / coolingS;
    return roomC + (share * riseK * -Math.expm1(-ratio)) / ratio;
  };
  return {
    adiabaticRiseK: riseK,
    peakC: peak(earlyShare.usual, 10, settingMin),
    lowC: peak(earlyShare.low, 25, 1.5 * settingMin),
    highC: peak(1, stillFilmWPerM2K, settingMin * fastSetting),
  };
}
