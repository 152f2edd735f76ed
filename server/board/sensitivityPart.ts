import { figure } from '../../engine/figures.ts';
import {
  SENSITIVITY_KEY,
  sensitivityDrawing,
  sensitivityLines,
  sensitivityRows,
  stepWords,
} from '../../engine/study/index.ts';
import type { BoardFindings } from './boardFindings.ts';
import type { BoardQuestion } from './boardQuestion.ts';
import { list, paragraph, type Sheet, type SheetColumn } from './sheet.ts';

const RIGHT = (heading: string): SheetColumn => ({ heading, align: 'right' });

/** Each input a little less and a little more: margin of the arrival asked about, share of the arrivals drawn that stay upright. */
export function sensitivityPart({ asked }: BoardQuestion, { sensitivities }: BoardFindings, sheet: Sheet): string {
  const { base, runs, inputs } = sensitivities;
  if (inputs.length === 0) return paragraph('No input was changed.');
  const figureOf = (measure: 'margin' | 'upright', caption: string): readonly string[] => {
    const drawing = sensitivityDrawing(sensitivities, measure);
    return drawing === undefined ? [] : [sheet.figure(drawing, caption)];
  };
  const upright = base?.upright === undefined ? '' : `; ${base.upright} of ${runs} arrivals drawn stay upright`;
  return [
    list(sensitivityLines(sensitivities)),
    paragraph(
      `As it is: margin ${figure(base?.margin, 2)} m/s at ${figure(Math.abs(asked.horizontalSpeed), 2)} m/s${upright}. The same ${runs} draws are taken for each change, so that a difference is the input's own.`,
    ),
    ...figureOf('margin', SENSITIVITY_KEY),
    ...figureOf(
      'upright',
      `The same for the share of ${runs} arrivals drawn that stay upright; every draw of the input is changed alike. One arrival is ${figure(100 / runs, 2)} percentage points.`,
    ),
    sheet.table({
      caption:
        'Change of the margin [m/s] and of the share upright [percentage points], with less and with more of each input.',
      columns: [
        { heading: 'input, and by how much' },
        RIGHT('now'),
        RIGHT('margin, less'),
        RIGHT('margin, more'),
        RIGHT('upright, less'),
        RIGHT('upright, more'),
      ],
      rows: sensitivityRows(sensitivities).map(({ input, less, more }) => [
        stepWords(input),
        input.present === undefined ? '-' : String(Number(input.present.toPrecision(4))),
        figure(less.margin, 3),
        figure(more.margin, 3),
        figure(less.upright, 1),
        figure(more.upright, 1),
      ]),
    }),
  ].join('\n');
}
