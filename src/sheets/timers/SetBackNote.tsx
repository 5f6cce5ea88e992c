import { Note } from '../../ui/Note';
import { clockText } from './timerMath';

/** The clock of the machine was set back while something ran; nothing while that was not so. */
export function SetBackNote({ setBackMs }: { readonly setBackMs: number }) {
  if (setBackMs === 0) return null;
  return (
    <Note problem>
      The clock of this computer was set back by {clockText(setBackMs)} while the time ran. It is counted on
      without that; if the page was closed meanwhile, the time until it was opened again is not in it. Look at
      your watch.
    </Note>
  );
}
