import { isMissingPart } from '../../core/missingPart';
import type { MountedScene } from './mountScene';
import type { FromScene, SceneStart, ToScene } from './sceneMessages';

/** A scene that takes messages, on whatever thread it draws. */
export interface Scene {
  send(message: ToScene): void;
  dispose(): void;
}

/**
 * Draws on `canvas` in a worker, so that a large part on a slow graphics driver never holds up the page; on the page's
 * own thread where the browser cannot hand a canvas over.
 */
export function startScene(canvas: HTMLCanvasElement, listen: (message: FromScene) => void): Scene {
  // The worker first: a canvas that was handed over can't be taken back.
  const worker = sceneWorker();
  const offscreen = worker && handedOver(canvas);
  if (worker !== null && offscreen !== null) return sceneInWorker(worker, offscreen, listen);
  worker?.terminate();
  return sceneHere(canvas, listen);
}

/** Null where the browser starts none. */
function sceneWorker(): Worker | null {
  if (typeof HTMLCanvasElement.prototype.transferControlToOffscreen !== 'function') return null;
  try {
    return new Worker(new URL('./entry.ts', import.meta.url), { type: 'module', name: 'scene' });
  } catch {
    return null;
  }
}

function handedOver(canvas: HTMLCanvasElement): OffscreenCanvas | null {
  try {
    return canvas.transferControlToOffscreen();
  } catch {
    return null;
  }
}

function sceneInWorker(worker: Worker, canvas: OffscreenCanvas, listen: (message: FromScene) => void): Scene {
  worker.addEventListener('message', ({ data }: MessageEvent<FromScene>) => listen(data));
  // An error of its program has words; one without is that the program could not be loaded.
  worker.addEventListener('error', ({ message }) =>
    listen({ kind: message === undefined || message === '' ? 'missing' : 'failed' }),
  );
  const start: SceneStart = { kind: 'canvas', canvas };
  worker.postMessage(start, [canvas]);
  return {
    send: (message) => worker.postMessage(message, []),
    dispose: () => worker.terminate(),
  };
}

function sceneHere(canvas: HTMLCanvasElement, listen: (message: FromScene) => void): Scene {
  let ended = false;
  const mounting = import('./mountScene').then(({ mountScene }) =>
    ended ? null : mountScene(canvas, listen),
  );
  mounting.catch((error: unknown) => listen({ kind: isMissingPart(error) ? 'missing' : 'failed' }));
  // One that could not be mounted has told so already.
  const whenMounted = (use: (scene: MountedScene) => void) => {
    mounting.then((scene) => (scene === null ? undefined : use(scene))).catch(() => undefined);
  };
  return {
    send: (message) => whenMounted((scene) => scene.take(message)),
    dispose: () => {
      ended = true;
      whenMounted((scene) => scene.dispose());
    },
  };
}
