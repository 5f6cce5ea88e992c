/** What is known of the part once it is out. */
import { line, reading, stopsOf, value, type Material, type PhaseDraft } from '../lines';

export function finishPhase(material: Material): PhaseDraft {
  return {
    id: 'finish',
    title: 'Finish',
    stops: stopsOf(material, 'finish.'),
    table: null,
    actions: [
      line('finish.trim', 'Flash and rim trimmed, edges sealed.'),
      ...reading(
        material,
        'finish.size',
        `Part measured; ${value(material, 'mold.wantedLengthMm')} wanted.`,
        ['finished.x', 'finished.y', 'finished.wall'],
        ['mold.wantedLengthMm'],
      ),
      ...reading(
        material,
        'finish.mass',
        'Part weighed before any coat.',
        ['finished.mass'],
        ['plies.partMassG'],
      ),
      line(
        'finish.enter',
        'All m numbers entered on the Bench page: it says what to change for the next half.',
      ),
    ],
  };
}
