import { facetKind } from '../../core/mesh/types';
import type { MoldReply, Probe, StoneHalf } from '../../pipeline/told';
import type { MoldInputs } from '../../steps/inputs/mold';
import { repairTable } from '../../steps/inputs/moldBench';
import { plannedTimes } from '../../steps/mold/plannedTimes';
import { processOf } from '../../steps/shared/process';
import { Button } from '../../ui/Button';
import { Disclosure } from '../../ui/Disclosure';
import { Note } from '../../ui/Note';
import { SectionHead } from '../../ui/SectionHead';
import type { BenchControl } from '../benchControl';
import { Sheet } from '../Sheet';
import type { SheetProps } from '../sheetProps';
import type { BenchTimers } from '../timers/useBenchTimers';
import { BoxGiven } from './BoxGiven';
import { DryingCurves } from './DryingCurve';
import { DryingLog } from './DryingLog';
import { MoldRows } from './MoldNumbers';
import { MoldTimers } from './MoldTimers';
import { MoldWorkedOut } from './MoldWorkedOut';
import { RepairsEditor } from './RepairsEditor';
import { SaveHalves } from './SaveHalves';
import { StoneGiven } from './StoneGiven';
import { StoneTable } from './StoneTable';

export interface MoldSheetProps extends SheetProps {
  readonly title: string;
  readonly question: string;
  readonly bench: BenchControl;
  readonly timers: BenchTimers;
  /** Null while the halves are not cast. */
  readonly cast: MoldReply | null;
  /** The maker canceled the casting. */
  readonly castStopped: boolean;
  readonly onCastAgain: () => void;
  readonly onSaveHalf: (half: StoneHalf) => void;
}

/** A repair at the place that was clicked, to be corrected by the maker. */
const filledAt = (
  { pointMm, kind }: Probe,
  repairs: MoldInputs['repairs'],
): MoldInputs['repairs'][number] => ({
  id: freshId(repairs),
  half: kind === facetKind.core ? 'positive' : 'negative',
  kind: 'filled',
  atMm: [pointMm[0], pointMm[1], pointMm[2]],
  radiusMm: repairTable.radiusMm.default,
  depthMm: repairTable.depthMm.default,
  note: '',
});

/** How large a box, how much stone, and when is it dry? */
export function MoldSheet(props: MoldSheetProps) {
  const { title, question, context, report, readOnly, change, bench } = props;
  const { mold } = context.inputs;
  const setMold = (moldChange: Partial<MoldInputs>) => change('mold', moldChange);
  const fields = { mold, disabled: readOnly, onChange: setMold };
  const addRepair = (met: Probe) => setMold({ repairs: [...mold.repairs, filledAt(met, mold.repairs)] });
  return (
    <Sheet
      title={title}
      question={question}
      report={report}
      before={
        props.castStopped ? (
          <Note>
            The two halves are not cast. <Button onClick={props.onCastAgain}>Cast them</Button>
          </Note>
        ) : null
      }
    >
      <section aria-label="Given">
        <SectionHead title="Given" />
        <BoxGiven {...fields} />
        <StoneGiven
          {...fields}
          gel={processOf(context.inputs).gel}
          onGelC={(gelC) => change('cure', { gelC })}
          fromShelf={props.fromShelf}
        />
        <Disclosure
          title="The five stones and yours, side by side"
          remark="heat, strength, size, price, repair"
        >
          <StoneTable inputs={context.inputs} />
        </Disclosure>
      </section>
      <section aria-label="Worked out">
        <SectionHead title="Worked out" remark={context.mold ? `by ${context.mold.method}` : undefined} />
        <MoldWorkedOut figures={report.figures} />
        <SaveHalves cast={props.cast} onSave={props.onSaveHalf} />
      </section>
      <section aria-label="Timers">
        <SectionHead
          title="Timers"
          remark="by the clock, also over a reload; they ring while the page is open"
        />
        <MoldTimers bench={props.timers} planned={plannedTimes(context.inputs)} />
      </section>
      <section aria-label="Drying log">
        <SectionHead title="Drying log" />
        <DryingLog
          log={mold.dryingLog}
          disabled={readOnly}
          onChange={(dryingLog) => setMold({ dryingLog })}
        />
        <DryingCurves context={context} />
        <MoldRows fields={['dryingC', 'dryingHours', 'scaleStepG']} {...fields} />
      </section>
      <section aria-label="Repairs of the stone">
        <SectionHead title="Repairs of the stone" remark="closing takes them into its walls" />
        <RepairsEditor
          repairs={mold.repairs}
          disabled={readOnly}
          picking={bench.pickingPlace}
          onPick={() => bench.pickPlace(bench.pickingPlace ? null : addRepair)}
          onChange={(repairs) => setMold({ repairs })}
        />
      </section>
    </Sheet>
  );
}

/** The lowest number that no repair has: an id needs to be unlike the others only. */
function freshId(repairs: MoldInputs['repairs']): string {
  const taken = new Set(repairs.map(({ id }) => id));
  let number = 1;
  while (taken.has(`repair-${number}`)) number += 1;
  return `repair-${number}`;
}
