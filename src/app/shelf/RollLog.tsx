import { useId, useState } from 'react';
import { formatNumber } from '../../core/units/formatNumber';
import { Button } from '../../ui/Button';
import { NumberField } from '../../ui/NumberField';
import type { ListedProject } from '../../workbook';
import { hoursOutOf, outTimeLeftH, type ShelfCard } from '../../workbook/shelfCards';
import { hoursOutSpec } from './hoursOutSpec';
import { dayOf } from './shelfWords';

export interface RollLogProps {
  readonly card: ShelfCard;
  readonly projects: readonly ListedProject[];
  readonly onLog: (hoursH: number, project: string) => void;
  readonly onRemove: (sessionId: string) => void;
}

/** When a roll was out of the freezer and for which part, over all projects, and what is left of its out-life. */
export function RollLog({ card, projects, onLog, onRemove }: RollLogProps) {
  const [hoursH, setHoursH] = useState<number | null>(null);
  const [project, setProject] = useState('');
  const projectId = useId();
  const names = [...new Set(projects.map(({ enclosure, name }) => `${enclosure}, ${name}`))];
  return (
    <section className="roll-log" aria-label={`Out of the freezer: ${card.name}`}>
      <h3>Out of the freezer</h3>
      <p>{outLifeWords(card)}</p>
      <NumberField spec={hoursOutSpec} value={hoursH} emptyWord="" disabled={false} onChange={setHoursH} />
      <div className="shelf-pick">
        <label htmlFor={projectId}>For</label>
        <select
          id={projectId}
          className="select"
          value={project}
          onChange={(event) => setProject(event.target.value)}
        >
          <option value="">no part of this list</option>
          {names.map((name) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
        <Button
          disabled={hoursH === null}
          onClick={() => {
            if (hoursH === null) return;
            onLog(hoursH, project);
            setHoursH(null);
          }}
        >
          Write it down
        </Button>
      </div>
      <ul className="project-list">
        {card.log.toReversed().map((session) => (
          <li key={session.id} className="project-line">
            <span>
              {formatNumber(session.hoursH, 1)} h
              <span className="row-note">
                {dayOf(session.at)}
                {session.project === '' ? '' : `, ${session.project}`}
              </span>
            </span>
            <Button
              aria-label={`Take out: ${formatNumber(session.hoursH, 1)} h, ${dayOf(session.at)}`}
              onClick={() => onRemove(session.id)}
            >
              Take out
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** "36.5 h out in all, 683.5 h left of the 720 h allowed". */
export function outLifeWords(card: ShelfCard): string {
  const outH = `${formatNumber(hoursOutOf(card), 1)} h out in all`;
  const leftH = outTimeLeftH(card);
  if (leftH === null) return `${outH}; what the supplier allows is not on the card`;
  if (leftH < 0) return `${outH}: over its out-life by ${formatNumber(-leftH, 1)} h`;
  return `${outH}, ${formatNumber(leftH, 1)} h left of its out-life`;
}
