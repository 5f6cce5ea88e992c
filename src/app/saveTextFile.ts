import type { TextFile } from '../workbook';

/** Hands a text to the browser as a file to keep. */
export function saveTextFile({ fileName, text }: TextFile, mediaType = 'application/json'): void {
  const url = URL.createObjectURL(new Blob([text], { type: mediaType }));
  const link = document.createElement('a');
  link.href = url;
  link.download = fileName;
  link.click();
  // The download has its own hold on the data once the click is over.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
