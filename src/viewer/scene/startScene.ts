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
  const offscreen = handedOver(canvas);
  return offscreen === null ? sceneHere(canvas, listen) : sceneInWorker(offscreen, listen);
}

function handedOver(canvas: HTMLCanvasElement): OffscreenCanvas | null {
  if (typeof canvas.transferControlToOffscreen !== 'function') return null;
  try {
    return canvas.transferControlToOffscreen();
  } catch {
    return null;
  }
}

function sceneInWorker(canvas: OffscreenCanvas, listen: (message: FromScene) => void): Scene {
  const worker = new Worker(new URL('./entry.ts', import.meta.url), { type: 'module', name: 'scene' });
  worker.addEventListener('message', ({ data }: MessageEvent<FromScene>) => listen(data));
  worker.addEventListener('error', () => listen({ kind: 'failed' }));
  const start: SceneStart = { kind: 'canvas', canvas };
  worker.postMessage(start, [canvas]);
  return {
    send: (message) => worker.postMessage(message, []),
    dispose: () => worker.terminate(),
  };
}

function sceneHere(canvas: HTMLCanvasElement, listen: (message: FromScene) => void): Scene {
  let ended = false;
  const drawing = import('./SceneDrawing').then(({ SceneDrawing }) =>
    ended ? null : new SceneDrawing(canvas, listen),
  );
  drawing.catch(() => listen({ kind: 'failed' }));
  const whenReady = (use: (ready: NonNullable<Awaited<typeof drawing>>) => void) => {
    drawing.then((ready) => (ready === null ? undefined : use(ready))).catch(() => undefined);
  };
  return {
    send: (message) => whenReady((ready) => ready.take(message)),
    dispose: () => {
      ended = true;
      whenReady((ready) => ready.dispose());
    },
  };
}
