import { createStore, type StoreApi } from 'zustand/vanilla';
import type { SectionPlane } from '../../core/mesh/types';
import type { DrawnHeat } from '../heatSheet';
import type { Paint } from '../mapColors';
import type { OrbitView, PartBox } from '../orbitView';
import type { OwnChunk } from './ChunkGeometry';
import type { DrawnHalves, SceneMarks, StoneView, ToScene } from './sceneMessages';

/** Its chunks are the scene's own. */
export interface OwnPattern {
  readonly chunks: readonly OwnChunk[];
  readonly paint: Paint;
}

/** What the scene shows, as the messages have told it so far. */
export interface SceneState {
  readonly box: PartBox | null;
  /** None until the last one has come: a picture for every chunk would cost more than the whole part. */
  readonly chunks: readonly OwnChunk[];
  readonly paint: Paint | null;
  readonly halves: DrawnHalves | null;
  readonly stone: StoneView | null;
  readonly heat: DrawnHeat | null;
  readonly made: OwnPattern | null;
  readonly split: SectionPlane | null;
  readonly view: OrbitView | null;
  readonly marks: SceneMarks | null;
}

export type SceneStore = StoreApi<SceneState>;

/** Messages that change what is shown; the size of the canvas is the renderer's own business. */
export type ShownMessage = Exclude<ToScene, { kind: 'size' }>;

/** A store for the scene's components to follow, and what takes the messages into it. */
export function createSceneStore(): { store: SceneStore; take: (message: ShownMessage) => void } {
  const store = createStore<SceneState>(() => ({
    box: null,
    chunks: [],
    paint: null,
    halves: null,
    stone: null,
    heat: null,
    made: null,
    split: null,
    view: null,
    marks: null,
  }));
  let arrived: OwnChunk[] = [];
  const take = (message: ShownMessage) => {
    switch (message.kind) {
      case 'part':
        arrived = [];
        // The paint of another part would not fit; the new part's follows.
        store.setState({ box: message.box, chunks: [], paint: null });
        break;
      case 'chunk':
        // Where the scene is drawn on the page's thread, the chunk told is the page's own.
        arrived.push({ ...message.chunk });
        if (message.last) store.setState({ chunks: arrived });
        break;
      case 'paint':
        store.setState({ paint: message.paint });
        break;
      case 'halves':
        store.setState({ halves: message.halves });
        break;
      case 'stone':
        store.setState({ stone: message.stone });
        break;
      case 'heat':
        store.setState({ heat: message.heat });
        break;
      case 'made': {
        const { made } = message;
        const own = made && { paint: made.paint, chunks: made.display.map((chunk) => ({ ...chunk })) };
        store.setState({ made: own });
        break;
      }
      case 'split':
        store.setState({ split: message.split });
        break;
      case 'view':
        store.setState({ view: message.view });
        break;
      case 'marks':
        store.setState({ marks: message.marks });
        break;
    }
  };
  return { store, take };
}
