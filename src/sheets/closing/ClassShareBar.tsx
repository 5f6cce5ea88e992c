import type { ClassShares } from '../../core/closing/classes';
import { ShareBar } from '../../ui/charts/ShareBar';

/** The show face by what becomes of its laminate; colors and hatches as on the map. */
export function ClassShareBar({ title, shares }: { readonly title: string; readonly shares: ClassShares }) {
  return (
    <div className="class-shares">
      <p className="quiet" aria-hidden>
        {title}
      </p>
      <ShareBar
        title={`Show face: ${title}`}
        segments={[
          { id: 'loose', label: 'loose', share: shares.loose, tone: 'loose', hatch: 'slant' },
          { id: 'light', label: 'barely pressed', share: shares.light, tone: 'light', hatch: 'dots' },
          { id: 'packed', label: 'pressed', share: shares.packed, tone: 'fits', hatch: 'none' },
          { id: 'choked', label: 'too tight', share: shares.choked, tone: 'tight', hatch: 'cross' },
        ]}
      />
    </div>
  );
}
