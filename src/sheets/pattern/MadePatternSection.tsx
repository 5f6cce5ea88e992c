import type { Figure } from '../../core/figure';
import type { PatternSummary } from '../../core/pattern/makePattern';
import { formatNumber } from '../../core/units/formatNumber';
import { nameOfMade } from '../../steps/pattern/nameOfMade';
import { Button } from '../../ui/Button';
import { SectionHead } from '../../ui/SectionHead';
import { FigureGroups, type FigureGroup } from '../FigureGroups';
import { HolesToCut } from './HolesToCut';
import type { MadeHere } from './patternControl';

export interface MadePatternSectionProps {
  readonly made: MadeHere;
  readonly figures: readonly Figure[];
  /** Of the import. */
  readonly fileName: string;
  readonly mayUse: boolean;
  readonly printScale: number;
  readonly onSave: () => void;
  readonly onSaveToPrint: (format: 'stl' | '3mf') => void;
  readonly onSaveTemplate: (made: PatternSummary) => void;
  readonly onUse: () => void;
}

/** What stands behind the four figures that tell whether the shell is the one that was asked for. */
export const madeFigureGroups: readonly FigureGroup[] = [
  {
    title: 'All figures',
    ids: [
      'pattern.wallP1Mm',
      'pattern.wallP99Mm',
      'pattern.shareUnderDraft',
      'pattern.addedShare',
      'pattern.takenMaxMm',
      'pattern.filledMm3',
      'pattern.holes',
      'pattern.layerStepMm',
      'pattern.triangles',
    ],
    shown: ['pattern.wallP1Mm', 'pattern.wallP99Mm'],
  },
];

/** The shell that was made: what it is like, what is to be cut, and the two things to do with it. */
export function MadePatternSection(props: MadePatternSectionProps) {
  const { made, figures, fileName, mayUse, printScale, onSave, onSaveToPrint, onSaveTemplate, onUse } = props;
  const { wallMm, draftDeg } = made.choices;
  return (
    <section aria-label="The made pattern">
      <SectionHead
        title="The made pattern"
        remark={`asked for: wall ${formatNumber(wallMm, 2)} mm, draft ${formatNumber(draftDeg, 1)}°`}
      />
      <FigureGroups figures={figures} groups={madeFigureGroups} />
      <HolesToCut summary={made.summary} onSaveTemplate={() => onSaveTemplate(made.summary)} />
      <div className="button-row below-table">
        <Button kind="main" disabled={!mayUse} onClick={onUse}>
          Use as pattern
        </Button>
        <Button onClick={onSave}>Save pattern as STL</Button>
        <Button onClick={() => onSaveToPrint('3mf')}>Save to print as 3MF</Button>
        <Button onClick={() => onSaveToPrint('stl')}>Save to print as STL</Button>
      </div>
      <p className="quiet below-table">
        “To print” stands on its rim and is larger by the print scale, ×{formatNumber(printScale, 4)} (Mold);
        measure and import the other one.
      </p>
      <p className="quiet below-table">
        “Use as pattern” puts {nameOfMade(fileName)} in the place of {fileName}, and every step judges it
        anew. {fileName} stays in the project, and you can go back to it.
      </p>
    </section>
  );
}
