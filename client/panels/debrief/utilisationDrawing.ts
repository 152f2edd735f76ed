import type { Sample } from '../../../engine/replay/index.ts';
import type { Pen } from '../../ink/pen.ts';
import { SvgPen } from '../../ink/svgPen.ts';
import { UTILISATION } from '../../text/debrief.ts';
import { percent } from '../../text/numbers.ts';

const WIDTH = 460;
const HEIGHT = 190;
const FRAME = { left: 48, right: 84, top: 14, bottom: 28 } as const;
const FLOOR = HEIGHT - FRAME.bottom;
/** Of the descent so much before the first contact is drawn [s]. */
export const LAST_SECONDS = 20;
/** A share beyond this is drawn at the top: it is far outside [-]. */
const MOST_SHARE = 2;

interface Point {
  readonly time: number;
  readonly share: number;
}

/** Share of the tip limit over the last seconds in the air: believed in pencil, true in ink. Undefined where there is no figure of it. */
export function drawUtilisation(
  samples: readonly Sample[],
): { markup: string; viewBox: string; label: string } | undefined {
  // on the ground there is no contact to come, and no figure
  const end = samples.findLast(({ truth }) => truth.utilisation !== undefined)?.after ?? 0;
  const seen = samples.filter(({ after }) => after >= end - LAST_SECONDS && after <= end);
  const is = pointsOf(seen, ({ truth }) => truth.utilisation);
  const believed = pointsOf(seen, (sample) => sample.believed?.utilisation);
  const [lastIs, lastBelieved] = [is.at(-1), believed.at(-1)];
  if (lastIs === undefined) return undefined;
  const most = Math.max(1.15, ...[...is, ...believed].map(({ share }) => 1.1 * share));
  const top = Math.min(MOST_SHARE, most);
  const x = (time: number) =>
    FRAME.left + ((time - (end - LAST_SECONDS)) / LAST_SECONDS) * (WIDTH - FRAME.left - FRAME.right);
  const y = (share: number) => FLOOR - (Math.min(top, share) / top) * (FLOOR - FRAME.top);
  const pen = new SvgPen(1, 'utilisation');
  drawFrame(pen, x, y, end);
  drawLine(pen, believed, { x, y, isBelieved: true });
  drawLine(pen, is, { x, y, isBelieved: false });
  nameLines(pen, y(lastIs.share), lastBelieved && y(lastBelieved.share));
  const label = UTILISATION.drawn(
    lastBelieved === undefined ? '–' : percent(lastBelieved.share),
    percent(lastIs.share),
  );
  return { markup: pen.markup, viewBox: `0 0 ${WIDTH} ${HEIGHT}`, label };
}

function pointsOf(samples: readonly Sample[], shareOf: (sample: Sample) => number | undefined): readonly Point[] {
  return samples.flatMap((sample) => {
    const share = shareOf(sample);
    return share === undefined ? [] : [{ time: sample.after, share }];
  });
}

function drawFrame(pen: Pen, x: (time: number) => number, y: (share: number) => number, end: number): void {
  pen.moveTo(FRAME.left, FRAME.top);
  pen.lineTo(FRAME.left, FLOOR);
  pen.lineTo(WIDTH - FRAME.right, FLOOR);
  pen.paint({ stroke: 'ink', width: 'thin' });
  for (const share of [0, 0.5, 1])
    pen.text(percent(share), FRAME.left - 6, y(share) + 5, { size: 14, tone: 'pencil', align: 'right' });
  for (let before = 0; before <= LAST_SECONDS; before += 5)
    pen.text(before === 0 ? '0' : `−${before}`, x(end - before), FLOOR + 20, {
      size: 14,
      tone: 'pencil',
      align: 'center',
    });
  pen.moveTo(FRAME.left, y(1));
  pen.lineTo(WIDTH - FRAME.right, y(1));
  pen.paint({ stroke: 'blue', width: 'edge' });
  pen.text(UTILISATION.limit, FRAME.left + 6, y(1) - 6, { size: 14, tone: 'blue', halo: 'card' });
}

function drawLine(
  pen: Pen,
  points: readonly Point[],
  on: { readonly x: (time: number) => number; readonly y: (share: number) => number; readonly isBelieved: boolean },
): void {
  points.forEach(({ time, share }, i) => {
    if (i === 0) pen.moveTo(on.x(time), on.y(share));
    else pen.lineTo(on.x(time), on.y(share));
  });
  pen.paint(on.isBelieved ? { stroke: 'pencil', width: 'edge', dash: 'dashed' } : { stroke: 'ink', width: 'outline' });
}

/** At their ends, apart by a line of letters at least. */
function nameLines(pen: Pen, is: number, believed: number | undefined): void {
  const at = WIDTH - FRAME.right + 6;
  const gap = believed === undefined ? 0 : believed - is;
  const apart = believed !== undefined && Math.abs(gap) < 18 ? (18 - Math.abs(gap)) / 2 : 0;
  const sign = gap < 0 ? -1 : 1;
  pen.text(UTILISATION.true, at, is + 5 - sign * apart, { size: 15, bold: true });
  if (believed !== undefined)
    pen.text(UTILISATION.believed, at, believed + 5 + sign * apart, { size: 15, italic: true, tone: 'pencil' });
}
