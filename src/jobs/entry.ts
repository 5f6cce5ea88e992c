/** The bench worker's entry: one session, offered to the page, with a second worker that takes half of the walls. */
import solidsWasmUrl from 'manifold-3d/manifold.wasm?url';
import { BenchSession } from './benchSession';
import { rehearse } from './rehearsal';
import { startWallsHelper, type WallsHelper } from './startWallsHelper';
import { exposeBench } from './wire';

let started: WallsHelper | null = null;
const helper = (): WallsHelper => (started ??= startWallsHelper(() => (started = null)));

exposeBench(new BenchSession(helper, undefined, solidsWasmUrl, (isWanted) => rehearse(helper, isWanted)));
// Tells the page that all of this was loaded and has run; whatever goes wrong later has another cause.
postMessage('started');
