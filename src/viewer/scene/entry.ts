/** The scene worker's entry: draws on the canvas that the page hands over. */
import { mountScene, type MountedScene } from './mountScene';
import type { FromScene, SceneStart, ToScene } from './sceneMessages';

const tell = (message: FromScene) => postMessage(message);
let mounting: Promise<MountedScene> | null = null;

addEventListener('message', ({ data }: MessageEvent<SceneStart | ToScene>) => {
  if (data.kind === 'canvas') {
    mounting = mountScene(data.canvas, tell);
    mounting.catch(() => tell({ kind: 'failed' }));
    return;
  }
  // One that could not be mounted has told so already.
  mounting?.then((scene) => scene.take(data)).catch(() => undefined);
});
