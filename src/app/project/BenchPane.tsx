import { useEffect, useRef, useState } from 'react';
import type { Patch, Section, SectionPlane, Vec3 } from '../../core/mesh/types';
import type { Probe } from '../../pipeline/told';
import type { HeatMoment } from '../../sheets/cure/heatMoment';
import type { CureForecast } from '../../sheets/cure/forecast';
import type { Measuring } from '../../sheets/measuring/useMeasured';
import { wallBand } from '../../steps/shared/band';
import type { StepContext } from '../../steps/shared/context';
import { useKeyedState } from '../../ui/useKeyedState';
import { BenchView, type BenchMap } from '../../viewer/BenchView';
import type { DrawnPattern } from '../../viewer/changeMapView';
import { mapTabs } from '../../viewer/mapColors';
import { useClosedMold } from './useClosedMold';
import { useHeatView } from './useHeatView';
import type { ViewControl } from './useBenchControl';

/** The map that each sheet is about; another one chosen there stays until the project is left. */
const mapOfStep: Readonly<Record<string, BenchMap>> = { part: 'kinds', closing: 'gap', cure: 'heat' };
const patternTabs: readonly BenchMap[] = ['made', ...mapTabs];
const cureTabs: readonly BenchMap[] = ['heat', 'wall', 'kinds', 'cut'];

/** The one spot that is looked at: a ranked place, or what a click met. */
interface Spot {
  readonly place: Patch | null;
  readonly probe: Probe | null;
}

export interface BenchPaneProps {
  readonly stepId: string;
  readonly context: StepContext;
  readonly measuring: Measuring;
  readonly control: ViewControl;
  /** The pattern that was made of the present model; null while there is none. */
  readonly made: DrawnPattern | null;
  readonly forecast: CureForecast;
  readonly heatMoment: HeatMoment;
  readonly onHeatMoment: (moment: HeatMoment) => void;
  readonly onSaveText: (fileName: string, text: string) => void;
}

function clickPrompt({ picking, pickingPlace }: ViewControl): string | null {
  if (picking) return 'Click the face whose outward direction the negative leaves along.';
  return pickingPlace ? 'Click the place on the part that the stone was repaired at.' : null;
}

/** The bench view with what it asks the worker for: probes and cuts. */
export function BenchPane(props: BenchPaneProps) {
  const { stepId, context, measuring, control, made, forecast, onSaveText } = props;
  const { desk, reply, shape, found } = measuring;
  const { measured } = found;
  const { inputs } = context;
  const [chosen, setChosen] = useState<Readonly<Record<string, BenchMap>>>(mapOfStep);
  const [plane, setPlane] = useState<SectionPlane | null>(null);
  // Spots and cuts are untrue for any other measurement; the plane itself stays.
  const [{ place, probe }, setSpot] = useKeyedState<Spot>(reply, () => ({ place: null, probe: null }));
  const [section, setSection] = useKeyedState<Section | null>(reply, () => null);
  const ownMap = stepId === 'pattern' && made !== null ? 'made' : 'wall';
  const kept = chosen[stepId] ?? ownMap;
  const map = kept === 'made' && made === null ? 'wall' : kept;
  const isHeatShown = stepId === 'cure' && map === 'heat';
  const heat = useHeatView(desk, forecast, inputs, isHeatShown, props.heatMoment, props.onHeatMoment);
  const closedMold = useClosedMold(stepId === 'closing' ? reply : null, context, onSaveText);

  const showSection = useRef(setSection);
  useEffect(() => {
    showSection.current = setSection;
  });
  useEffect(() => {
    if (map !== 'cut' || reply === null || plane === null) return undefined;
    let wanted = true;
    void desk.ask('cut', plane).then((cut) => {
      if (wanted && cut !== null) showSection.current(cut);
    });
    return () => {
      wanted = false;
    };
  }, [desk, map, plane, reply]);

  const { takePick } = control;
  const onProbe = async (originMm: Vec3, direction: Vec3) => {
    if (reply === null) return;
    if (map === 'heat') {
      heat?.onSight(originMm, direction);
      return;
    }
    const met = await desk.ask('probe', { originMm, direction });
    if (met === null || takePick(met)) return;
    setSpot({ place: null, probe: met });
  };

  return (
    <aside className="view-pane" aria-label="Bench view">
      <BenchView
        shape={shape}
        maps={reply !== null && reply.shape === shape ? reply.maps : null}
        summary={measured?.summary ?? null}
        pull={inputs.part.pull}
        limits={{
          measure: inputs.walls.measure,
          stackMm: wallBand(inputs)?.wantedMm ?? null,
          leastDraftDeg: inputs.walls.leastDraftDeg,
          leastCornerRadiusMm: inputs.walls.leastInnerRadiusMm,
        }}
        map={map}
        onMap={(next) => setChosen({ ...chosen, [stepId]: next })}
        patches={measured?.patches ?? null}
        selectedPatch={place}
        onSelectPatch={(patch) => setSpot({ place: patch, probe: null })}
        probe={probe}
        onProbe={(originMm, direction) => void onProbe(originMm, direction)}
        clickPrompt={clickPrompt(control)}
        halves={stepId === 'mold' && !control.pickingPlace ? (measuring.mold?.halves ?? null) : null}
        plane={plane}
        section={section}
        onPlane={setPlane}
        {...(stepId === 'cure' && { tabs: cureTabs, heat: heat?.view ?? null })}
        {...(stepId === 'pattern' && made !== null && { tabs: patternTabs, made })}
        {...closedMold?.view}
        marked={control.marked ?? closedMold?.marked ?? null}
        onUnmark={() => {
          control.mark(null);
          closedMold?.unmark();
        }}
      />
    </aside>
  );
}
