import { createRoot, extend } from '@react-three/fiber';
import {
  AmbientLight,
  ConeGeometry,
  DirectionalLight,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  OrthographicCamera,
  Points,
  PointsMaterial,
  WebGLRenderer,
} from 'three';
import { PartScene } from './PartScene';
import type { FromScene, ToScene } from './sceneMessages';
import { createSceneStore } from './sceneStore';

// Only what the scene's components use: all of three would come along with its whole namespace.
extend({
  AmbientLight,
  ConeGeometry,
  DirectionalLight,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  OrthographicCamera,
  Points,
  PointsMaterial,
});

export interface MountedScene {
  take(message: ToScene): void;
  dispose(): void;
}

/** The page's own canvas, or one that was handed over to the worker, where the first kind is not known. */
type SceneCanvas = (HTMLCanvasElement | OffscreenCanvas) & EventTarget;

function startRenderer(canvas: SceneCanvas): WebGLRenderer {
  const renderer = new WebGLRenderer({ canvas, alpha: true, antialias: true });
  renderer.localClippingEnabled = true;
  // Asking for compiler messages waits for the graphics process to catch up.
  renderer.debug.checkShaderErrors = false;
  return renderer;
}

/**
 * Puts the part scene on a canvas and draws it whenever something has changed. Works on the page's thread and in a
 * worker alike; in a worker a large part never holds up the page.
 * @throws what three throws when there is no WebGL
 */
export async function mountScene(
  canvas: SceneCanvas,
  tell: (message: FromScene) => void,
): Promise<MountedScene> {
  const root = createRoot(canvas);
  await root.configure({
    gl: () => startRenderer(canvas),
    frameloop: 'demand',
    // The maps' colors are screen colors already, and the legend must match them.
    legacy: true,
    linear: true,
    flat: true,
    size: { width: 0, height: 0, top: 0, left: 0 },
    dpr: 1,
  });
  const { store, take } = createSceneStore();
  const three = root.render(<PartScene store={store} />);
  const lost = () => tell({ kind: 'lost' });
  canvas.addEventListener('webglcontextlost', lost);
  return {
    take(message) {
      if (message.kind !== 'size') return take(message);
      three.getState().setDpr(message.pixelRatio);
      three.getState().setSize(message.widthPx, message.heightPx);
    },
    dispose() {
      // Taking the scene down gives its context back, which is no trouble to tell of.
      canvas.removeEventListener('webglcontextlost', lost);
      root.unmount();
    },
  };
}
