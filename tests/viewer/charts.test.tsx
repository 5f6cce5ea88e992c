// @vitest-environment jsdom
import '@testing-library/jest-dom/vitest';
import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import { areaHistogram } from '../../src/core/mesh/areaHistogram';
import type { Section } from '../../src/core/mesh/types';
import { Histogram } from '../../src/ui/charts/Histogram';
import { SectionDrawing } from '../../src/ui/charts/SectionDrawing';
import { ShareBar } from '../../src/ui/charts/ShareBar';

afterEach(cleanup);

describe('share bar', () => {
  it('labels wide shares inside, names narrow ones under the bar, and says all of it in words', () => {
    render(
      <ShareBar
        title="Show face by wall"
        segments={[
          { id: 'loose', label: 'loose', share: 0.71, tone: 'loose', hatch: 'slant' },
          { id: 'fits', label: 'fits', share: 0.266, tone: 'fits', hatch: 'none' },
          { id: 'thin', label: 'thin', share: 0.024, tone: 'tight', hatch: 'cross' },
          { id: 'none', label: 'not measured', share: 0, tone: 'unknown', hatch: 'dots' },
        ]}
      />,
    );
    expect(screen.getByRole('img')).toHaveAccessibleName(
      'Show face by wall: loose 71 %, fits 27 %, thin 2 %',
    );
    expect(screen.getByText('loose 71 %').tagName).toBe('text');
    expect(screen.getByText('thin 2 %').tagName).toBe('LI');
    expect(screen.queryByText(/not measured/u)).toBeNull();
  });
});

describe('histogram', () => {
  const histogram = areaHistogram([0.85, 0.95, 1.3], [200, 500, 600], 0.8, 1.2, 4);

  it('has a name, a description and the band, and gives the numbers as a table', async () => {
    render(
      <Histogram
        title="Wall of the show face"
        description="Most of it is 0.9 mm."
        histogram={histogram}
        unit="mm"
        decimals={2}
        band={{ low: 0.85, high: 0.97, label: 'stack' }}
      />,
    );
    expect(screen.getByRole('img')).toHaveAccessibleName('Wall of the show face Most of it is 0.9 mm.');
    expect(screen.getByText('stack')).toBeInTheDocument();
    expect(screen.getByText('Not drawn: over 1.20 mm: 1.00 cm².')).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: 'Show as a table' }));
    expect(screen.getAllByRole('row').length).toBe(1 + 4);
    expect(screen.getByText('3.00')).toBeInTheDocument();
  });
});

describe('section drawing', () => {
  const section: Section = {
    plane: { axis: 'x', atMm: 12.5 },
    lines: [{ pointsMm: Float64Array.of(0, 0, 40, 0, 40, 10, 0, 10), closed: true }],
    walls: [{ fromMm: [20, 10], toMm: [20, 9.1], wallMm: 0.9 }],
  };

  it('writes the walls as dimensions, and names the cut', () => {
    const { container } = render(<SectionDrawing section={section} across="y" up="z" />);
    expect(screen.getByRole('img')).toHaveAccessibleName(
      /Cut across x at 12.5 mm Walls along the cut: 0.90 mm/u,
    );
    expect([...container.querySelectorAll('text')].map(({ textContent }) => textContent)).toEqual([
      '0.90',
      '10 mm',
      'y to the right, z up; walls in mm',
    ]);
  });

  it('keeps the same scale both ways', () => {
    const { container } = render(<SectionDrawing section={section} across="y" up="z" />);
    const numbers =
      (container.querySelector('.section-line')?.getAttribute('d') ?? '').match(/-?[\d.]+/gu) ?? [];
    const [x0, y0, x1, y1, , y2] = numbers.map(Number) as [number, number, number, number, number, number];
    expect((x1 - x0) / 40).toBeCloseTo((y1 - y2) / 10, 3);
    expect(y0).toBe(y1);
  });

  it('says so when the plane misses the part', () => {
    render(<SectionDrawing section={{ ...section, lines: [], walls: [] }} across="y" up="z" />);
    expect(screen.getByText('Cut across x at 12.5 mm: nothing of the part is there.')).toBeInTheDocument();
  });
});
