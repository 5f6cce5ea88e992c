/** Where the very first start leads. */
import { goTo, parseRoute, projectHref } from './route';

const signsOfUse = ['click', 'keydown', 'change', 'drop'] as const;

/**
 * Opens the demo once the first start has made it, unless the maker is somewhere already: followed a link to a project, or
 * has begun to do something on the list (a file picker that is open would lose its answer with the page it belongs to).
 * @param seeded ids of the projects that the first start put in; none when it was not the first
 */
export async function openOnDemo(seeded: Promise<readonly string[]>): Promise<void> {
  let begun = false;
  const notice = () => {
    begun = true;
  };
  for (const sign of signsOfUse) window.addEventListener(sign, notice, { capture: true });
  try {
    const [demo] = await seeded;
    if (demo !== undefined && !begun && parseRoute(window.location.hash).page === 'projects')
      goTo(projectHref(demo, 'walls'));
  } finally {
    for (const sign of signsOfUse) window.removeEventListener(sign, notice, { capture: true });
  }
}
