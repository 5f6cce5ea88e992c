import { pliesSpecs, type PliesInputs } from '../../steps/plies/inputs';
import { resolveStack } from '../../steps/plies/stack';
import { pairingRows } from '../../steps/wallFix';
import { FigureRow } from '../../ui/FigureRow';
import { NumberField } from '../../ui/NumberField';
import { SectionHead } from '../../ui/SectionHead';
import { Sheet } from '../Sheet';
import type { SheetProps } from '../sheetProps';
import { MaterialCards } from './MaterialCards';
import { PairingTable } from './PairingTable';
import { StackEditor } from './StackEditor';

export interface PliesSheetProps extends SheetProps {
  readonly title: string;
  readonly question: string;
}

/** Which plies, how many, which way? */
export function PliesSheet({ title, question, context, report, readOnly, change }: PliesSheetProps) {
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
      </section>
      <section aria-label="Given">
        <SectionHead title="Given" />
        <NumberField
          spec={pliesSpecs['plies.lineWidthMm']}
          value={plies.lineWidthMm}
          disabled={readOnly}
          onChange={(lineWidthMm) => {
            if (lineWidthMm !== null) setPlies({ lineWidthMm });
          }}
        />
        <NumberField
          spec={pliesSpecs['plies.bulkFactor']}
          value={plies.bulkFactor}
          disabled={readOnly}
          onChange={(bulkFactor) => {
            if (bulkFactor !== null) setPlies({ bulkFactor });
          }}
        />
      </section>
      <section aria-label="Material cards">
        <SectionHead title="Material cards" />
        <MaterialCards
          materials={plies.materials}
          usedIds={new Set(plies.stack.map((ply) => ply.materialId))}
          disabled={readOnly}
          onChange={(materials) => setPlies({ materials })}
        />
      </section>
      <section aria-label="Worked out">
        <SectionHead title="Worked out" />
        {report.figures.map((figure) => (
          <FigureRow key={figure.id} figure={figure} />
        ))}
      </section>
      {stack.known ? (
        <section aria-label="Walls and stacks that meet">
          <SectionHead
            title="Walls and stacks that meet"
            remark={stack.mixed ? 'mean ply of the stack, common practice' : 'common practice'}
          />
          <PairingTable pairs={pairingRows(plies.lineWidthMm, stack)} />
        </section>
      ) : null}
    </Sheet>
  );
}
