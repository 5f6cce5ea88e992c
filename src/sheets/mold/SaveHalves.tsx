import type { MoldReply, StoneHalf } from '../../pipeline/told';
import { Button } from '../../ui/Button';

export interface SaveHalvesProps {
  /** Null while the halves are not cast. */
  readonly cast: MoldReply | null;
  readonly onSave: (half: StoneHalf) => void;
}

const halves: readonly StoneHalf[] = ['negative', 'positive'];

/** The two halves as files, for a frame, a trial print or a replacement. */
export function SaveHalves({ cast, onSave }: SaveHalvesProps) {
  const noSolid = cast !== null && cast.halves === null;
  return (
    <>
      <div className="button-row below-table">
        {halves.map((half) => (
          <Button key={half} disabled={cast?.halves == null} onClick={() => onSave(half)}>
            Save {half} as STL
          </Button>
        ))}
      </div>
      <p className="quiet">
        {noSolid
          ? `There are only volumes to be had here, no solids. ${cast.geometry.why}`
          : 'In mm, in the axes of the pattern file: for a frame, a trial print or a replacement.'}
      </p>
    </>
  );
}
