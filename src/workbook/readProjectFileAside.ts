/** The page's way to a project file: its size first, then everything else in a worker of its own. */
import { tooLargeForProjectFile, unreadableProjectFile, type ProjectFileOutcome } from './projectFile';

/** Null where workers are not to be had. */
function startWorker(): Worker | null {
  try {
    return new Worker(new URL('./projectFileWorker.ts', import.meta.url), {
      type: 'module',
      name: 'project file',
    });
  } catch {
    return null;
  }
}

/** Never rejects. */
export async function readProjectFileAside(file: Blob): Promise<ProjectFileOutcome> {
  const tooLarge = tooLargeForProjectFile(file.size);
  if (tooLarge !== null) return tooLarge;
  const worker = startWorker();
  if (worker === null) return (await import('./projectFileBytes')).readProjectFileBlob(file);
  return new Promise((resolve) => {
    const end = (outcome: ProjectFileOutcome) => {
      worker.terminate();
      resolve(outcome);
    };
    worker.addEventListener('message', ({ data }: MessageEvent<ProjectFileOutcome>) => end(data));
    worker.addEventListener('error', () => end(unreadableProjectFile));
    worker.addEventListener('messageerror', () => end(unreadableProjectFile));
    worker.postMessage(file, []);
  });
}
