import { useSyncExternalStore } from 'react';
import { Button } from '../ui/Button';
import { Note } from '../ui/Note';
import { loadNewVersion, offlineCopy, onOfflineCopy } from './offline';

export interface NewVersionNoteProps {
  /** Writes what is not saved yet. */
  readonly onBeforeReload: () => void;
}

/** Offers a newer version when one waits; the page never reloads by itself, since that would lose what is being typed. */
export function NewVersionNote({ onBeforeReload }: NewVersionNoteProps) {
  const { newVersion } = useSyncExternalStore(onOfflineCopy, offlineCopy);
  if (!newVersion) return null;
  return (
    <Note>
      A newer version of the workbook is ready. Your projects stay as they are, and other open tabs keep their
      version until you load it there.{' '}
      <Button
        onClick={() => {
          onBeforeReload();
          loadNewVersion();
        }}
      >
        Load it now
      </Button>
    </Note>
  );
}
