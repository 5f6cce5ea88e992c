/** Whole temperature fields of a run, kept closest where the mold moves fastest, so that straight lines between them tell the rest. */
import type { HeatOptions } from './heatCase';
import type { HeatState } from './heatState';

export interface HeatFrame {
  readonly timeS: number;
  /** Per voxel. */
  readonly temperatureC: Float32Array;
}

export interface FrameKeeper {
  readonly frames: readonly HeatFrame[];
  /** Looks at the field after a step; `mustKeep` where a straight line would cut a corner: at a jump of the air, and last. */
  readonly look: (timeS: number, mustKeep: boolean) => void;
}

/** Keeps the field as it stands as the first frame; null where no frames are wanted. */
export function frameKeeper(
  { temperatureC }: HeatState,
  { frameEveryS, frameAfterK, mostFrames }: HeatOptions,
): FrameKeeper | null {
  if (frameEveryS === null) return null;
  let [everyS, afterK] = [frameEveryS, frameAfterK];
  let frames: HeatFrame[] = [];
  const keep = (timeS: number) => frames.push({ timeS, temperatureC: new Float32Array(temperatureC) });
  keep(0);
  const isDue = (timeS: number) => {
    const { timeS: keptS, temperatureC: kept } = frames.at(-1)!;
    if (timeS - keptS >= everyS - 1e-6) return true;
    if (afterK === Infinity) return false;
    // After every step over every voxel: a callback for each would cost seven times as much.
    for (let at = 0; at < kept.length; at++)
      if (Math.abs(temperatureC[at]! - kept[at]!) > afterK) return true;
    return false;
  };
  return {
    get frames() {
      return frames;
    },
    look: (timeS, mustKeep) => {
      if (!mustKeep && !isDue(timeS)) return;
      if (frames.length >= mostFrames) {
        // How long the run gets is not known ahead; half of the frames at twice the spacing take the room of all.
        frames = frames.filter((_, i) => i % 2 === 0);
        [everyS, afterK] = [2 * everyS, 2 * afterK];
      }
      keep(timeS);
    },
  };
}
