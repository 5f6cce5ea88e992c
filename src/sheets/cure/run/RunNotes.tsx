import { useId, useState } from 'react';
import { clockHours } from '../../../steps/cure/say';
import { Button } from '../../../ui/Button';
import type { OvenRunControl } from './useOvenRun';

/** Notes of the run, each with the time at which it was made. */
export function RunNotes({ control }: { readonly control: OvenRunControl }) {
  const { run, disabled, put } = control;
  const [text, setText] = useState('');
  const id = useId();
  const add = () => {
    if (text.trim() === '') return;
    put((before, nowMs) => ({
      ...before,
      notes: [...before.notes, { atMs: nowMs, text: text.trim() }],
    }));
    setText('');
  };
  return (
    <>
      {run.notes.length === 0 ? null : (
        <ul className="run-notes">
          {run.notes.map((note, index) => (
            <li key={`${note.atMs} ${index}`}>
              {run.startedAtMs === null
                ? ''
                : `${clockHours(Math.max(0, note.atMs - run.startedAtMs) / 1000)} · `}
              {note.text}
            </li>
          ))}
        </ul>
      )}
      <div className="text-field">
        <label htmlFor={id}>Note</label>
        <div className={`field ${disabled ? 'field-off' : ''}`}>
          <input
            id={id}
            type="text"
            value={text}
            maxLength={400}
            disabled={disabled}
            autoComplete="off"
            onChange={(event) => setText(event.target.value)}
            onKeyDown={(event) => {
              if (event.key === 'Enter') add();
            }}
          />
        </div>
      </div>
      <div className="button-row below-table">
        <Button disabled={disabled} onClick={add}>
          Add the note
        </Button>
      </div>
    </>
  );
}
