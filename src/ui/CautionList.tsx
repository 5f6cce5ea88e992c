import type { Caution } from '../core/figure';

/** The usual cautions of a step; nothing when it has none. */
export function CautionList({ cautions }: { readonly cautions: readonly Caution[] }) {
  if (cautions.length === 0) return null;
  return (
    <section className="cautions" aria-label="Cautions">
      <h2>Take care</h2>
      <ul>
        {cautions.map((caution) => (
          <li key={caution.id}>{caution.text}</li>
        ))}
      </ul>
    </section>
  );
}
