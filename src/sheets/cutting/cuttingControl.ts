/** What the Ply cutting sheet may ask for, and what has come of it in this session. */
import type { CutAndNested } from '../../steps/cutting/report';

export type TemplateKind = 'pdf' | 'svg' | 'dxf';

export interface CuttingControl {
  /** Why the pieces cannot be worked out, or could not be; '' while neither is so. */
  readonly why: string;
  /** Of the present part and inputs; null when none are. Where they lie on the roll may be of other inputs, and is words then. */
  readonly cut: CutAndNested | null;
  /** Pieces were worked out with other inputs, or of another part. */
  readonly isOutdated: boolean;
  /** The part is not measured yet, or pieces are being worked out. */
  readonly isBusy: boolean;
  readonly workOut: () => void;
  /** On the paper of the inputs. */
  readonly save: (kind: TemplateKind) => void;
}
