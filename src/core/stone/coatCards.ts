/**
 * Typical sealers for stone and release agents, and the heat they bear. No sheet of a supplier was opened: the ends are
 * from memory (`coatLimitsFromMemory` in core/sources), and the sheet of the very can replaces them.
 */
import { Problem } from '../problem';

export interface CoatCard {
  readonly name: string;
  /** Stays hard and tight up to here with any product of the kind, and with none beyond the other end, °C. */
  readonly bearsC: readonly [number, number];
  /** What it does when it gets too hot. */
  readonly fails: string;
}

export const sealerCards = {
  shellac: { name: 'shellac', bearsC: [60, 75], fails: 'softens and sticks' },
  acrylic: { name: 'acrylic lacquer', bearsC: [70, 100], fails: 'softens and sticks' },
  polyurethane: { name: 'polyurethane varnish', bearsC: [100, 130], fails: 'yellows, softens and lifts' },
  epoxy: { name: 'epoxy set at room temperature', bearsC: [50, 80], fails: 'softens and takes prints' },
  'post-cured epoxy': {
    name: 'epoxy for heat, post-cured',
    bearsC: [110, 150],
    fails: 'softens and takes prints',
  },
} as const satisfies Record<string, CoatCard>;

export const releaseCards = {
  wax: { name: 'paste wax', bearsC: [75, 120], fails: 'melts and runs' },
  PVA: { name: 'polyvinyl alcohol film', bearsC: [80, 120], fails: 'hardens and will not wash off' },
  'semi-permanent': { name: 'semi-permanent polymer', bearsC: [180, 300], fails: 'breaks down' },
  PTFE: { name: 'PTFE dry film', bearsC: [200, 260], fails: 'breaks down and gives off fumes' },
} as const satisfies Record<string, CoatCard>;

export type CoatAnswer = 'bears it' | 'some bear it' | 'too hot';

/**
 * Whether a coat bears `hottestC`. A limit of the supplier's own replaces both ends of the card.
 * @throws Problem `coat.limit` for a temperature or limit that is no number
 */
export function coatBears({ bearsC }: Pick<CoatCard, 'bearsC'>, hottestC: number): CoatAnswer {
  const [every, some] = bearsC;
  if (!Number.isFinite(hottestC) || !(every <= some))
    throw new Problem('coat.limit', 'The heat that a coat bears needs a temperature in °C.');
  if (hottestC <= every) return 'bears it';
  return hottestC <= some ? 'some bear it' : 'too hot';
}
