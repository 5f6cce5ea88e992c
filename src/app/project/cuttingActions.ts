import type { CutPlies, CuttingChoices } from '../../core/drape/cutPlies';
import type { FabricNest } from '../../core/templates/nest';
import type { PaperChoice } from '../../core/templates/templatePages';
import type { MeasuringDesk } from '../../sheets/measuring/measuringDesk';
import type { TemplateKind } from '../../sheets/cutting/cuttingControl';
import type { NestAsked } from '../../steps/cutting/rolls';
import { saveBytes, saveTextFile } from '../saveTextFile';

/** What the maker may do about the pieces to cut; null, or false, where it was canceled or refused. */
export const cuttingActions = (desk: MeasuringDesk, fileName: (what: string) => string) => ({
  cutPlies: (choices: CuttingChoices) => desk.run('laying the plies', 'cutting', { choices, stl: null }),
  nestPieces: ({ pieces }: CutPlies, asked: NestAsked) =>
    desk.run('laying the pieces out on the roll', 'nest', { pieces, ...asked }),
  async saveTemplates(nests: readonly FabricNest[], paper: PaperChoice, kind: TemplateKind) {
    const files = await desk.run('drawing the templates', 'templates', { nests, paper });
    if (files === null) return false;
    if (kind === 'pdf') saveBytes(fileName('templates.pdf'), files.pdf, 'application/pdf');
    else
      saveTextFile(
        { fileName: fileName(`templates.${kind}`), text: files[kind] },
        kind === 'svg' ? 'image/svg+xml' : 'image/vnd.dxf',
      );
    return true;
  },
});
