import {
  AmbientLight,
  ColorManagement,
  DirectionalLight,
  Group,
  LinearSRGBColorSpace,
  LineSegments,
  Mesh,
  OrthographicCamera,
  Plane,
  Points,
  Scene,
  Vector3,
  WebGLRenderer,
} from 'three';
import { colorFacets } from '../colorScales';
import { pixelsPerMm, standOffMm, viewAxes, type OrbitView, type PartBox } from '../orbitView';
import { axisNumber, axisVector } from '../sectionFrame';
import { markObjects } from './markObjects';
import type { FromScene, SceneMarks, ToScene } from './sceneMessages';
import { SurfaceDrawing } from './SurfaceDrawing';

/** Full light adds up to the map's own color: what the legend shows is what a face turned to the lamp shows. */
const ambientShare = 0.64;
const lampShare = 0.36;

/**
 * The part and what is marked on it, drawn on a canvas whenever something has changed. Works on the page's thread and
 * in a worker alike; in a worker a large part never holds up the page.
 * @throws what three throws when there is no WebGL
 */
export class SceneDrawing {
  private readonly renderer: WebGLRenderer;
  private readonly scene = new Scene();
  private readonly camera = new OrthographicCamera();
  private readonly lamp = new DirectionalLight(0xffffff, lampShare * Math.PI);
  private readonly surface = new SurfaceDrawing();
  private readonly marksGroup = new Group();
  private size = { widthPx: 0, heightPx: 0 };
  private box: PartBox = { boxMinMm: [0, 0, 0], boxMaxMm: [1, 1, 1] };
  private view: OrbitView | null = null;
  private marks: SceneMarks | null = null;
  /** On which side of the cut the eye stands; 0 without a cut. */
  private cutSide = 0;
  private frame: number | null = null;

  constructor(canvas: HTMLCanvasElement | OffscreenCanvas, tell: (message: FromScene) => void) {
    // The maps' colors are screen colors already, and the legend must match them.
    ColorManagement.enabled = false;
    this.renderer = new WebGLRenderer({ canvas, alpha: true, antialias: true });
    this.renderer.outputColorSpace = LinearSRGBColorSpace;
    this.renderer.localClippingEnabled = true;
    // Asking for compiler messages waits for the graphics process to catch up.
    this.renderer.debug.checkShaderErrors = false;
    canvas.addEventListener('webglcontextlost', () => tell({ kind: 'lost' }));
    this.scene.add(new AmbientLight(0xffffff, ambientShare * Math.PI), this.lamp);
    this.scene.add(this.surface.group, this.marksGroup);
  }

  take(message: ToScene): void {
    switch (message.kind) {
      case 'size':
        this.size = message;
        this.renderer.setPixelRatio(message.pixelRatio);
        this.renderer.setSize(message.widthPx, message.heightPx, false);
        break;
      case 'part':
        this.box = message.box;
        this.surface.begin(message.box);
        this.mark();
        break;
      case 'chunk':
        this.surface.add(message.chunk);
        if (!message.last) return;
        break;
      case 'paint':
        this.surface.paint(
          message.paint === null ? null : colorFacets(message.paint.values, message.paint.scale),
        );
        break;
      case 'view':
        this.view = message.view;
        break;
      case 'marks':
        this.marks = message.marks;
        this.mark();
        break;
    }
    this.frame ??= requestAnimationFrame(() => this.draw());
  }

  dispose(): void {
    if (this.frame !== null) cancelAnimationFrame(this.frame);
    this.clearMarks();
    this.surface.dispose();
    this.renderer.dispose();
  }

  private draw(): void {
    this.frame = null;
    const { view, size, box } = this;
    if (view === null || size.widthPx === 0 || size.heightPx === 0) return;
    this.placeCamera(view, box);
    this.cutTowardEye(view);
    this.renderer.render(this.scene, this.camera);
  }

  private placeCamera(view: OrbitView, box: PartBox): void {
    const { camera, lamp } = this;
    const { widthPx, heightPx } = this.size;
    const { right, up, toEye } = viewAxes(view);
    const away = standOffMm(view, box);
    const target = new Vector3(...view.targetMm);
    camera.position.copy(target).addScaledVector(new Vector3(...toEye), away);
    camera.up.set(...up);
    camera.lookAt(target);
    camera.near = 0;
    camera.far = 2.2 * away;
    camera.left = -widthPx / 2;
    camera.right = widthPx / 2;
    camera.top = heightPx / 2;
    camera.bottom = -heightPx / 2;
    camera.zoom = pixelsPerMm(view, widthPx, heightPx);
    camera.updateProjectionMatrix();
    // Over the eye's left shoulder, so that every face looked at is lit and edges show.
    lamp.position
      .set(...toEye)
      .addScaledVector(new Vector3(...up), 0.45)
      .addScaledVector(new Vector3(...right), -0.35);
  }

  /** Takes away the half of the part that stands between the eye and the cut. */
  private cutTowardEye(view: OrbitView): void {
    const plane = this.marks?.plane ?? null;
    const side = plane === null ? 0 : viewAxes(view).toEye[axisNumber[plane.axis]] >= 0 ? 1 : -1;
    if (side === this.cutSide) return;
    this.cutSide = side;
    this.surface.cut(
      plane === null
        ? []
        : [new Plane(new Vector3(...axisVector[plane.axis]).multiplyScalar(-side), side * plane.atMm)],
    );
  }

  private mark(): void {
    this.clearMarks();
    if (this.marks !== null) this.marksGroup.add(...markObjects(this.marks, this.box));
    // The cut may stand elsewhere now: have it set anew.
    this.cutSide = Number.NaN;
  }

  private clearMarks(): void {
    this.marksGroup.traverse((object) => {
      if (!(object instanceof Mesh || object instanceof Points || object instanceof LineSegments)) return;
      object.geometry.dispose();
      for (const material of [object.material].flat()) material.dispose();
    });
    this.marksGroup.clear();
  }
}
