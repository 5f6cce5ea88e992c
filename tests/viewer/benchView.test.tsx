// @vitest-environment jsdom
import '@testing-library/jest-dom/vitest';
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import type { Patch, Section } from '../../src/core/mesh/types';
import type { MeasureReply, PartShape, Probe } from '../../src/pipeline/told';
import { BenchView, type BenchViewProps } from '../../src/viewer/BenchView';
import { ignore, measuredPart, questionWith } from '../pipeline/support';
import { plyAt } from '../steps/contexts';
import { tray } from '../support/meshes';

afterEach(cleanup);

let shape: PartShape;
let reply: MeasureReply;
let patches: readonly Patch[];
let section: Section;
let probe: Probe | null;

// jsdom has no WebGL and no workers: what is left must still tell everything.
beforeAll(async () => {
  // A wall of 1 mm where the stack wants more, and sides without draft.
  const question = questionWith({ plies: { stack: ['a', 'b', 'c', 'd', 'e'].map((id) => plyAt(id)) } });
  const part = await measuredPart(tray([60, 40, 12], 1), question);
  ({ shape, reply } = part);
  patches = await part.tell('places');
  section = await part.ask('cut', { axis: 'x', atMm: 0 });
  probe = await part.ask('probe', { originMm: [5, 5, -100], direction: [0, 0, 1] });
});

function props(changes: Partial<BenchViewProps> = {}): BenchViewProps {
  return {
    shape,
    maps: reply.maps,
    summary: reply.summary,
    pull: [0, 0, 1],
    limits: { measure: 'ray', stackMm: 1.2, leastDraftDeg: 2, leastCornerRadiusMm: 1.2 },
    map: 'wall',
    onMap: ignore,
    patches,
    selectedPatch: null,
    onSelectPatch: ignore,
    probe: null,
    onProbe: ignore,
    plane: null,
    section: null,
    onPlane: ignore,
    marked: null,
    onUnmark: ignore,
    ...changes,
  };
}

describe('bench view without WebGL', () => {
  it('says so, and tells legend and ranked places in words', async () => {
    const onSelectPatch = vi.fn();
    render(<BenchView {...props({ onSelectPatch })} />);
    expect(screen.getByRole('note')).toHaveTextContent('does not draw in 3-D');
    expect(screen.getByText('Wall less the wall wanted, mm')).toBeInTheDocument();
    const table = screen.getByRole('table', { name: 'Places with a finding, worst first' });
    expect(within(table).getAllByRole('row').length).toBe(1 + Math.min(5, patches.length));
    await userEvent.click(screen.getByRole('button', { name: `1 · ${patches[0]?.place}` }));
    expect(onSelectPatch).toHaveBeenCalledWith(patches[0]);
  });

  it('shows a wall as wall less stack', () => {
    const thin = patches.find(({ finding }) => finding === 'thin');
    render(<BenchView {...props({ patches: thin === undefined ? [] : [thin] })} />);
    expect(screen.getByText('−0.20 mm')).toBeInTheDocument();
  });

  it('changes the map by its button, and asks for a cut through the middle', async () => {
    const onMap = vi.fn();
    const onPlane = vi.fn();
    render(<BenchView {...props({ onMap, onPlane })} />);
    await userEvent.click(screen.getByRole('button', { name: 'Draft' }));
    await userEvent.click(screen.getByRole('button', { name: 'Cut' }));
    expect(onMap.mock.calls).toEqual([['draft'], ['cut']]);
    expect(onPlane.mock.calls).toEqual([[{ axis: 'x', atMm: 0 }]]);
  });

  it('draws the cut with its walls, also as a table, and moves it by keys', async () => {
    const onPlane = vi.fn();
    render(<BenchView {...props({ map: 'cut', plane: { axis: 'x', atMm: 0 }, section, onPlane })} />);
    expect(screen.getByRole('img', { name: /Cut across x at 0.0 mm/u })).toBeInTheDocument();
    const walls = screen.getByRole('table', { name: 'Walls along this cut' });
    expect(within(walls).getAllByRole('row').length).toBe(1 + section.walls.length);
    expect(screen.getByRole('slider')).toHaveAccessibleName('Position of the cut along x, mm');
    expect(screen.getByRole('textbox', { name: 'Cut at x' })).toHaveValue('0.0');
    await userEvent.click(screen.getByRole('button', { name: 'across z' }));
    expect(onPlane).toHaveBeenCalledWith({ axis: 'z', atMm: 6 });
  });

  it('tells what each face is, as areas', () => {
    render(<BenchView {...props({ map: 'kinds' })} />);
    const table = screen.getByRole('table', { name: 'What each face is' });
    expect(within(table).getByRole('cell', { name: 'show skin' })).toBeInTheDocument();
  });

  it('reads a probe out', () => {
    render(<BenchView {...props({ probe })} />);
    const readout = screen.getByRole('region', { name: 'Probe' });
    expect(readout).toHaveTextContent('Wall along the normal1.00');
    expect(readout).toHaveTextContent('Ray wall less stack−0.20');
  });

  it('says what is marked, and takes the marks off', async () => {
    const onUnmark = vi.fn();
    render(
      <BenchView {...props({ marked: { label: 'open edges', facets: Uint32Array.of(1) }, onUnmark })} />,
    );
    expect(screen.getByText(/Marked with dots: open edges/u)).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: 'Take the marks off' }));
    expect(onUnmark).toHaveBeenCalledOnce();
  });

  it('waits for what is not there yet', () => {
    render(<BenchView {...props({ shape: null, maps: null, summary: null, patches: null })} />);
    expect(screen.getByText(/No pattern yet/u)).toBeInTheDocument();
    expect(screen.queryByRole('table')).toBeNull();
  });
});
