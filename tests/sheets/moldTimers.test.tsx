// @vitest-environment jsdom
import { act, fireEvent, render, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { MoldTimers } from '../../src/sheets/mold/MoldTimers';
import { clockText, leftMs, paused, setTo, started, timerPhase } from '../../src/sheets/timers/timerMath';
import { TimerStrip } from '../../src/sheets/timers/TimerStrip';
import { useBenchTimers } from '../../src/sheets/timers/useBenchTimers';
import { createBell } from '../../src/sheets/timers/bell';
import { defaultProjectInputs } from '../../src/steps/inputs/project';
import { plannedTimes } from '../../src/steps/mold/plannedTimes';
import type { Workbook } from '../../src/workbook';
import { WorkbookContext } from '../../src/workbook/useWorkbook';
import { createMachine, done, type Machine } from '../workbook/support';
import './support';

const planned = plannedTimes(defaultProjectInputs);

describe('the clock of a timer', () => {
  it('shows a second that has begun', () => {
    expect([0, 1, 1000, 61_000, 245_000, 3_727_000].map(clockText)).toEqual([
      '0:00',
      '0:01',
      '0:01',
      '1:01',
      '4:05',
      '1:02:07',
    ]);
  });

  it('runs by the clock it is given, pauses and goes on', () => {
    const timer = started(setTo('mixing', 60), 1000);
    expect(leftMs(timer, 31_000)).toBe(30_000);
    const stopped = paused(timer, 31_000);
    expect(timerPhase(stopped, 9e9)).toBe('paused');
    const again = started(stopped, 100_000);
    expect(leftMs(again, 100_000)).toBe(30_000);
    expect(timerPhase(again, 130_000)).toBe('over');
    expect(leftMs(again, 9e9)).toBe(0);
  });

  it('offers the times that the inputs ask for', () => {
    expect(planned.map(({ id, lengthS }) => [id, lengthS])).toEqual([
      ['mixing', 60],
      ['working', 240],
      ['initialSet', 720],
      ['finalSet', 1800],
      ['demold', 3600],
      ['sealer', 1800],
      ['release', 900],
    ]);
  });
});

function Page({
  workbook,
  elsewhere = false,
}: {
  readonly workbook: Workbook;
  readonly elsewhere?: boolean;
}) {
  return (
    <WorkbookContext value={workbook}>
      <Timers elsewhere={elsewhere} />
    </WorkbookContext>
  );
}

function Timers({ elsewhere }: { readonly elsewhere: boolean }) {
  const bench = useBenchTimers(planned);
  return elsewhere ? (
    <TimerStrip bench={bench} planned={planned} href="#/p/lid/mold" />
  ) : (
    <MoldTimers bench={bench} planned={planned} />
  );
}

/** A machine whose clocks are the faked ones of the test. */
function tickingMachine(): Machine {
  const machine = createMachine();
  machine.clock = {
    get nowMs() {
      return Date.now();
    },
    get pageMs() {
      return performance.now();
    },
  };
  return machine;
}

/** A tab on the machine with its only project open; the former tab is gone. */
async function opened(machine: Machine): Promise<Workbook> {
  const { workbook } = machine.tab();
  const known = workbook.store.getState().projects[0]?.id;
  const id = known ?? done(workbook.createProject({ enclosure: 'Lamp', name: 'Lid' })).id;
  done(await workbook.openProject(id));
  return workbook;
}

const timer = (number: number) => within(screen.getByRole('region', { name: `Timer ${number}` }));
const click = (number: number, name: string) => fireEvent.click(timer(number).getByRole('button', { name }));
const readout = (number: number) => timer(number).getByRole('timer').textContent;

const pass = (seconds: number) => act(() => vi.advanceTimersByTimeAsync(seconds * 1000));

describe('two timers', () => {
  beforeEach(() => {
    vi.useFakeTimers();
    vi.setSystemTime(new Date('2031-05-06T08:00:00Z'));
  });
  afterEach(() => vi.useRealTimers());

  it('run at once, each with its own end, and say when it is over', async () => {
    render(<Page workbook={await opened(tickingMachine())} />);
    expect(readout(1)).toBe('1:00');
    expect(readout(2)).toBe('1:00:00');
    click(1, 'Start');
    click(2, 'Start');
    await pass(20);
    expect(readout(1)).toBe('0:40');
    expect(readout(2)).toBe('59:40');
    click(1, 'Pause');
    await pass(60);
    expect(readout(1)).toBe('0:40');
    click(1, 'Go on');
    await pass(41);
    expect(readout(1)).toBe('0:00');
    expect(timer(1).getByRole('status')).toHaveTextContent('Mixing: the time is over.');
    click(1, 'Stop the sound');
    expect(timer(1).queryByRole('button', { name: 'Stop the sound' })).toBeNull();
    click(1, 'Set back');
    expect(readout(1)).toBe('1:00');
  });

  it('are set to another of the planned times while they stand', async () => {
    render(<Page workbook={await opened(tickingMachine())} />);
    fireEvent.change(timer(1).getByRole('combobox'), { target: { value: 'working' } });
    expect(readout(1)).toBe('4:00');
    click(1, 'Start');
    expect(timer(1).getByRole('combobox')).toBeDisabled();
  });

  it('go on over a reload', async () => {
    const machine = tickingMachine();
    const before = await opened(machine);
    const first = render(<Page workbook={before} />);
    click(1, 'Start');
    await pass(15);
    first.unmount();
    before.dispose();
    await pass(15);
    render(<Page workbook={await opened(machine)} />);
    expect(readout(1)).toBe('0:30');
    await pass(31);
    expect(timer(1).getByRole('status')).toHaveTextContent('the time is over');
  });

  it('never show more than their length when the clock is set back a day, before and after a reload', async () => {
    const machine = tickingMachine();
    const before = await opened(machine);
    const first = render(<Page workbook={before} />);
    click(1, 'Start');
    await pass(9);
    vi.setSystemTime(Date.now() - 86_400_000);
    await pass(1);
    expect(readout(1)).toBe('0:50');
    expect(screen.getByText(/set back by 24:00:0\d while the time ran/u)).toBeVisible();
    first.unmount();
    before.dispose();
    render(<Page workbook={await opened(machine)} />);
    expect(readout(1)).toBe('0:50');
    await pass(51);
    expect(timer(1).getByRole('status')).toHaveTextContent('Mixing: the time is over.');
  });

  it('are told on the other sheets of the project', async () => {
    const machine = tickingMachine();
    const before = await opened(machine);
    const first = render(<Page workbook={before} />);
    click(1, 'Start');
    first.unmount();
    before.dispose();
    render(<Page workbook={await opened(machine)} elsewhere />);
    expect(screen.getByRole('link', { name: 'Mixing' })).toHaveAttribute('href', '#/p/lid/mold');
    await pass(61);
    fireEvent.click(screen.getByRole('button', { name: 'Stop the sound' }));
    expect(screen.queryByRole('button', { name: 'Stop the sound' })).toBeNull();
  });
});

const parameter = () => ({ value: 0, setValueAtTime: vi.fn(), linearRampToValueAtTime: vi.fn() });

describe('the bell', () => {
  it('makes three tones once the browser lets it sound', () => {
    const tones: number[] = [];
    const node = { connect: (next: unknown) => next };
    const context = {
      state: 'suspended',
      currentTime: 5,
      destination: {},
      resume() {
        context.state = 'running';
        return Promise.resolve();
      },
      close: () => Promise.resolve(),
      createGain: () => ({ ...node, gain: parameter() }),
      createOscillator: () => ({
        ...node,
        frequency: parameter(),
        start: (at: number) => tones.push(at),
        stop: vi.fn(),
      }),
    };
    const bell = createBell(() => context as unknown as AudioContext);
    expect(bell.ring()).toBe(false);
    bell.wake();
    expect(bell.ring()).toBe(true);
    expect(tones).toEqual([5, 5.3, 5.6]);
  });

  it('stays silent where the browser has no sound', () => {
    const bell = createBell(() => {
      throw new Error('no sound');
    });
    bell.wake();
    expect(bell.ring()).toBe(false);
    bell.close();
  });
});
