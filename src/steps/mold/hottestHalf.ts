/** The pour that gets warmest. */
import type { SettingHeat } from '../../core/stone/settingHeat';
import type { Answer, Half, MoldWork } from '../stone/work';

export function hottestHalf({
  half: { negative, positive },
}: MoldWork): Answer<{ readonly half: Half; readonly heat: SettingHeat }> {
  if (!negative.known) return negative;
  if (!positive.known) return positive;
  const [first, second] = [negative.value.heat, positive.value.heat];
  return {
    known: true,
    value:
      first.peakC >= second.peakC ? { half: 'negative', heat: first } : { half: 'positive', heat: second },
  };
}
