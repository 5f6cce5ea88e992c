import { useEffect, useRef, useState } from 'react';
import type { SectionPlane } from '../core/mesh/types';
import type { DisplayChunk } from '../pipeline/told';
import type { DrawnHeat } from './heatSheet';
import type { Paint } from './mapColors';
import type { OrbitView, PartBox } from './orbitView';
import type { DrawnHalves, FromScene, PaintedPattern, SceneMarks, StoneView } from './scene/sceneMessages';
import { startScene, type Scene } from './scene/startScene';

export interface SceneCanvasProps {
  readonly display: readonly DisplayChunk[];
  readonly box: PartBox;
  /** Null draws the part plain. */
  readonly paint: Paint | null;
  /** Null draws no stone. */
  readonly halves: DrawnHalves | null;
  readonly stone: StoneView;
  /** Null draws no cut through the mold in the oven. */
  readonly heat: DrawnHeat | null;
  /** Null draws no made pattern. */
  readonly made: PaintedPattern | null;
  readonly split: SectionPlane | null;
  readonly view: OrbitView;
  readonly marks: SceneMarks;
  readonly onTrouble: (trouble: FromScene['kind']) => void;
}

/** Sharper than this no eye at arm's length sees, and it costs time. */
const mostPixelRatio = 2;

/** Runs `step(i)` for 0 to count - 1, one per animation frame, so that no frame gets long. Returns a stop. */
function onePerFrame(count: number, step: (i: number) => void): () => void {
  let next = 0;
  let frame = 0;
  const run = () => {
    if (next >= count) return;
    step(next++);
    frame = requestAnimationFrame(run);
  };
  run();
  return () => cancelAnimationFrame(frame);
}

/** The canvas that the scene draws on; hands everything on to the scene as it changes. */
export function SceneCanvas(props: SceneCanvasProps) {
  const { display, box, paint, halves, stone, heat, made, split, view, marks, onTrouble } = props;
  const holder = useRef<HTMLDivElement>(null);
  const [scene, setScene] = useState<Scene | null>(null);
  const trouble = useRef(onTrouble);
  useEffect(() => {
    trouble.current = onTrouble;
  }, [onTrouble]);

  useEffect(() => {
    const parent = holder.current;
    if (parent === null) return undefined;
    // Made by hand: a canvas can be handed to a worker only once, so every start needs a fresh one.
    const canvas = document.createElement('canvas');
    parent.append(canvas);
    const started = startScene(canvas, ({ kind }) => trouble.current(kind));
    const observer = new ResizeObserver(() => {
      started.send({
        kind: 'size',
        widthPx: parent.clientWidth,
        heightPx: parent.clientHeight,
        pixelRatio: Math.min(mostPixelRatio, window.devicePixelRatio),
      });
    });
    observer.observe(parent);
    setScene(started);
    return () => {
      observer.disconnect();
      started.dispose();
      canvas.remove();
    };
  }, []);

  useEffect(() => {
    if (scene === null) return undefined;
    scene.send({ kind: 'part', box });
    return onePerFrame(display.length, (i) =>
      scene.send({ kind: 'chunk', chunk: display[i]!, last: i === display.length - 1 }),
    );
  }, [scene, display, box]);

  useEffect(
    () => scene?.send({ kind: 'paint', paint: paint && { values: paint.values, scale: paint.scale } }),
    [scene, paint],
  );
  useEffect(() => scene?.send({ kind: 'halves', halves }), [scene, halves]);
  useEffect(() => scene?.send({ kind: 'stone', stone }), [scene, stone]);
  useEffect(() => scene?.send({ kind: 'heat', heat }), [scene, heat]);
  useEffect(() => scene?.send({ kind: 'made', made }), [scene, made]);
  useEffect(() => scene?.send({ kind: 'split', split }), [scene, split]);
  useEffect(() => scene?.send({ kind: 'view', view }), [scene, view]);
  useEffect(() => scene?.send({ kind: 'marks', marks }), [scene, marks]);

  return <div ref={holder} className="scene-canvas" />;
}
