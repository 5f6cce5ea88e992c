import { cumsum } from 'd3-array';
import { Fragment, useId } from 'react';
import { HatchPattern, type Hatch } from './HatchPattern';
import { useWidth } from './useWidth';

export interface ShareSegment {
  readonly id: string;
  /** One word, e.g. "loose". */
  readonly label: string;
  /** 0 to 1 of the whole. */
  readonly share: number;
  /** Its color on the page. */
  readonly tone: 'loose' | 'light' | 'fits' | 'tight' | 'unknown';
  readonly hatch: Hatch;
}

const heightPx = 34;
/** Average advance of a bold letter at 16 px, and room at both ends. */
const letterPx = 8.8;
const paddingPx = 14;

const percentText = (share: number) => {
  const percent = share * 100;
  return percent > 0 && percent < 1 ? 'under 1 %' : `${Math.round(percent)} %`;
};

/** Shares of one whole as a hatched bar; what is too narrow for its label is named under the bar. */
export function ShareBar({
  title,
  segments,
}: {
  /** What the whole is, e.g. "Show face by wall". */
  readonly title: string;
  readonly segments: readonly ShareSegment[];
}) {
  const id = useId();
  const [box, widthPx] = useWidth<HTMLDivElement>();
  const shown = segments.filter(({ share }) => share > 0);
  const starts = cumsum(shown, ({ share }) => share);
  const placed = shown.map((segment, i) => {
    const text = `${segment.label} ${percentText(segment.share)}`;
    return {
      ...segment,
      text,
      from: (starts[i] ?? 0) - segment.share,
      inside: segment.share * widthPx >= text.length * letterPx + paddingPx,
    };
  });
  const outside = placed.filter(({ inside }) => !inside);
  const summary = placed.map(({ text }) => text).join(', ');
  return (
    <div ref={box} className="share-bar">
      <svg width="100%" height={heightPx} role="img" aria-label={`${title}: ${summary}`}>
        <defs>
          {placed.map(({ id: segmentId, hatch }) =>
            hatch === 'none' ? null : (
              <HatchPattern key={segmentId} id={`${id}-${segmentId}`} hatch={hatch} />
            ),
          )}
        </defs>
        {placed.map((segment) => {
          const x = segment.from * widthPx;
          const width = segment.share * widthPx;
          return (
            <Fragment key={segment.id}>
              <rect x={x} width={width} height={heightPx} className={`tone-${segment.tone}`} />
              {segment.hatch === 'none' ? null : (
                <rect x={x} width={width} height={heightPx} fill={`url(#${id}-${segment.id})`} />
              )}
              {segment.inside ? (
                <>
                  <rect
                    x={x + width / 2 - (segment.text.length * letterPx) / 2 - 4}
                    y={6}
                    width={segment.text.length * letterPx + 8}
                    height={heightPx - 12}
                    className={`tone-${segment.tone}`}
                  />
                  <text x={x + width / 2} y={heightPx / 2} className={`share-bar-label on-${segment.tone}`}>
                    {segment.text}
                  </text>
                </>
              ) : null}
            </Fragment>
          );
        })}
        <rect
          x={0.5}
          y={0.5}
          width={Math.max(0, widthPx - 1)}
          height={heightPx - 1}
          className="chart-frame"
        />
      </svg>
      {outside.length === 0 ? null : (
        <ul className="share-bar-outside" aria-hidden>
          {outside.map((segment) => (
            <li key={segment.id}>
              <svg width={18} height={18} aria-hidden>
                <rect width={18} height={18} className={`tone-${segment.tone}`} />
                {segment.hatch === 'none' ? null : (
                  <rect width={18} height={18} fill={`url(#${id}-${segment.id})`} />
                )}
                <rect x={0.5} y={0.5} width={17} height={17} className="chart-frame" />
              </svg>
              {segment.text}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
