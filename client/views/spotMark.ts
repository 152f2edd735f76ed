import type { SpotApproach } from '../../engine/table/index.ts';
import { drawArrow } from './arrow.ts';
import type { Sheet } from './sheet.ts';

/** Height of the flag, and its length [drafting units]. */
const POLE = 46;
const FLAG = 20;
/** Kept clear at the left edge, where the ladder of heights stands [drafting units]. */
const LADDER = 90;

/** The spot that Site marked, as a flag on the ground with its way in; where it lies beyond the free part of the sheet, an arrow at that edge. */
export function drawSpotMark(
  { pen, camera }: Sheet,
  mark: {
    /** Of the spot on the ground [m]. */
    readonly x: number;
    readonly groundY: number;
    readonly approach: SpotApproach;
    readonly words: string;
  },
): void {
  const { covered, width } = camera.size;
  const x = camera.sheetX(mark.x);
  const y = camera.sheetY(mark.groundY);
  const [least, most] = [covered.left + LADDER * pen.unit, width - covered.right - 12 * pen.unit];
  if (x < least || x > most) {
    drawBeyond(pen, {
      edge: x < least ? least : most,
      toward: x < least ? -1 : 1,
      words: mark.words,
      y: camera.size.height,
    });
    return;
  }
  const top = y - POLE * pen.unit;
  pen.moveTo(x, y);
  pen.lineTo(x, top);
  pen.paint({ stroke: 'ink', width: 'outline' });
  pen.moveTo(x, top);
  pen.lineTo(x + FLAG * pen.unit, top + 7 * pen.unit);
  pen.lineTo(x, top + 14 * pen.unit);
  pen.close();
  pen.paint({ fill: 'card', stroke: 'ink', width: 'outline' });
  if (mark.approach === 'either way') return;
  const toward = mark.approach === 'to the right' ? 1 : -1;
  const arrowY = top + 28 * pen.unit;
  drawArrow(pen, {
    fromX: x - toward * 38 * pen.unit,
    fromY: arrowY,
    toX: x - toward * 5 * pen.unit,
    toY: arrowY,
    tone: 'ink',
    shaft: 'thin',
    head: 5,
  });
}

/** Two thirds down the sheet, where neither coach nor ground is. */
function drawBeyond(
  pen: Sheet['pen'],
  mark: { readonly edge: number; readonly toward: 1 | -1; readonly words: string; readonly y: number },
): void {
  const { edge, toward, words } = mark;
  const y = 0.62 * mark.y;
  const from = edge - toward * 30 * pen.unit;
  drawArrow(pen, { fromX: from, fromY: y, toX: edge, toY: y, tone: 'ink', shaft: 'thick', head: 7 });
  const lettering = { size: 14, align: toward > 0 ? 'right' : 'left', halo: 'paper' } as const;
  pen.text(words, edge, y - 12 * pen.unit, lettering);
}
