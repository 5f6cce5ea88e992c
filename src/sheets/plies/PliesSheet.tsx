import type { PliesInputs } from '../../steps/inputs/plies';
import type { PlyPatch } from '../../steps/inputs/ply';
import { resolveStack } from '../../steps/shared/stack';
import { processOf } from '../../steps/shared/process';
import { pairingRows } from '../../steps/shared/wallPairs';
import { Disclosure } from '../../ui/Disclosure';
import { SectionHead } from '../../ui/SectionHead';
import { Sheet } from '../Sheet';
import type { SheetProps } from '../sheetProps';
import { MaterialCards } from './MaterialCards';
import { PairingTable } from './PairingTable';
import { PatchesEditor } from './PatchesEditor';
import { PliesGiven } from './PliesGiven';
import { PliesWorkedOut } from './PliesWorkedOut';
import { StackEditor } from './StackEditor';

export interface PliesSheetProps extends SheetProps {
  readonly title: string;
  readonly question: string;
}

/** Which plies, how many, which way? */
export function PliesSheet(props: PliesSheetProps) {
  const { title, question, context, report, readOnly, change, fromShelf } = props;
  const { plies } = context.inputs;
  const stack = resolveStack(plies);
  const setPlies = (pliesChange: Partial<PliesInputs>) => change('plies', pliesChange);
  return (
    <Sheet title={title} question={question} report={report}>
      <section aria-label="Stack">
        <SectionHead title="Stack, from the show face inward" />
        <StackEditor
          stack={plies.stack}
          materials={plies.materials}
          disabled={readOnly}
          onChange={(edited) => setPlies({ stack: edited })}
        />
        <Disclosure title="Doublers and overlaps" remark={patchWords(plies.patches)}>
          <PatchesEditor
            patches={plies.patches}
            stack={plies.stack}
            materials={plies.materials}
            disabled={readOnly}
            onChange={(patches) => setPlies({ patches })}
          />
        </Disclosure>
      </section>
      <section aria-label="Given">
        <SectionHead title="Given" />
        <PliesGiven
          plies={plies}
          process={processOf(context.inputs)}
          disabled={readOnly}
          onChange={setPlies}
          coatFromShelf={fromShelf?.('coat')}
        />
      </section>
      <section aria-label="Material cards">
        <SectionHead title="Material cards" />
        <MaterialCards
          materials={plies.materials}
          usedIds={new Set([...plies.stack, ...plies.patches].map(({ materialId }) => materialId))}
          disabled={readOnly}
          onChange={(materials) => setPlies({ materials })}
        />
        {fromShelf?.('roll')}
      </section>
      <section aria-label="Worked out">
        <SectionHead title="Worked out" />
        <PliesWorkedOut figures={report.figures} />
      </section>
      {stack.known ? (
        <section aria-label="Walls and stacks that meet">
          <SectionHead
            title="Walls and stacks that meet"
            remark={stack.mixed ? 'mean ply of the stack, common practice' : 'common practice'}
          />
          <PairingTable pairs={pairingRows(stack, context.inputs)} plies={stack.total.plies} />
        </section>
      ) : null}
    </Sheet>
  );
}

function patchWords(patches: readonly PlyPatch[]): string {
  return patches.length === 0 ? 'none' : patches.map(({ place }) => place).join(', ');
}
