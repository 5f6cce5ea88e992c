import type { ReactNode } from 'react';
import { formatNumber } from '../core/units/formatNumber';
import type { PartShape } from '../pipeline/told';
import type { PatternRecord } from '../steps/shared/context';
import { Button } from '../ui/Button';
import { FilePick } from '../ui/FilePick';
import { Menu } from '../ui/Menu';
import { useUndoState, useWorkbook } from '../workbook/useWorkbook';
import { givenFileKinds } from './givenFile';
import { ThemeToggle } from './ThemeToggle';

export interface TopBarProps {
  readonly projectName: string;
  readonly pattern: PatternRecord | null;
  readonly shape: PartShape | null;
  readonly onSaveFile: () => void;
  readonly onSaveFigures: () => void;
  readonly onOpenFile: (file: File) => void;
  readonly onPrint: () => void;
}

function patternText(pattern: PatternRecord, shape: PartShape | null): ReactNode {
  if (shape === null) return `pattern ${pattern.fileName}`;
  const size = shape.boxMaxMm.map((high, axis) => formatNumber(high - (shape.boxMinMm[axis] ?? 0), 1));
  return `pattern ${pattern.fileName} · ${size.join(' × ')} mm`;
}

/** Whose sheet this is, undo and redo, the project file, and the way to paper. */
export function TopBar(props: TopBarProps) {
  const { projectName, pattern, shape, onSaveFile, onSaveFigures, onOpenFile, onPrint } = props;
  const workbook = useWorkbook();
  const { canUndo, canRedo } = useUndoState();
  return (
    <header className="bar">
      <p className="bar-name">
        <strong>{projectName}</strong>
        <span className="quiet">{pattern ? patternText(pattern, shape) : 'no pattern yet'}</span>
      </p>
      <ThemeToggle />
      <Button disabled={!canUndo} onClick={() => workbook.undo()}>
        Undo
      </Button>
      <Button disabled={!canRedo} onClick={() => workbook.redo()}>
        Redo
      </Button>
      <Menu label="Project file">
        <Button onClick={onSaveFile}>Save this project as a file</Button>
        <Button onClick={onSaveFigures}>Save all figures as JSON</Button>
        <FilePick accept={givenFileKinds} inputLabel="Project file" onFile={onOpenFile}>
          Open a project file
        </FilePick>
      </Menu>
      <Button kind="main" onClick={onPrint}>
        Print checklist
      </Button>
    </header>
  );
}
