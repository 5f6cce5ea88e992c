import { useId, useState, type KeyboardEvent } from 'react';
import { longestName } from '../../workbook';
import { Button } from '../../ui/Button';
import { Dialog } from '../../ui/Dialog';

export interface ProjectNames {
  readonly enclosure: string;
  readonly name: string;
}

export interface NamesDialogProps {
  readonly title: string;
  readonly doLabel: string;
  readonly initial: ProjectNames;
  /** Enclosures already in use, offered while typing. */
  readonly enclosures: readonly string[];
  /** Returns why the names were refused, or null when done. */
  readonly onDo: (names: ProjectNames) => Promise<string | null>;
  readonly onClose: () => void;
}

/** Asks for the enclosure and the part, for a new project or a new name. */
export function NamesDialog({ title, doLabel, initial, enclosures, onDo, onClose }: NamesDialogProps) {
  const [names, setNames] = useState(initial);
  const [refusal, setRefusal] = useState<string | null>(null);
  const ids = useId();
  const submit = async () => setRefusal(await onDo(names));
  const submitOnEnter = (event: KeyboardEvent) => {
    if (event.key === 'Enter') void submit();
  };
  return (
    <Dialog
      title={title}
      onClose={onClose}
      actions={
        <>
          <Button kind="main" onClick={() => void submit()}>
            {doLabel}
          </Button>
          <Button onClick={onClose}>Cancel</Button>
        </>
      }
    >
      <div className="text-field">
        <label htmlFor={`${ids}-enclosure`}>Enclosure</label>
        <div className="field">
          <input
            id={`${ids}-enclosure`}
            type="text"
            list={`${ids}-known`}
            maxLength={longestName}
            autoComplete="off"
            value={names.enclosure}
            onChange={(event) => setNames({ ...names, enclosure: event.target.value })}
            onKeyDown={submitOnEnter}
          />
        </div>
        <datalist id={`${ids}-known`}>
          {enclosures.map((enclosure) => (
            <option key={enclosure} value={enclosure} />
          ))}
        </datalist>
      </div>
      <div className="text-field">
        <label htmlFor={`${ids}-name`}>Part, usually a half</label>
        <div className="field">
          <input
            id={`${ids}-name`}
            type="text"
            maxLength={longestName}
            autoComplete="off"
            value={names.name}
            onChange={(event) => setNames({ ...names, name: event.target.value })}
            onKeyDown={submitOnEnter}
          />
        </div>
      </div>
      {refusal ? (
        <p className="field-error" role="alert">
          {refusal}
        </p>
      ) : null}
    </Dialog>
  );
}
