import { useCallback, useEffect, useState } from 'react';
import type { Patch, Section, SectionPlane, Vec3 } from '../../core/mesh/types';
import type { Probe } from '../../jobs/protocol';
import type { Measuring } from '../../sheets/measuring/useMeasured';
import { leastCornerRadiusMm, wallBand } from '../../steps/band';
import type { StepContext } from '../../steps/context';
import { BenchView, type BenchViewProps } from '../../viewer/BenchView';
import type { ViewControl } from './useBenchControl';

type MapTab = BenchViewProps['map'];

/** The map that each sheet is about; another one chosen there stays until the project is left. */
const mapOfStep: Readonly<Record<string, MapTab>> = { part: 'kinds' };

export interface BenchPaneProps {
  readonly stepId: string;
  readonly context: StepContext;
  readonly measuring: Measuring;
  readonly control: ViewControl;
}

/** The bench view with what it asks the worker for: probes and cuts. */
export function BenchPane({ stepId, context, measuring, control }: BenchPaneProps) {
  const { desk, reply, shape, measured } = measuring;
  const { inputs } = context;
  const [chosen, setChosen] = useState<Readonly<Record<string, MapTab>>>(mapOfStep);
  const [place, setPlace] = useState<Patch | null>(null);
  const [probe, setProbe] = useState<Probe | null>(null);
  const [plane, setPlane] = useState<SectionPlane | null>(null);
  const [section, setSection] = useState<Section | null>(null);
  const map = chosen[stepId] ?? 'wall';

  // A new measurement makes old places, probes and cuts untrue; the plane itself stays.
  useEffect(() => {
    setPlace(null);
    setProbe(null);
    setSection(null);
  }, [reply]);

  const cutting = map === 'cut' && reply !== null;
  useEffect(() => {
    if (!cutting || plane === null) return undefined;
    let wanted = true;
    void desk.ask(desk.client.cut(plane)).then((cut) => {
      if (wanted && cut !== null) setSection(cut);
    });
    return () => {
      wanted = false;
    };
  }, [desk, cutting, plane, reply]);

  const { takePick } = control;
  const onProbe = useCallback(
    async (originMm: Vec3, direction: Vec3) => {
      if (reply === null) return;
      const met = await desk.ask(desk.client.probe(originMm, direction));
      if (met === null || takePick(met.normal)) return;
      setPlace(null);
      setProbe(met);
    },
    [desk, reply, takePick],
  );

  return (
    <aside className="view-pane" aria-label="Bench view">
      <BenchView
        shape={shape}
        maps={reply !== null && reply.shape === shape ? reply.maps : null}
        summary={measured?.summary ?? null}
        pull={inputs.part.pull}
        limits={{
          measure: inputs.walls.measure,
          stackMm: wallBand(inputs)?.laidMm ?? null,
          leastDraftDeg: inputs.walls.leastDraftDeg,
          leastCornerRadiusMm: leastCornerRadiusMm(inputs),
        }}
        map={map}
        onMap={(next) => setChosen({ ...chosen, [stepId]: next })}
        patches={measured?.patches ?? null}
        selectedPatch={place}
        onSelectPatch={(patch) => {
          setProbe(null);
          setPlace(patch);
        }}
        probe={probe}
        onProbe={(originMm, direction) => void onProbe(originMm, direction)}
        clickPrompt={
          control.picking ? 'Click the face whose outward direction the negative leaves along.' : null
        }
        plane={plane}
        section={section}
        onPlane={setPlane}
        marked={control.marked}
        onUnmark={() => control.mark(null)}
      />
    </aside>
  );
}
