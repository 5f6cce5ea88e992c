import type { Usage } from '../../workbook';
import { SectionHead } from '../../ui/SectionHead';
import { sizeText } from './storageWords';

/** Above this share of the limit the page says what to do before it is full. */
const nearlyFull = 0.8;

/** Less than this of anything else is not worth a line. */
const worthTelling = 1000;

/** What fills the browser's storage, and what to do about it. */
export function StorageUse({ usage, full }: { readonly usage: Usage; readonly full: boolean }) {
  const meshUnits = usage.meshes.reduce((sum, mesh) => sum + mesh.units, 0);
  const projectUnits = usage.projects.reduce((sum, project) => sum + project.units, 0);
  const parts = [
    `meshes ${sizeText(meshUnits)}`,
    `projects ${sizeText(projectUnits)}`,
    usage.keptAsideUnits > 0 ? `damaged data kept aside ${sizeText(usage.keptAsideUnits)}` : null,
    usage.otherUnits > worthTelling ? `other ${sizeText(usage.otherUnits)}` : null,
  ].filter((part) => part !== null);
  const usedShare = Math.min(1, usage.totalUnits / usage.limitUnits);
  const tight = full || usedShare > nearlyFull;
  return (
    <section aria-label="Storage in this browser">
      <SectionHead
        title="Storage in this browser"
        remark={`${sizeText(usage.totalUnits)} of ${sizeText(usage.limitUnits)}`}
      />
      <div
        className="storage-meter"
        role="meter"
        aria-label="Storage used"
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={Math.round(usedShare * 100)}
      >
        <div style={{ width: `${usedShare * 100}%` }} />
      </div>
      <p className="quiet">In use: {parts.join(', ')}.</p>
      {tight ? (
        <p>
          {full ? 'The storage is full.' : 'The storage is nearly full.'} Save projects that you don’t need
          now as files (Save file), then delete them here: a project file holds everything, the mesh too.
          {usage.keptAsideUnits > 0 ? ' Damaged data can be downloaded and removed as well.' : ''}
        </p>
      ) : null}
    </section>
  );
}
