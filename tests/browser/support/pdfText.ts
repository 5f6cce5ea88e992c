import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface PdfPage {
  readonly text: string;
  /** Points (1/72 inch). */
  readonly width: number;
  readonly height: number;
}

/** Text of each page of a PDF, words joined by single spaces. */
export async function pdfPages(bytes: Uint8Array): Promise<PdfPage[]> {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const pages: PdfPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { items } = await page.getTextContent();
    const text = items
      .map((item) => ('str' in item ? item.str : ''))
      .join(' ')
      .replaceAll(/\s+/g, ' ');
    const { width, height } = page.getViewport({ scale: 1 });
    pages.push({ text, width, height });
  }
  await document.destroy();
  return pages;
}
