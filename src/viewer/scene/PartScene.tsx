import { useStore } from 'zustand';
import { Eye } from './Eye';
import { HeatSheet } from './HeatSheet';
import { Marks } from './Marks';
import { PartSurface } from './PartSurface';
import { StoneHalves } from './StoneHalves';
import type { SceneStore } from './sceneStore';
import { useSplit } from './useKept';

/** Full light adds up to the map's own color: what the legend shows is what a face turned to the lamp shows. */
const ambientShare = 0.64;

/** The part, what is marked on it, and the eye that looks at it. */
export function PartScene({ store }: { readonly store: SceneStore }) {
  const { box, chunks, paint, halves, stone, heat, made, split, view, marks } = useStore(store);
  const kept = useSplit(made === null ? null : split);
  if (box === null || view === null) return null;
  return (
    <>
      <ambientLight intensity={ambientShare * Math.PI} />
      <Eye view={view} box={box} lampShare={1 - ambientShare} />
      <PartSurface
        chunks={chunks}
        isShown={halves === null || stone?.shows.pattern !== false}
        box={box}
        paint={paint}
        plane={marks?.plane ?? null}
        keptBySplit={kept.part}
        heat={heat}
        view={view}
      />
      {made === null ? null : (
        <PartSurface
          chunks={made.chunks}
          isShown
          box={box}
          paint={made.paint}
          plane={null}
          keptBySplit={kept.made}
          heat={null}
          view={view}
        />
      )}
      {halves === null || stone === null || marks === null ? null : (
        <StoneHalves halves={halves} stone={stone} marks={marks} box={box} view={view} />
      )}
      {heat === null || marks === null ? null : (
        <HeatSheet heat={heat} box={box} outline={marks.theme.finding} />
      )}
      {marks === null ? null : <Marks marks={marks} box={box} />}
    </>
  );
}
