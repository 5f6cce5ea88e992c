/** The files of a set of templates: paper at true size, and drawings for a knife plotter. */
import { nestPieces, type FabricNest, type FabricRoll, type NestChoices } from '../core/templates/nest';
import type { PlyPiece } from '../core/templates/piece';
import { plotterSheet } from '../core/templates/plotterSheet';
import { templatePages, type PaperChoice } from '../core/templates/templatePages';
import { writeDxf } from '../core/templates/writeDxf';
import { writeSvg } from '../core/templates/writeSvg';

export interface TemplateFiles {
  readonly pdf: Uint8Array;
  readonly svg: string;
  readonly dxf: string;
}

/**
 * What `--out` writes as `templates.pdf`, `templates.svg` and `templates.dxf`, and the page saves.
 * @throws Problem where the pieces cannot be nested (`nest.*`) or would fill too many pages (`templates.pages`)
 */
export async function nestAndDraw(
  pieces: readonly PlyPiece[],
  rolls: readonly FabricRoll[],
  choices: NestChoices,
  paper: PaperChoice,
): Promise<TemplateFiles & { readonly nests: readonly FabricNest[] }> {
  const nests = nestPieces(pieces, rolls, choices);
  return { nests, ...(await templateFiles(nests, paper)) };
}

/** The files of a nest that is known already. */
export async function templateFiles(
  nests: readonly FabricNest[],
  paper: PaperChoice,
): Promise<TemplateFiles> {
  const plotted = plotterSheet(nests);
  const pages = templatePages(nests, paper);
  // Its library is large, and few visits ask for paper.
  const { writePdf } = await import('./writePdf');
  return { pdf: await writePdf(pages, 'Ply templates'), svg: writeSvg(plotted), dxf: writeDxf(plotted) };
}
