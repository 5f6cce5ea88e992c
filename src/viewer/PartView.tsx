import { useCallback, useEffect, useMemo, useRef, useState, type KeyboardEvent } from 'react';
import type { Section, SectionPlane, Vec3 } from '../core/mesh/types';
import type { PartShape } from '../pipeline/told';
import { Button } from '../ui/Button';
import { useKeyedState } from '../ui/useKeyedState';
import { ChangeControls, middleSplit } from './ChangeControls';
import { facetCenters, facetNormal } from './drawnFacets';
import { halvesBox, mostApartMm, type MoldHalves } from './halvesBox';
import { HalvesControls } from './HalvesControls';
import type { DrawnHeat } from './heatSheet';
import type { Paint } from './mapColors';
import {
  facing,
  fitted,
  openingView,
  orbitedBy,
  presetView,
  sightLine,
  viewPresets,
  zoomedBy,
  type OrbitView,
  type PartBox,
  type ViewPreset,
} from './orbitView';
import type { FromScene, PaintedPattern, StoneView } from './scene/sceneMessages';
import { SceneCanvas } from './SceneCanvas';
import { axisNumber } from './sectionFrame';
import { usePointerOrbit } from './usePointerOrbit';
import type { ViewTheme } from './viewTheme';

export interface PlaceOnPart {
  readonly atMm: Vec3;
  /** The facet it stands on, for turning that face to the eye; null leaves the view where it is. */
  readonly facet: number | null;
}

export interface PartViewProps {
  readonly shape: Pick<PartShape, 'display' | 'boxMinMm' | 'boxMaxMm'>;
  /** Null while nothing is measured. */
  readonly paint: Paint | null;
  readonly pull: Vec3;
  readonly theme: ViewTheme;
  /** Said to screen readers, with what the view shows. */
  readonly label: string;
  readonly place: PlaceOnPart | null;
  /** Facets with a health finding. */
  readonly highlight: Uint32Array | null;
  readonly plane: SectionPlane | null;
  readonly section: Section | null;
  /** The stone around the part, with controls to pull it apart; left out or null draws the part alone. */
  readonly halves?: MoldHalves | null;
  /** The mold in the oven, cut; `box` is the whole mold's. Left out or null draws the part alone. */
  readonly heat?: { readonly sheet: DrawnHeat; readonly box: PartBox } | null;
  /** Drawn in place of the part up to a plane that a slider moves; left out or null draws the part alone. */
  readonly made?: PaintedPattern | null;
  /** Line of sight through the clicked pixel, in part coordinates. */
  readonly onProbe: (originMm: Vec3, direction: Vec3) => void;
  readonly onTrouble: (trouble: FromScene['kind']) => void;
}

const turnDeg = 10;
const zoomStep = 1.25;
const mostDots = 2000;

const closedMold: StoneView = {
  apartMm: 0,
  shows: { negative: true, pattern: true, positive: true },
};

/** Where a line of sight comes out of the half that the cut takes away from before the eye. */
function pastCut(originMm: Vec3, direction: Vec3, { axis, atMm }: SectionPlane): Vec3 {
  const along = direction[axisNumber[axis]];
  if (Math.abs(along) < 1e-9) return originMm;
  const way = Math.max(0, (atMm - originMm[axisNumber[axis]]) / along);
  const [x, y, z] = originMm.map((at, i) => at + way * direction[i]!);
  return [x!, y!, z!];
}

/** The part in 3-D: turn, zoom, look from a side, click to probe. Draws only when something has changed. */
export function PartView(props: PartViewProps) {
  const { shape, pull, theme, place, highlight, plane, section, onProbe } = props;
  const { display, boxMinMm, boxMaxMm } = shape;
  const halves = props.halves ?? null;
  const heat = props.heat ?? null;
  const made = props.made ?? null;
  const heatBox = heat === null ? null : heat.box;
  // By value: the same pull told again is no reason to fit the view again.
  const [pullX, pullY, pullZ] = pull;
  const box = useMemo(
    () => heatBox ?? (halves === null ? { boxMinMm, boxMaxMm } : halvesBox(halves, [pullX, pullY, pullZ])),
    [boxMinMm, boxMaxMm, halves, heatBox, pullX, pullY, pullZ],
  );
  const drawnHalves = useMemo(
    () => (halves === null ? null : { negative: halves.negative.display, positive: halves.positive.display }),
    [halves],
  );
  const mostMm = halves === null ? 0 : mostApartMm(halves, pull);
  const [stone, setStone] = useState<StoneView>(closedMold);
  // Stone that has just been cast: open it, so that its faces show.
  const [shownHalves, setShownHalves] = useState<MoldHalves | null>(null);
  if (shownHalves !== halves) {
    setShownHalves(halves);
    setStone({ ...stone, apartMm: Math.round(mostMm / 2) });
  }
  const [split, setSplit] = useKeyedState(box, () => middleSplit(box));
  const [view, setView] = useState(() => openingView(pull, box));
  const stage = useRef<HTMLDivElement>(null);

  // Another part, or another size of it: fit again, but keep looking from where the maker looks.
  const [shownBox, setShownBox] = useState(box);
  if (shownBox !== box) {
    setShownBox(box);
    setView(fitted(view, box));
  }
  // A place just chosen: turn its face to the eye.
  const [shownPlace, setShownPlace] = useState<PlaceOnPart | null>(null);
  if (shownPlace !== place) {
    setShownPlace(place);
    const normal = place === null || place.facet === null ? null : facetNormal(display, place.facet);
    if (normal !== null) setView(facing(view, normal));
  }

  const probeAt = useCallback(
    (atPx: readonly [number, number], sizePx: readonly [number, number]) => {
      const { originMm, direction } = sightLine(view, box, atPx, sizePx);
      onProbe(plane === null ? originMm : pastCut(originMm, direction, plane), direction);
    },
    [view, box, plane, onProbe],
  );
  const pointers = usePointerOrbit(box, setView, probeAt);

  useEffect(() => {
    const element = stage.current;
    if (element === null) return undefined;
    // React listens passively, and then the page would scroll along.
    const zoom = (event: WheelEvent) => {
      event.preventDefault();
      setView((before) => zoomedBy(before, Math.exp(-event.deltaY / 500), box));
    };
    element.addEventListener('wheel', zoom, { passive: false });
    return () => element.removeEventListener('wheel', zoom);
  }, [box]);

  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    const moves: Record<string, (before: OrbitView) => OrbitView> = {
      ArrowLeft: (before) => orbitedBy(before, -turnDeg, 0),
      ArrowRight: (before) => orbitedBy(before, turnDeg, 0),
      ArrowUp: (before) => orbitedBy(before, 0, turnDeg),
      ArrowDown: (before) => orbitedBy(before, 0, -turnDeg),
      '+': (before) => zoomedBy(before, zoomStep, box),
      '=': (before) => zoomedBy(before, zoomStep, box),
      '-': (before) => zoomedBy(before, 1 / zoomStep, box),
      '0': (before) => fitted(before, box),
    };
    const move = event.altKey || event.ctrlKey || event.metaKey ? undefined : moves[event.key];
    if (move !== undefined) setView(move);
    else if (event.key === 'Enter') {
      const { width, height } = event.currentTarget.getBoundingClientRect();
      probeAt([width / 2, height / 2], [width, height]);
    } else return;
    event.preventDefault();
  };

  const marks = useMemo(
    () => ({
      pull,
      theme,
      placeMm: place === null ? null : place.atMm,
      dotsMm: highlight === null ? null : facetCenters(display, highlight, mostDots),
      plane,
      section,
    }),
    [pull, theme, place, display, highlight, plane, section],
  );

  return (
    <div className="part-view">
      <div
        ref={stage}
        className="part-stage"
        role="application"
        aria-label={`${props.label} Arrow keys turn it, plus and minus zoom, 0 fits it, Enter probes the middle.`}
        tabIndex={0}
        onKeyDown={onKeyDown}
        onContextMenu={(event) => event.preventDefault()}
        {...pointers}
      >
        <SceneCanvas
          display={display}
          box={box}
          paint={props.paint}
          halves={drawnHalves}
          stone={stone}
          heat={heat === null ? null : heat.sheet}
          made={made}
          split={made === null ? null : split}
          view={view}
          marks={marks}
          onTrouble={props.onTrouble}
        />
        <span className="part-crosshair" aria-hidden />
      </div>
      {halves === null ? null : <HalvesControls stone={stone} mostApartMm={mostMm} onStone={setStone} />}
      {made === null ? null : <ChangeControls split={split} box={box} onSplit={setSplit} />}
      <div className="part-presets" role="group" aria-label="Look from">
        <Button onClick={() => setView(fitted(view, box))}>Fit</Button>
        {(Object.keys(viewPresets) as ViewPreset[]).map((preset) => (
          <Button
            key={preset}
            aria-label={`Look ${viewPresets[preset].words}`}
            onClick={() => setView(presetView(preset, box))}
          >
            {viewPresets[preset].label}
          </Button>
        ))}
        <Button aria-label="Nearer" onClick={() => setView(zoomedBy(view, zoomStep, box))}>
          +
        </Button>
        <Button aria-label="Farther" onClick={() => setView(zoomedBy(view, 1 / zoomStep, box))}>
          −
        </Button>
      </div>
    </div>
  );
}
