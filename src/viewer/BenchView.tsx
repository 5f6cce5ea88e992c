import { useMemo, useState, type ReactNode } from 'react';
import { missingPartWords } from '../core/missingPart';
import type { Patch, Section, SectionPlane, Vec3 } from '../core/mesh/types';
import type { PartSummary } from '../core/part/partSummary';
import type { MapArrays, PartShape, Probe } from '../pipeline/told';
import { Button } from '../ui/Button';
import { Note } from '../ui/Note';
import { canTryWebGl } from './canTryWebGl';
import { changeMapView, type DrawnPattern } from './changeMapView';
import {
  closingMapView,
  closingTabTitles,
  isClosingTab,
  type ClosingMapData,
  type ClosingTab,
} from './closingMapViews';
import { ClosingReadout } from './ClosingReadout';
import type { MoldHalves } from './halvesBox';
import type { DrawnHeat } from './heatSheet';
import type { PartBox } from './orbitView';
import { KindAreas } from './KindAreas';
import {
  mapTabs,
  mapTitles,
  mapView,
  type MapLegend as LegendOfMap,
  type MapLimits,
  type MapTab,
  type MapView,
} from './mapColors';
import { MapLegend } from './MapLegend';
import { PartView, type PlaceOnPart } from './PartView';
import { PlacesTable } from './PlacesTable';
import { ProbeReadout } from './ProbeReadout';
import type { FromScene } from './scene/sceneMessages';
import { middleCut, SectionControls } from './SectionControls';
import { useViewTheme } from './useViewTheme';
import './viewer.css';

export interface MarkedFacets {
  /** What is marked, e.g. "open edges". */
  readonly label: string;
  /** Facets of the drawn part, see `FindingFacets`. */
  readonly facets: Uint32Array;
}

/** Every map that the view can draw. */
export type BenchMap = MapTab | ClosingTab | 'heat' | 'made';

const titles: Readonly<Record<BenchMap, string>> = {
  ...mapTitles,
  ...closingTabTitles,
  heat: 'Heat',
  made: 'Added, taken off',
};

/** The mold in the oven: what is drawn of it, and the controls and readouts under it. */
export interface HeatView {
  /** Null while the cut is being made. */
  readonly drawn: { readonly sheet: DrawnHeat; readonly box: PartBox } | null;
  readonly legend: LegendOfMap;
  /** The point that is told of over the whole run. */
  readonly pointMm: Vec3 | null;
  readonly controls: ReactNode;
}

export interface BenchViewProps {
  /** The part to draw; null while there is none. */
  readonly shape: PartShape | null;
  /** Per facet of `shape`; null while it is being measured. */
  readonly maps: MapArrays | null;
  readonly summary: PartSummary | null;
  readonly pull: Vec3;
  readonly limits: MapLimits;

  readonly map: BenchMap;
  readonly onMap: (map: BenchMap) => void;
  /** Maps to choose from; those of the part itself when left out. */
  readonly tabs?: readonly BenchMap[];
  /** The closed mold; null while there is no balance. */
  readonly closing?: ClosingMapData | null;
  /** The mold in the oven, for the Heat map; null while nothing is predicted. */
  readonly heat?: HeatView | null;
  /** A made pattern, for the map of what it changes; null while there is none. */
  readonly made?: DrawnPattern | null;
  /** Stands in place of the ranked places, for sheets that rank their own. */
  readonly ranked?: ReactNode;

  /** Ranked; null while they are being looked for. */
  readonly patches: readonly Patch[] | null;
  readonly selectedPatch: Patch | null;
  readonly onSelectPatch: (patch: Patch | null) => void;

  readonly probe: Probe | null;
  /** A click on the part, as a line of sight in part coordinates: ask the bench worker what it meets. */
  readonly onProbe: (originMm: Vec3, direction: Vec3) => void;
  /** Said over the view while a click means something else, e.g. "Click the face to pull along". */
  readonly clickPrompt?: string | null;

  /** The cut of the Cut map. Opening that map with null asks `onPlane` for the middle across x. */
  readonly plane: SectionPlane | null;
  readonly section: Section | null;
  /** The two stone halves, drawn around the part and pulled apart by a slider; left out or null draws the part alone. */
  readonly halves?: MoldHalves | null;
  readonly onPlane: (plane: SectionPlane) => void;

  readonly marked: MarkedFacets | null;
  readonly onUnmark: () => void;
}

const nothingToDraw =
  'This browser does not draw in 3-D here (no WebGL). Everything the maps show stands in the tables and drawings.';
const noHeatYet = 'The mold is shown in its temperatures once the oven run is worked out.';
const contextLost = 'The 3-D view was closed by the browser or the graphics driver.';

/** Maps whose own controls need room under the part. */
const frameClass: Partial<Record<BenchMap, string>> = {
  cut: 'part-frame-cut',
  heat: 'part-frame-cut part-frame-heat',
  made: 'part-frame-cut',
};

/** The right-hand pane: which map, its legend, the part, the probe, the places, the cut. */
export function BenchView(props: BenchViewProps) {
  const { shape, maps, summary, limits, map, patches, selectedPatch, probe, section, marked } = props;
  // By value: coloring a million facets is not to be done again because a sheet was drawn again.
  const { measure, stackMm, leastDraftDeg, leastCornerRadiusMm } = limits;
  const closing = props.closing ?? null;
  const made = map === 'made' ? (props.made ?? null) : null;
  const view = useMemo<MapView | null>(() => {
    if (map === 'heat') return null;
    if (map === 'made') return made === null ? null : changeMapView(made);
    if (isClosingTab(map)) return closing === null ? null : closingMapView(map, closing);
    return maps === null
      ? null
      : mapView(map, maps, { measure, stackMm, leastDraftDeg, leastCornerRadiusMm });
  }, [map, maps, made, closing, measure, stackMm, leastDraftDeg, leastCornerRadiusMm]);
  const plane = map === 'cut' ? props.plane : null;
  const heat = map === 'heat' ? (props.heat ?? null) : null;
  const legend = heat === null ? view?.legend : heat.legend;
  const show = (tab: BenchMap) => {
    props.onMap(tab);
    if (tab === 'cut' && props.plane === null && shape !== null) props.onPlane(middleCut('x', shape));
  };
  return (
    <div className="bench-view">
      <div className="button-row map-tabs" role="group" aria-label="Map">
        {(props.tabs ?? mapTabs).map((tab) => (
          <Button key={tab} aria-pressed={tab === map} onClick={() => show(tab)}>
            {titles[tab]}
          </Button>
        ))}
      </div>
      {marked === null ? null : (
        <p className="marked-note">
          Marked with dots: {marked.label}. <Button onClick={props.onUnmark}>Take the marks off</Button>
        </p>
      )}
      {props.clickPrompt ? <Note>{props.clickPrompt}</Note> : null}
      <div className={`part-frame ${frameClass[map] ?? ''}`}>
        {legend === undefined ? null : <MapLegend legend={legend} />}
        {shape === null ? (
          <p className="places-note">No pattern yet. Import one on the Part sheet.</p>
        ) : (
          <PartOrNote {...props} shape={shape} mapShown={view} plane={plane} heat={heat} />
        )}
      </div>
      {map === 'heat' ? (heat?.controls ?? <p className="places-note">{noHeatYet}</p>) : null}
      {probe === null || map === 'heat' ? null : <ProbeReadout probe={probe} stackMm={limits.stackMm} />}
      {probe === null || closing === null ? null : <ClosingReadout facet={probe.facet} maps={closing.maps} />}
      {map === 'cut' && props.plane !== null && shape !== null ? (
        <SectionControls
          plane={props.plane}
          section={section}
          boxMinMm={shape.boxMinMm}
          boxMaxMm={shape.boxMaxMm}
          onPlane={props.onPlane}
        />
      ) : null}
      {map === 'kinds' && summary !== null ? (
        <div className="places-table">
          <KindAreas kindAreaMm2={summary.kindAreaMm2} />
        </div>
      ) : null}
      {props.ranked ??
        (maps === null || map === 'heat' ? null : (
          <PlacesTable
            patches={patches}
            selected={selectedPatch}
            onSelect={props.onSelectPatch}
            stackMm={limits.stackMm}
          />
        ))}
    </div>
  );
}

interface PartOrNoteProps extends Omit<BenchViewProps, 'shape'> {
  readonly shape: PartShape;
  readonly mapShown: MapView | null;
}

/** The 3-D view, or a plain note where the browser cannot draw it. */
function PartOrNote(props: PartOrNoteProps): ReactNode {
  const { shape, mapShown, map, selectedPatch, probe, made: drawn } = props;
  const heatPointMm = props.heat?.pointMm ?? null;
  const made = useMemo(
    () => (map === 'made' && drawn && mapShown !== null ? { display: drawn.display, paint: mapShown } : null),
    [map, drawn, mapShown],
  );
  const theme = useViewTheme();
  const [trouble, setTrouble] = useState<FromScene['kind'] | null>(null);
  const place = useMemo<PlaceOnPart | null>(() => {
    if (map === 'heat') return heatPointMm === null ? null : { atMm: heatPointMm, facet: null };
    if (probe !== null) return { atMm: probe.pointMm, facet: null };
    if (selectedPatch !== null) return { atMm: selectedPatch.worstAtMm, facet: selectedPatch.worstFacet };
    return null;
  }, [map, heatPointMm, probe, selectedPatch]);

  if (!canTryWebGl() || trouble === 'failed') return <Note>{nothingToDraw}</Note>;
  if (trouble === 'missing') {
    return (
      <Note>
        The 3-D view is not here. {missingPartWords}{' '}
        <Button onClick={() => window.location.reload()}>Load the page again</Button>
      </Note>
    );
  }
  if (trouble === 'lost') {
    return (
      <Note>
        {contextLost} <Button onClick={() => setTrouble(null)}>Show it again</Button>
      </Note>
    );
  }
  return (
    <PartView
      shape={shape}
      paint={map === 'made' ? null : mapShown}
      made={made}
      pull={props.pull}
      theme={theme}
      label={`3-D view of the part, map: ${titles[map]}.`}
      place={place}
      highlight={props.marked?.facets ?? null}
      plane={props.plane}
      section={props.section}
      halves={props.halves ?? null}
      heat={props.heat?.drawn ?? null}
      onProbe={props.onProbe}
      onTrouble={setTrouble}
    />
  );
}
