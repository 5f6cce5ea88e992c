/** Reads one project file away from the page's thread: it is given a file and answers with what the file holds. */
import { readProjectFileBlob } from './projectFileBytes';

globalThis.addEventListener('message', ({ data }: MessageEvent<Blob>) => {
  void readProjectFileBlob(data).then((outcome) => postMessage(outcome));
});
