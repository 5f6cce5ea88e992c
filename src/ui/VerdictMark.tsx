import type { VerdictWord } from '../core/figure';

/** Name of the CSS classes `mark-...` and `verdict-...` for a verdict. */
export const verdictClass: Record<VerdictWord, string> = {
  go: 'go',
  'look again': 'look',
  stop: 'stop',
  'not yet known': 'unknown',
};

/** The shapes differ, so that the mark reads without color: ringed tick, triangle, filled square, dashed ring. */
const shapes: Record<VerdictWord, React.ReactNode> = {
  go: (
    <g fill="none" stroke="currentColor" strokeWidth="2.2">
      <circle cx="12" cy="12" r="9.4" />
      <path d="M7.4 12.4l3.2 3.3 6.2-7" strokeWidth="2.6" />
    </g>
  ),
  'look again': (
    <g fill="none" stroke="currentColor" strokeWidth="2.2" strokeLinejoin="round">
      <path d="M12 3.2L22 20.6H2z" />
      <path d="M12 9.2v5.6M12 16.8v2" />
    </g>
  ),
  stop: (
    <g>
      <rect x="2.5" y="2.5" width="19" height="19" fill="currentColor" />
      <path d="M8 8l8 8M16 8l-8 8" stroke="var(--sheet)" strokeWidth="3" />
    </g>
  ),
  'not yet known': (
    <circle
      cx="12"
      cy="12"
      r="9.4"
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
      strokeDasharray="2.4 3.5"
    />
  ),
};

export interface VerdictMarkProps {
  readonly word: VerdictWord;
  readonly sizePx?: number;
  /** When the word already stands beside the mark. */
  readonly decorative?: boolean;
}

export function VerdictMark({ word, sizePx = 22, decorative = false }: VerdictMarkProps) {
  const naming = decorative ? { 'aria-hidden': true } : { role: 'img', 'aria-label': word };
  return (
    <svg
      className={`mark mark-${verdictClass[word]}`}
      width={sizePx}
      height={sizePx}
      viewBox="0 0 24 24"
      {...naming}
    >
      {shapes[word]}
    </svg>
  );
}
