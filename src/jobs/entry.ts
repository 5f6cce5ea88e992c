/** The bench worker's entry: one session, offered to the page, with a second worker that takes half of the walls. */
import solidsWasmUrl from 'manifold-3d/manifold.wasm?url';
import { BenchSession } from './benchSession';
import { createSharedSlots } from './sharedSlots';
import { startWallsHelper } from './startWallsHelper';
import { exposeBench } from './wire';

exposeBench(new BenchSession(createSharedSlots(startWallsHelper), solidsWasmUrl));
// Tells the page that all of this was loaded and has run; whatever goes wrong later has another cause.
postMessage('started');
