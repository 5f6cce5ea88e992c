import { formatNumber } from '../../core/units/formatNumber';
import type { PatternRecord } from '../../steps/shared/context';
import { FilePick } from '../../ui/FilePick';
import { Note } from '../../ui/Note';
import { DropArea } from './DropArea';

const formatNames: Record<PatternRecord['format'], string> = {
  'stl-binary': 'STL, binary',
  'stl-ascii': 'STL, text',
  obj: 'OBJ',
  '3mf': '3MF',
};

export interface PatternFileProps {
  readonly pattern: PatternRecord | null;
  readonly problem: string | null;
  readonly disabled: boolean;
  readonly onFile: (file: File) => void;
}

/** The model file: picked or dropped, with what is known of the one that is in. */
export function PatternFile({ pattern, problem, disabled, onFile }: PatternFileProps) {
  return (
    <DropArea disabled={disabled} onFile={onFile}>
      <div className="pattern-file">
        <div>
          <strong>{pattern?.fileName ?? 'No pattern yet'}</strong>
          <span className="row-note">
            {pattern
              ? `${formatNames[pattern.format]} · ${formatNumber(pattern.triangles, 0)} triangles · sha256 ${pattern.sha256.slice(0, 12)}`
              : 'Drop the model of the printed shell here: STL, 3MF or OBJ.'}
          </span>
        </div>
        <FilePick
          kind={pattern ? 'plain' : 'main'}
          accept=".stl,.obj,.3mf,model/stl,model/obj,model/3mf"
          inputLabel="Model file"
          disabled={disabled}
          onFile={onFile}
        >
          {pattern ? 'Replace file' : 'Choose model file'}
        </FilePick>
      </div>
      {problem ? <Note problem>{problem}</Note> : null}
      {pattern && pattern.notes.length > 0 ? (
        <ul className="pattern-notes">
          {pattern.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      ) : null}
    </DropArea>
  );
}
