/** What a timer does at a given moment; the clock is always handed in. */
import type { BenchTimer } from '../../workbook';

export type TimerPhase = 'ready' | 'running' | 'paused' | 'over';

/**
 * Milliseconds that are left; 0 when it is over. Never more than when it was started: a clock that shows an earlier time
 * than then was set back before anybody could tell.
 */
export function leftMs({ endsAtMs, leftS }: BenchTimer, nowMs: number): number {
  return endsAtMs === null ? leftS * 1000 : Math.min(leftS * 1000, Math.max(0, endsAtMs - nowMs));
}

export function timerPhase(timer: BenchTimer, nowMs: number): TimerPhase {
  if (timer.endsAtMs !== null) return timer.endsAtMs > nowMs ? 'running' : 'over';
  return timer.leftS < timer.lengthS ? 'paused' : 'ready';
}

/** Over, and nobody has stopped its sound. */
export const isRinging = (timer: BenchTimer, nowMs: number): boolean =>
  timerPhase(timer, nowMs) === 'over' && !timer.heard;

export const setTo = (what: string, lengthS: number): BenchTimer => ({
  what,
  lengthS,
  endsAtMs: null,
  leftS: lengthS,
  heard: false,
});

export const started = (timer: BenchTimer, nowMs: number): BenchTimer => ({
  ...timer,
  endsAtMs: nowMs + timer.leftS * 1000,
  heard: false,
});

export const paused = (timer: BenchTimer, nowMs: number): BenchTimer => ({
  ...timer,
  endsAtMs: null,
  leftS: leftMs(timer, nowMs) / 1000,
});

/** Its sound was stopped. */
export const heard = (timer: BenchTimer): BenchTimer => ({ ...timer, heard: true });

const two = (value: number) => String(value).padStart(2, '0');

/** "4:05", "1:02:07": a second that has begun still counts. */
export function clockText(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor((seconds % 3600) / 60);
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}
