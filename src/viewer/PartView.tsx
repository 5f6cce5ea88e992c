import { Canvas } from '@react-three/fiber';
import { useCallback, useEffect, useMemo, useRef, useState, type KeyboardEvent } from 'react';
import type { Section, SectionPlane, Vec3 } from '../core/mesh/types';
import type { PartShape } from '../jobs/protocol';
import { Button } from '../ui/Button';
import { CameraRig } from './CameraRig';
import { facetCenters, facetNormal } from './drawnFacets';
import {
  facing,
  fitted,
  openingView,
  orbitedBy,
  presetView,
  sightLine,
  viewAxes,
  viewPresets,
  zoomedBy,
  type OrbitView,
  type ViewPreset,
} from './orbitView';
import { PartSurface } from './PartSurface';
import { axisNumber, axisVector } from './sectionFrame';
import type { CutAway } from './SurfaceDrawing';
import { usePointerOrbit } from './usePointerOrbit';
import type { ViewTheme } from './useViewTheme';
import { CutMark, Dots, PlaceMark, PullArrow } from './ViewMarks';

export interface PlaceOnPart {
  readonly atMm: Vec3;
  /** The facet it stands on, for turning that face to the eye; null leaves the view where it is. */
  readonly facet: number | null;
}

export interface PartViewProps {
  readonly shape: Pick<PartShape, 'display' | 'boxMinMm' | 'boxMaxMm'>;
  /** RGBA word per facet; null while nothing is measured. */
  readonly facetColors: Uint32Array | null;
  readonly pull: Vec3;
  readonly theme: ViewTheme;
  /** Said to screen readers, with what the view shows. */
  readonly label: string;
  readonly place: PlaceOnPart | null;
  /** Facets with a health finding. */
  readonly highlight: Uint32Array | null;
  readonly plane: SectionPlane | null;
  readonly section: Section | null;
  /** Line of sight through the clicked pixel, in part coordinates. */
  readonly onProbe: (originMm: Vec3, direction: Vec3) => void;
  /** The drawing context was lost for good. */
  readonly onLost: () => void;
}

const turnDeg = 10;
const zoomStep = 1.25;
const mostDots = 2000;
const plainColor = new Uint32Array(new Uint8Array([214, 208, 194, 255]).buffer)[0]!;

/** 1 or -1: on which side of the cut the eye stands, along the cut's axis. */
const eyeSide = (plane: SectionPlane, view: OrbitView) =>
  viewAxes(view).toEye[axisNumber[plane.axis]] >= 0 ? 1 : -1;

/** Takes away the half of the part that stands between the eye and the cut. */
function cutAwayAt(plane: SectionPlane, side: 1 | -1): CutAway {
  const [x, y, z] = axisVector[plane.axis];
  return { normal: [side * x, side * y, side * z], atMm: side * plane.atMm };
}

/** The part in 3-D: turn, zoom, look from a side, click to probe. Draws only when something has changed. */
export function PartView(props: PartViewProps) {
  const { shape, pull, theme, place, highlight, plane, onProbe, onLost } = props;
  const { display, boxMinMm, boxMaxMm } = shape;
  const box = useMemo(() => ({ boxMinMm, boxMaxMm }), [boxMinMm, boxMaxMm]);
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
      onProbe(originMm, direction);
    },
    [view, box, onProbe],
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

  // Only a turn past the cut changes which half is taken away, so the material is not touched at every turn.
  const side = plane === null ? 1 : eyeSide(plane, view);
  const cutAway = useMemo(() => (plane === null ? null : cutAwayAt(plane, side)), [plane, side]);
  const dots = useMemo(
    () => (highlight === null ? null : facetCenters(display, highlight, mostDots)),
    [display, highlight],
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
        <Canvas
          orthographic
          flat
          linear
          legacy
          frameloop="demand"
          dpr={[1, 2]}
          gl={{ alpha: true, antialias: true }}
          onCreated={({ gl }) => {
            gl.localClippingEnabled = true;
            gl.domElement.addEventListener('webglcontextlost', onLost);
          }}
        >
          <CameraRig view={view} box={box} />
          <ambientLight intensity={0.7 * Math.PI} />
          <EyeLight view={view} />
          <PartSurface
            display={display}
            box={box}
            facetColors={props.facetColors}
            plainColor={plainColor}
            cutAway={cutAway}
          />
          <PullArrow pull={pull} boxMinMm={boxMinMm} boxMaxMm={boxMaxMm} color={theme.ink} />
          {plane === null ? null : (
            <CutMark
              plane={plane}
              section={props.section}
              boxMinMm={boxMinMm}
              boxMaxMm={boxMaxMm}
              color={theme.ink}
              sheetColor={theme.accent}
            />
          )}
          {dots === null ? null : <Dots pointsMm={dots} color={theme.finding} sizePx={9} />}
          {place === null ? null : <PlaceMark atMm={place.atMm} color={theme.ink} ground={theme.ground} />}
        </Canvas>
        <span className="part-crosshair" aria-hidden />
      </div>
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

/** A lamp over the eye's left shoulder, so that every face looked at is lit and edges show. */
function EyeLight({ view }: { readonly view: OrbitView }) {
  const { right, up, toEye } = viewAxes(view);
  const [x, y, z] = toEye.map((along, axis) => along + 0.45 * up[axis]! - 0.35 * right[axis]!);
  return <directionalLight position={[x!, y!, z!]} intensity={0.36 * Math.PI} />;
}
