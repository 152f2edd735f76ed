import { SvgPen } from '../ink/svgPen.ts';
import type { Lettering, Pen } from '../ink/pen.ts';
import { SCORECARD } from '../text/en.ts';
import { decimal, speed } from '../text/numbers.ts';
import { drawArrow } from '../views/arrow.ts';

export interface SpeedFinding {
  /** In the direction of travel [m/s]. */
  readonly speed: number;
  readonly tripping: number;
  readonly cautious?: number;
}

const WIDTH = 640;
const LEFT = 18;
const AXIS = 96;
/** Distances between figures on the axis [m/s]. */
const RULINGS = [0.1, 0.2, 0.5, 1, 2, 5, 10];

export const SPEED_SCALE_BOX = `0 0 ${WIDTH} 150`;

/** The touchdown speed as an arrow on a ruled scale, with both tip limits as ticks and what lies beyond hatched. */
export function drawSpeedScale(finding: SpeedFinding): string {
  const pen = new SvgPen(1, 'speed');
  const least = Math.min(0, 1.1 * finding.tripping, finding.cautious ?? 0);
  const most = Math.max(1.3 * finding.tripping, 1.12 * finding.speed, 0.5);
  const at = (value: number) => LEFT + ((value - least) / (most - least)) * (WIDTH - 2 * LEFT);
  drawBeyond(pen, at(Math.max(least, finding.tripping)), WIDTH - LEFT);
  drawAxis(pen, { least, most, at });
  const right = at(finding.tripping) > 0.62 * WIDTH;
  pen.moveTo(at(finding.tripping), 30);
  pen.lineTo(at(finding.tripping), AXIS);
  pen.paint({ stroke: 'blue', width: 'thick' });
  label(pen, `${SCORECARD.trippingLimit} ${speed(finding.tripping)}`, at(finding.tripping), 24, right, {
    size: 17,
    tone: 'blue',
  });
  if (finding.cautious !== undefined) {
    const x = at(finding.cautious);
    pen.moveTo(x, 54);
    pen.lineTo(x, AXIS);
    pen.paint({ stroke: 'blue', width: 'edge', dash: 'fine' });
    label(pen, `${SCORECARD.cautiousLimit} ${speed(finding.cautious)}`, x, 49, x > 0.35 * WIDTH, {
      size: 15,
      tone: 'blue',
    });
  }
  drawArrow(pen, {
    fromX: at(0),
    fromY: AXIS - 15,
    toX: at(finding.speed),
    toY: AXIS - 15,
    tone: 'ink',
    shaft: 'heavy',
    head: 8,
  });
  const end = at(finding.speed);
  const words = `${SCORECARD.arrived} ${speed(finding.speed)}`;
  const style: Lettering = { size: 18, bold: true };
  const align = end > 0.5 * WIDTH ? 'right' : 'left';
  pen.text(words, align === 'right' ? end : Math.max(LEFT, end - 8), AXIS + 46, { ...style, align });
  pen.moveTo(end, AXIS - 6);
  pen.lineTo(end, AXIS + 30);
  pen.paint({ stroke: 'ink', width: 'hair' });
  return pen.markup;
}

/** What is over the tripping limit: hatched, as cut material is. */
function drawBeyond(pen: Pen, from: number, to: number): void {
  const outline = () => {
    pen.moveTo(from, 38);
    pen.lineTo(to, 38);
    pen.lineTo(to, AXIS);
    pen.lineTo(from, AXIS);
    pen.close();
  };
  outline();
  pen.paint({ fill: 'shade' });
  outline();
  pen.within(() => {
    for (let x = from - 70; x < to; x += 9) {
      pen.moveTo(x, AXIS);
      pen.lineTo(x + 60, AXIS - 60);
    }
    pen.paint({ stroke: 'faint', width: 'hair' });
  });
}

function drawAxis(pen: Pen, axis: { least: number; most: number; at: (value: number) => number }): void {
  const { least, most, at } = axis;
  const ruling = RULINGS.find((step) => (most - least) / step <= 7) ?? 10;
  pen.moveTo(at(least), AXIS);
  pen.lineTo(at(most), AXIS);
  pen.paint({ stroke: 'ink', width: 'edge' });
  const first = Math.ceil(least / ruling);
  for (let i = first; i * ruling <= most; i += 1) {
    pen.moveTo(at(i * ruling), AXIS);
    pen.lineTo(at(i * ruling), AXIS + 8);
  }
  for (let i = Math.ceil((least / ruling) * 5); (i * ruling) / 5 <= most; i += 1) {
    pen.moveTo(at((i * ruling) / 5), AXIS);
    pen.lineTo(at((i * ruling) / 5), AXIS + 4);
  }
  pen.paint({ stroke: 'ink', width: 'thin' });
  for (let i = first; i * ruling <= most; i += 1) {
    pen.text(decimal(i * ruling, ruling < 1 ? 1 : 0), at(i * ruling), AXIS + 22, {
      size: 14,
      align: 'center',
      tone: 'pencil',
    });
  }
}

function label(pen: Pen, words: string, x: number, y: number, leftward: boolean, lettering: Lettering): void {
  pen.text(words, x + (leftward ? 5 : -5), y, { ...lettering, align: leftward ? 'right' : 'left', halo: 'card' });
}
