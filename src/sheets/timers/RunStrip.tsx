import { hoursMinutes } from '../../steps/cure/say';
import { elapsedS, runPhase } from '../cure/run/runMath';
import type { OvenRunControl } from '../cure/run/useOvenRun';
import './timers.css';

/** That the oven is on, on every page. */
export function RunStrip({ control, href }: { readonly control: OvenRunControl; readonly href: string }) {
  const phase = runPhase(control.run);
  if (phase !== 'running' && phase !== 'held') return null;
  return (
    <div className="timer-strip">
      <div>
        <a href={href}>{phase === 'held' ? 'Oven, held' : 'Oven on'}</a>{' '}
        <span className="number">
          {hoursMinutes(60 * Math.floor(elapsedS(control.run, control.nowMs) / 60))}
        </span>
      </div>
    </div>
  );
}
