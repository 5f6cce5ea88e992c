import { act, createRoot } from '@react-three/fiber';
import {
  BufferAttribute,
  Group,
  Mesh,
  OrthographicCamera,
  Points,
  Vector3,
  type Scene,
  type WebGLRenderer,
} from 'three';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { DisplayChunk } from '../../src/pipeline/told';
import { openingView, presetView, sightLine, type PartBox } from '../../src/viewer/orbitView';
import '../../src/viewer/scene/mountScene';
import { PartScene } from '../../src/viewer/scene/PartScene';
import { createSceneStore, type ShownMessage } from '../../src/viewer/scene/sceneStore';
import type { SceneMarks } from '../../src/viewer/scene/sceneMessages';

const box: PartBox = { boxMinMm: [0, 0, 0], boxMaxMm: [40, 20, 10] };
const sizePx = [400, 300] as const;
const plain = [214, 208, 194, 255];
const theme = { ink: '#102030', ground: '#e0e0e0', accent: '#2040a0', finding: '#a02010' };
const marks: SceneMarks = {
  pull: [0, 0, 1],
  theme,
  placeMm: null,
  dotsMm: null,
  plane: null,
  section: null,
};
const chunk = (firstFacet: number, facets: number): DisplayChunk => ({
  firstFacet,
  corners: new Float32Array(9 * facets),
});

/** The scene's tree without a graphics card: nothing is drawn, everything that would be is there to look at. */
async function sceneTree() {
  const renderer = { render: () => undefined, setSize: () => undefined, setPixelRatio: () => undefined };
  const root = createRoot({} as HTMLCanvasElement);
  await root.configure({
    gl: renderer as unknown as WebGLRenderer,
    frameloop: 'never',
    size: { width: sizePx[0], height: sizePx[1], top: 0, left: 0 },
    dpr: 1,
  });
  const { store, take } = createSceneStore();
  const three = await act(async () => root.render(<PartScene store={store} />));
  return {
    tell: (...messages: ShownMessage[]) => act(async () => messages.forEach(take)),
    camera: () => three.getState().camera as OrthographicCamera,
    chunks: () => chunksOf(three.getState().scene),
    groups: () =>
      three
        .getState()
        .scene.children.filter(
          (object) => object instanceof Group && object.children.every((child) => child instanceof Mesh),
        ),
    points: () => three.getState().scene.children.filter((object) => object instanceof Points),
    end: () => act(async () => root.unmount()),
  };
}

const chunksOf = (scene: Scene) =>
  scene.children
    .filter((object) => object instanceof Mesh)
    .filter((mesh) => mesh.visible)
    .map(({ geometry, material }) => ({ geometry, material }));

type Tree = Awaited<ReturnType<typeof sceneTree>>;
const colorOf = (tree: Tree, chunkNumber: number, corner: number) => {
  const color = tree.chunks()[chunkNumber]!.geometry.getAttribute('color') as BufferAttribute;
  return Array.from(color.array.slice(4 * corner, 4 * corner + 4));
};

describe('the scene', () => {
  let tree: Tree;
  beforeEach(async () => {
    Reflect.set(globalThis, 'IS_REACT_ACT_ENVIRONMENT', true);
    tree = await sceneTree();
    await tree.tell(
      { kind: 'part', box },
      { kind: 'view', view: openingView([0, 0, 1], box) },
      { kind: 'marks', marks },
    );
  });
  afterEach(async () => {
    await tree.end();
    Reflect.deleteProperty(globalThis, 'IS_REACT_ACT_ENVIRONMENT');
  });

  const giveChunks = () =>
    tree.tell(
      { kind: 'chunk', chunk: chunk(0, 2), last: false },
      { kind: 'chunk', chunk: chunk(2, 1), last: true },
    );

  it('shows no chunk before the last one has come, then all, plain', async () => {
    await tree.tell({ kind: 'chunk', chunk: chunk(0, 2), last: false });
    expect(tree.chunks()).toHaveLength(0);
    await tree.tell({ kind: 'chunk', chunk: chunk(2, 1), last: true });
    expect(tree.chunks()).toHaveLength(2);
    expect(colorOf(tree, 0, 0)).toEqual(plain);
    expect(colorOf(tree, 1, 2)).toEqual(plain);
  });

  it('colors facets in place, each by its number in the part', async () => {
    await giveChunks();
    const before = tree.chunks().map(({ geometry }) => geometry);
    const paint = {
      values: new Uint8Array([0, 1, 1]),
      scale: {
        kind: 'classes',
        colors: [
          [1, 2, 3],
          [4, 5, 6],
        ],
      },
    } as const;
    await tree.tell({ kind: 'paint', paint });
    expect(tree.chunks().map(({ geometry }) => geometry)).toEqual(before);
    expect(colorOf(tree, 0, 2)).toEqual([1, 2, 3, 255]);
    expect(colorOf(tree, 0, 3)).toEqual([4, 5, 6, 255]);
    expect(colorOf(tree, 1, 0)).toEqual([4, 5, 6, 255]);
    await tree.tell({ kind: 'paint', paint: null });
    expect(colorOf(tree, 1, 0)).toEqual(plain);
  });

  it('lets go of corners that the graphics card has, and keeps the surface while it is hidden', async () => {
    const own = chunk(0, 2);
    await tree.tell({ kind: 'chunk', chunk: own, last: true });
    const { geometry } = tree.chunks()[0]!;
    const position = geometry.getAttribute('position') as BufferAttribute;
    // The renderer calls this after the upload.
    position.onUploadCallback();
    expect(position.array).toHaveLength(0);
    expect(position.count).toBe(6);
    expect(own.corners).toHaveLength(18);
    const shows = { negative: true, pattern: false, positive: true };
    await tree.tell(
      { kind: 'halves', halves: { negative: [chunk(0, 1)], positive: [chunk(0, 1)] } },
      { kind: 'stone', stone: { apartMm: 0, shows } },
    );
    expect(tree.chunks()).toHaveLength(0);
    await tree.tell({ kind: 'stone', stone: { apartMm: 0, shows: { ...shows, pattern: true } } });
    expect(tree.chunks()[0]!.geometry).toBe(geometry);
  });

  it('takes a part away when another comes', async () => {
    await giveChunks();
    await tree.tell({ kind: 'part', box });
    expect(tree.chunks()).toHaveLength(0);
    await tree.tell({ kind: 'chunk', chunk: chunk(0, 1), last: true });
    expect(tree.chunks()).toHaveLength(1);
  });

  it('takes away the half between the cut and the eye, from whichever side the eye looks', async () => {
    await giveChunks();
    await tree.tell({ kind: 'marks', marks: { ...marks, plane: { axis: 'x', atMm: 15 } } });
    const kept = (xMm: number) =>
      tree.chunks()[0]!.material.clippingPlanes![0].distanceToPoint(new Vector3(xMm, 0, 0)) > 0;
    await tree.tell({ kind: 'view', view: presetView('plusX', box) });
    expect([kept(14), kept(16)]).toEqual([true, false]);
    await tree.tell({ kind: 'view', view: presetView('minusX', box) });
    expect([kept(14), kept(16)]).toEqual([false, true]);
    await tree.tell({ kind: 'marks', marks });
    expect(tree.chunks()[0]!.material.clippingPlanes).toBeNull();
  });

  it('looks along the line of sight that a click is probed along', async () => {
    for (const view of [openingView([0, 0, 1], box), presetView('plusZ', box), presetView('minusY', box)]) {
      await tree.tell({ kind: 'view', view });
      const camera = tree.camera();
      camera.updateMatrixWorld();
      const { originMm, direction } = sightLine(view, box, [90, 210], sizePx);
      const along = new Vector3(...originMm).addScaledVector(new Vector3(...direction), 7).project(camera);
      expect((along.x + 1) * 0.5 * sizePx[0]).toBeCloseTo(90, 3);
      expect((1 - along.y) * 0.5 * sizePx[1]).toBeCloseTo(210, 3);
      expect(Math.abs(along.z)).toBeLessThan(1);
    }
  });

  it('marks findings and the chosen place with dots, and takes them off', async () => {
    await tree.tell({
      kind: 'marks',
      marks: { ...marks, dotsMm: new Float32Array([1, 2, 3, 4, 5, 6]), placeMm: [7, 8, 9] },
    });
    const counts = tree.points().map(({ geometry }) => geometry.getAttribute('position').count);
    expect(counts).toEqual([2, 1, 1, 1]);
    await tree.tell({ kind: 'marks', marks });
    expect(tree.points()).toHaveLength(0);
  });

  it('pulls the stone halves off along the pull and hides what is not asked for', async () => {
    const shows = { negative: true, pattern: true, positive: true };
    await tree.tell(
      { kind: 'chunk', chunk: chunk(0, 2), last: true },
      { kind: 'halves', halves: { negative: [chunk(0, 3)], positive: [chunk(0, 4), chunk(4, 1)] } },
      { kind: 'stone', stone: { apartMm: 7, shows } },
    );
    expect(tree.groups().map(({ position }) => position.z)).toEqual([7, -7]);
    expect(tree.groups().map(({ children }) => children.length)).toEqual([1, 2]);
    expect(tree.chunks()).toHaveLength(1);
    await tree.tell({
      kind: 'stone',
      stone: { apartMm: 0, shows: { ...shows, pattern: false, negative: false } },
    });
    expect(tree.groups().map(({ children }) => children.length)).toEqual([2]);
    expect(tree.chunks()).toHaveLength(0);
    await tree.tell({ kind: 'halves', halves: null });
    expect(tree.groups()).toHaveLength(0);
    expect(tree.chunks()).toHaveLength(1);
  });
});
