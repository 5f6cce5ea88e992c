import { useMemo } from 'react';
import type { Section, SectionPlane, Vec3 } from '../../core/mesh/types';
import type { PartBox } from '../orbitView';
import type { ViewTheme } from '../viewTheme';
import { cutOutline, sheetFrame } from './markLines';
import { PointGeometry } from './PointGeometry';
import { PullArrow } from './PullArrow';
import type { SceneMarks } from './sceneMessages';

export interface MarksProps {
  readonly marks: SceneMarks;
  readonly box: PartBox;
}

/** Everything that is drawn over the part: the pull, the cut, dots on facets with a finding, the chosen place. */
export function Marks({ marks, box }: MarksProps) {
  const { theme, pull, plane, section, dotsMm, placeMm } = marks;
  return (
    <>
      <PullArrow pull={pull} box={box} color={theme.ink} />
      {plane === null ? null : <CutSheet plane={plane} box={box} color={theme.accent} />}
      {plane === null || section === null || section.plane.axis !== plane.axis ? null : (
        <CutOutline section={section} color={theme.ink} />
      )}
      {dotsMm === null ? null : <Dots pointsMm={dotsMm} color={theme.finding} sizePx={9} />}
      {placeMm === null ? null : <PlaceRing placeMm={placeMm} theme={theme} />}
    </>
  );
}

interface CutSheetProps {
  readonly plane: SectionPlane;
  readonly box: PartBox;
  readonly color: string;
}

function CutSheet({ plane, box, color }: CutSheetProps) {
  return <Pieces pointsMm={useMemo(() => sheetFrame(plane, box), [plane, box])} color={color} />;
}

interface CutOutlineProps {
  readonly section: Section;
  readonly color: string;
}

function CutOutline({ section, color }: CutOutlineProps) {
  return <Pieces pointsMm={useMemo(() => cutOutline(section), [section])} color={color} />;
}

interface PlaceRingProps {
  readonly placeMm: Vec3;
  readonly theme: ViewTheme;
}

/** A square ring with a dot in it. */
function PlaceRing({ placeMm, theme }: PlaceRingProps) {
  const at = useMemo(() => new Float32Array(placeMm), [placeMm]);
  return (
    <>
      <Dots pointsMm={at} color={theme.ink} sizePx={17} order={4} />
      <Dots pointsMm={at} color={theme.ground} sizePx={11} order={5} />
      <Dots pointsMm={at} color={theme.ink} sizePx={5} order={6} />
    </>
  );
}

interface DotsProps {
  readonly pointsMm: Float32Array;
  readonly color: string;
  readonly sizePx: number;
  /** Later ones are drawn over earlier ones. */
  readonly order?: number;
}

/** Dots of a fixed size on the screen, seen through the part, so that even a sliver of a facet is found. */
function Dots({ pointsMm, color, sizePx, order = 3 }: DotsProps) {
  return (
    <points renderOrder={order}>
      <PointGeometry args={[pointsMm]} />
      <pointsMaterial color={color} size={sizePx} sizeAttenuation={false} depthTest={false} transparent />
    </points>
  );
}

interface PiecesProps {
  /** 6 numbers per piece. */
  readonly pointsMm: Float32Array;
  readonly color: string;
}

/** Line pieces, seen through the part. */
function Pieces({ pointsMm, color }: PiecesProps) {
  return (
    <lineSegments renderOrder={2}>
      <PointGeometry args={[pointsMm]} />
      <lineBasicMaterial color={color} depthTest={false} transparent />
    </lineSegments>
  );
}
