import { useState } from 'react';
import type { Asks, SplitHalf } from '../../pipeline/asks';
import type { SplitControl } from '../../sheets/fit/SplitPlace';
import type { Measuring } from '../../sheets/measuring/useMeasured';
import type { Project, ProjectSeed } from '../../workbook';
import { longestName } from '../../workbook';
import { useWorkbook, useWorkbookState } from '../../workbook/useWorkbook';
import { goTo, projectHref } from '../route';

/** Up and down where the pull tells. */
const namesOf = ([x, y, z]: readonly number[]): readonly [along: string, against: string] => {
  if (!(Math.abs(z!) > Math.max(Math.abs(x!), Math.abs(y!)))) return ['First half', 'Second half'];
  return z! > 0 ? ['Upper half', 'Lower half'] : ['Lower half', 'Upper half'];
};

/** The model of the open project as two new projects that are mates; what refuses stands in the desk's own note. */
export function useSplit(project: Project, { desk, found, importing }: Measuring): SplitControl {
  const workbook = useWorkbook();
  const projects = useWorkbookState((state) => state.projects);
  const [isWorking, setIsWorking] = useState(false);
  const { enclosure, inputs, cards } = project;
  const { pull } = inputs.part;

  /** A name that no other part of the enclosure has. */
  const free = (name: string): string => {
    const taken = new Set(projects.filter((one) => one.enclosure === enclosure).map((one) => one.name));
    for (let number = 1; ; number++) {
      const ending = number === 1 ? '' : ` ${number}`;
      const candidate = name.slice(0, longestName - ending.length) + ending;
      if (!taken.has(candidate)) return candidate;
    }
  };
  const seed = (name: string, half: SplitHalf, sign: 1 | -1): ProjectSeed => ({
    enclosure,
    name,
    cards,
    pattern: half.pattern,
    packedMesh: half.packed,
    inputs: {
      ...inputs,
      part: {
        ...inputs.part,
        unit: 'mm',
        body: 0,
        scale: 1,
        pull: [sign * pull[0], sign * pull[1], sign * pull[2]],
        rightWayUp: 'settled',
      },
    },
  });
  const split = async (heightMm: number) => {
    setIsWorking(true);
    try {
      const [along, against] = namesOf(pull).map(free) as [string, string];
      const given: Asks['split']['given'] = { heightMm, fileNames: [`${along}.stl`, `${against}.stl`] };
      const halves = await desk.run('splitting the solid', 'split', given);
      if (halves === null) return;
      const [first] = workbook.addMates([seed(along, halves.along, 1), seed(against, halves.against, -1)]);
      goTo(projectHref(first, 'fit'));
    } finally {
      setIsWorking(false);
    }
  };

  const box = found.measured?.summary;
  const heightMm =
    box === undefined
      ? null
      : pull.reduce(
          (sum, share, axis) => sum + Math.abs(share) * (box.boxMaxMm[axis]! - box.boxMinMm[axis]!),
          0,
        ) / Math.hypot(...pull);
  return { heightMm, isBusy: isWorking || importing, split: (at) => void split(at) };
}
