/** The bench worker's entry: one session, offered to the page, with a second worker that takes half of the walls. */
import solidsWasmUrl from 'manifold-3d/manifold.wasm?url';
import { BenchSession } from './benchSession';
import { startWallsHelper } from './startWallsHelper';
import { exposeBench } from './wire';

exposeBench(new BenchSession(startWallsHelper, undefined, solidsWasmUrl));
