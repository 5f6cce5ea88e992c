/** The scene worker's entry: draws on the canvas that the page hands over. */
import { SceneDrawing } from './SceneDrawing';
import type { FromScene, SceneStart, ToScene } from './sceneMessages';

let drawing: SceneDrawing | null = null;
const tell = (message: FromScene) => postMessage(message);

addEventListener('message', ({ data }: MessageEvent<SceneStart | ToScene>) => {
  if (data.kind !== 'canvas') {
    drawing?.take(data);
    return;
  }
  try {
    drawing = new SceneDrawing(data.canvas, tell);
  } catch {
    tell({ kind: 'failed' });
  }
});
