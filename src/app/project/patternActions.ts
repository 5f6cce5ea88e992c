/** Making a pattern, and the files that are saved of one. */
import { cutTemplateSvg } from '../../core/pattern/cutTemplate';
import type { PatternChoices, PatternSummary } from '../../core/pattern/makePattern';
import type { MeasuringDesk } from '../../sheets/measuring/measuringDesk';
import type { MadeHere } from '../../sheets/pattern/patternControl';
import { saveBytes, saveTextFile } from '../saveTextFile';

export function patternActions(desk: MeasuringDesk, fileName: (what: string) => string, printScale: number) {
  return {
    makePattern(choices: PatternChoices) {
      return desk.run('making the pattern', 'pattern', choices);
    },
    savePattern(stl: Uint8Array) {
      saveBytes(fileName('pattern.stl'), stl, 'model/stl');
    },
    saveTemplate({ template }: PatternSummary) {
      if (template === null) return;
      saveTextFile(
        { fileName: fileName('holes to cut.svg'), text: cutTemplateSvg(template) },
        'image/svg+xml',
      );
    },
    async saveToPrint({ stl, choices: { pull } }: MadeHere, format: 'stl' | '3mf') {
      const given = { stl, pull, printScale, format };
      const bytes = await desk.run('placing it on the print bed', 'print file', given);
      if (bytes !== null) saveBytes(fileName(`pattern to print.${format}`), bytes, `model/${format}`);
    },
  };
}
