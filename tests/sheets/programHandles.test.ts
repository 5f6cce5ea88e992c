import { describe, expect, it } from 'vitest';
import {
  draggedTo,
  dwellWords,
  isSameStage,
  movedBy,
  nearestOnPlot,
  withRoom,
} from '../../src/sheets/cure/programHandles';

const stages = [
  { targetC: 70, rampKPerMin: null, dwellHours: 3 },
  { targetC: 120, rampKPerMin: 2, dwellHours: 1.5 },
];
const program = {
  startC: 20,
  stages: [
    { targetC: 70, rampKPerMin: null, dwellS: 10_800 },
    { targetC: 120, rampKPerMin: 2, dwellS: 5400 },
  ],
  coolKPerMin: null,
  roomC: 20,
};
const held = { temperatureC: null, timeS: null };

describe('the handles of the oven program', () => {
  it('move one stage by degrees and by minutes, and leave the rest as it was', () => {
    const hotter = movedBy(stages, 1, { kelvins: 10 });
    expect(hotter).toEqual({ stages: [stages[0], { ...stages[1], targetC: 130 }], stoppedBy: null });
    expect(movedBy(stages, 0, { minutes: 30 }).stages).toEqual([
      { ...stages[0], dwellHours: 3.5 },
      stages[1],
    ]);
  });

  it('go from five minutes to five minutes although the table holds hundredths of an hour', () => {
    let moved: readonly (typeof stages)[number][] | ReturnType<typeof movedBy>['stages'] = stages;
    const seen = [1, 2, 3, 4].map(() => {
      moved = movedBy(moved, 0, { minutes: 5 }).stages;
      return moved[0]!.dwellHours;
    });
    expect(seen).toEqual([3.08, 3.17, 3.25, 3.33]);
    expect(dwellWords(0, moved[0]!)).toBe('Dwell 1: 70 °C for 3 h 20 min');
    const back = [1, 2, 3, 4].reduce((now) => movedBy(now, 0, { minutes: -5 }).stages, [...moved]);
    expect(back).toEqual(stages);
  });

  it('stop at the limits of the inputs and say so', () => {
    const cold = movedBy([{ ...stages[0]!, targetC: -20 }], 0, { kelvins: -1 });
    expect(cold.stages[0]?.targetC).toBe(-20);
    expect(cold.stoppedBy).toBe('it goes no lower than −20 °C');
    const none = movedBy([{ ...stages[0]!, dwellHours: 0 }], 0, { minutes: -5 });
    expect(none.stages[0]?.dwellHours).toBe(0);
    expect(none.stoppedBy).toBe('it goes no lower than 0 h');
    expect(movedBy(stages, 1, { kelvins: 200 })).toMatchObject({
      stages: [{}, { targetC: 250 }],
      stoppedBy: 'it goes no higher than 250 °C',
    });
  });

  it('drag the end of a dwell: its length counts from where the ramp to it arrives', () => {
    // 50 K at 2 K/min after the first three hours: the dwell begins at 3 h 25 min.
    const later = draggedTo(program, stages, 1, { ...held, timeS: 10_800 + 25 * 60 + 2 * 3600 + 100 });
    expect(later.stages).toEqual([stages[0], { ...stages[1], dwellHours: 2 }]);
    // 10 K more take 5 min more, so that the same end of the dwell leaves it 5 min shorter.
    const both = draggedTo(program, stages, 1, { temperatureC: 130.4, timeS: 10_800 + 25 * 60 + 5400 });
    expect(both.stages[1]).toEqual({ targetC: 130, rampKPerMin: 2, dwellHours: 1.42 });
    expect(draggedTo(program, stages, 1, { ...held, temperatureC: 99.6 }).stages[1]).toEqual({
      ...stages[1],
      targetC: 100,
    });
    expect(draggedTo(program, stages, 1, { ...held, timeS: 0 })).toMatchObject({
      stages: [{}, { dwellHours: 0 }],
      stoppedBy: 'it goes no lower than 0 h',
    });
  });

  it('know a move that came to nothing', () => {
    const hottest = [{ ...stages[0]!, targetC: 250 }];
    expect(isSameStage(hottest[0]!, movedBy(hottest, 0, { kelvins: 1 }).stages[0]!)).toBe(true);
    expect(isSameStage(stages[0]!, movedBy(stages, 0, { kelvins: 1 }).stages[0]!)).toBe(false);
    expect(isSameStage(stages[0]!, movedBy(stages, 0, { minutes: 5 }).stages[0]!)).toBe(false);
  });

  it('stay between the axes, which leave room to drag into', () => {
    const plot = { left: 44, right: 500, top: 30, bottom: 260 };
    expect(nearestOnPlot([100, 100], plot)).toEqual({ atPx: [100, 100], isOutside: false });
    expect(nearestOnPlot([501, 100], plot)).toEqual({ atPx: [500, 100], isOutside: true });
    expect(nearestOnPlot([0, 999], plot)).toEqual({ atPx: [44, 260], isOutside: true });
    expect(nearestOnPlot([100, 0], plot)).toEqual({ atPx: [100, 30], isOutside: true });
    expect(withRoom({ lastS: 16_200, lowC: 20, highC: 120 })).toEqual({
      lastS: 20_250,
      lowC: 20,
      highC: 130,
    });
  });

  it('can drag a program that never heats back to one that does', () => {
    const cold = [{ targetC: 15, rampKPerMin: null, dwellHours: 3 }];
    const coldProgram = { ...program, stages: [{ targetC: 15, rampKPerMin: null, dwellS: 10_800 }] };
    expect(draggedTo(coldProgram, cold, 0, { temperatureC: 70, timeS: 3600 }).stages).toEqual([
      { targetC: 70, rampKPerMin: null, dwellHours: 1 },
    ]);
  });
});
