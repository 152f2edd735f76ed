import type { SourceState } from '../../engine/estimate/index.ts';
import { SvgPen } from '../ink/svgPen.ts';

/** Side of the square that a glyph is drawn in, and of its middle [drafting units]. */
export const GLYPH = 14;
const MIDDLE = GLYPH / 2;

/** The state of a source by its shape alone: full disc, triangle, empty circle, cross, dash. */
export function stateGlyph(state: SourceState): string {
  const pen = new SvgPen(1, 'glyph');
  switch (state) {
    case 'valid':
      pen.arc(MIDDLE, MIDDLE, 5, 0, 2 * Math.PI);
      pen.paint({ fill: 'ink' });
      break;
    case 'suspect':
      pen.moveTo(MIDDLE, 1.5);
      pen.lineTo(GLYPH - 1, GLYPH - 2);
      pen.lineTo(1, GLYPH - 2);
      pen.close();
      pen.paint({ fill: 'card', stroke: 'ink', width: 'outline' });
      break;
    case 'stale':
      pen.arc(MIDDLE, MIDDLE, 4.5, 0, 2 * Math.PI);
      pen.paint({ fill: 'card', stroke: 'ink', width: 'outline' });
      break;
    case 'failed':
      for (const [from, to] of [
        [2, GLYPH - 2],
        [GLYPH - 2, 2],
      ] as const) {
        pen.moveTo(from, 2);
        pen.lineTo(to, GLYPH - 2);
      }
      pen.paint({ stroke: 'ink', width: 'thick' });
      break;
    case 'no data':
      pen.moveTo(2, MIDDLE);
      pen.lineTo(GLYPH - 2, MIDDLE);
      pen.paint({ stroke: 'ink', width: 'thick' });
      break;
  }
  return pen.markup;
}
