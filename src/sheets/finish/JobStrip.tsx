import type { Job } from '../../steps/finish/job';

const [widthPx, rowPx] = [640, 20];
/** Where the names end. */
const namePx = 250;

/** The job as a strip: work as full bars, waiting as thin ones, a line at each midnight. */
export function JobStrip({ job: { scheduled } }: { readonly job: Job }) {
  const end = Math.max(1440, ...scheduled.map(({ endMin }) => endMin));
  const x = (minutes: number) => namePx + ((widthPx - namePx) * minutes) / end;
  const days = Array.from({ length: Math.min(400, Math.floor(end / 1440) + 1) }, (_, day) => day);
  const heightPx = rowPx * scheduled.length;
  return (
    <figure className="chart">
      <svg
        viewBox={`0 0 ${widthPx} ${heightPx}`}
        role="img"
        aria-label={`Calendar of the job, ${days.length} days`}
      >
        {days.map((day) => (
          <line
            key={day}
            x1={x(1440 * day)}
            x2={x(1440 * day)}
            y1={0}
            y2={heightPx}
            stroke="currentColor"
            strokeOpacity="0.2"
          />
        ))}
        {scheduled.map(({ id, name, startMin, workEndMin, endMin }, row) => (
          <g key={id} fill="currentColor">
            <text x={0} y={rowPx * row + 14} fontSize="13">
              {name.length > 36 ? `${name.slice(0, 35)}…` : name}
            </text>
            <rect
              x={x(startMin)}
              y={rowPx * row + 4}
              height={12}
              width={Math.max(1, x(workEndMin) - x(startMin))}
            />
            <rect
              x={x(workEndMin)}
              y={rowPx * row + 8}
              height={4}
              width={Math.max(0, x(endMin) - x(workEndMin))}
              fillOpacity="0.5"
            />
          </g>
        ))}
      </svg>
      <figcaption>Work (bars) and waiting (thin bars); each line is a midnight.</figcaption>
    </figure>
  );
}
