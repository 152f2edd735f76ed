import type { PropellantReadings } from '../../engine/table/index.ts';
import { SvgPen } from '../ink/svgPen.ts';

type Swing = NonNullable<PropellantReadings['swing']>;

const WIDTH = 92;
const HEIGHT = 48;
const MIDDLE = WIDTH / 2;
/** Half of the tank's width, and where its surface stands when level. */
const HALF = 34;
const LEVEL = 24;
const BOTTOM = HEIGHT - 4;
/** Waves higher than the picture are drawn to its edge. */
const MOST = 18;

/** A tank from the side: its surface now as a line over the liquid, level as a chain line, and fine how far it goes up and down at the walls. */
export function drawSwing(swing: Swing | undefined): { readonly markup: string; readonly viewBox: string } {
  const pen = new SvgPen(1, 'swing');
  const scale = HALF / (swing?.radius ?? 1);
  const onSheet = (rise: number) => Math.max(-MOST, Math.min(MOST, rise * scale));
  if (swing !== undefined) {
    const now = onSheet(swing.now);
    pen.moveTo(MIDDLE - HALF, LEVEL + now);
    pen.lineTo(MIDDLE + HALF, LEVEL - now);
    pen.lineTo(MIDDLE + HALF, BOTTOM);
    pen.lineTo(MIDDLE - HALF, BOTTOM);
    pen.close();
    pen.paint({ fill: 'wash' });
    pen.moveTo(MIDDLE - HALF, LEVEL + now);
    pen.lineTo(MIDDLE + HALF, LEVEL - now);
    pen.paint({ stroke: 'ink', width: 'outline' });
    for (const rise of [onSheet(swing.rise), -onSheet(swing.rise)]) {
      for (const wall of [MIDDLE - HALF - 9, MIDDLE + HALF + 2]) {
        pen.moveTo(wall, LEVEL + rise);
        pen.lineTo(wall + 7, LEVEL + rise);
      }
    }
    pen.paint({ stroke: 'blue', width: 'edge' });
  }
  pen.moveTo(MIDDLE - HALF - 6, LEVEL);
  pen.lineTo(MIDDLE + HALF + 6, LEVEL);
  pen.paint({ stroke: 'ink', width: 'hair', dash: 'fine' });
  pen.moveTo(MIDDLE - HALF, 4);
  pen.lineTo(MIDDLE - HALF, BOTTOM);
  pen.lineTo(MIDDLE + HALF, BOTTOM);
  pen.lineTo(MIDDLE + HALF, 4);
  pen.paint({ stroke: 'ink', width: 'edge' });
  return { markup: pen.markup, viewBox: `0 0 ${WIDTH} ${HEIGHT}` };
}
