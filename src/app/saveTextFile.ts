import type { TextFile } from '../workbook';

/** Hands a text to the browser as a file to keep. */
export function saveTextFile({ fileName, text }: TextFile, mediaType = 'application/json'): void {
  saveBlob(fileName, new Blob([text], { type: mediaType }));
}

/** The same for a file that is no text. */
export function saveBytes(fileName: string, bytes: Uint8Array, mediaType: string): void {
  saveBlob(fileName, new Blob([new Uint8Array(bytes)], { type: mediaType }));
}

function saveBlob(fileName: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = fileName;
  link.click();
  // The download has its own hold on the data once the click is over.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
