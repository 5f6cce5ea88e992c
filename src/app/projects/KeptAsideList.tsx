import { useWorkbook, useWorkbookState } from '../../workbook/useWorkbook';
import { Button } from '../../ui/Button';
import { SectionHead } from '../../ui/SectionHead';
import { saveTextFile } from '../saveTextFile';
import { sizeText } from './storageWords';

/** Damaged bytes, never thrown away without being asked. */
export function KeptAsideList() {
  const workbook = useWorkbook();
  const keptAside = useWorkbookState((state) => state.keptAside);
  if (keptAside.length === 0) return null;
  return (
    <section aria-label="Damaged data kept aside">
      <SectionHead title="Damaged data kept aside" />
      <p>
        These could not be read and were kept as they were found. Download them if you want them looked at;
        remove them to free their room.
      </p>
      <ul className="project-list">
        {keptAside.map((kept) => (
          <li key={kept.key} className="project-line">
            <div>
              {kept.foundAt}
              <span className="row-note">
                found {kept.keptAt.slice(0, 16).replace('T', ' ')} UTC · {sizeText(kept.units)}
              </span>
            </div>
            <div className="button-row">
              <Button
                onClick={() => {
                  const file = workbook.keptAsideFile(kept.key);
                  if (file) saveTextFile(file, 'text/plain');
                }}
              >
                Download
              </Button>
              <Button kind="danger" onClick={() => workbook.discardKeptAside(kept.key)}>
                Remove
              </Button>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
