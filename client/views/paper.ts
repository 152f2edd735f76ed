import type { HeightBreak } from './breakMark.ts';
import { ramp, type Sheet } from './sheet.ts';

/** Squares of the paper are metric: 0.5, 1, 5, ... m; the next finer ruling fades in as the picture closes in. */
const RULINGS = [0.5, 1, 5, 10, 50, 100];
/** Square sizes between which a ruling fades in [drafting units]. */
const FADE_FROM = 13;
const FADE_TO = 40;

/**
 * The ruled paper under everything. It lies still on the section, so its squares also show how the lander moves; above a
 * break of the height it moves with the piece that carries the lander.
 */
export function drawPaper(sheet: Sheet, gap?: HeightBreak): void {
  const { pen, camera } = sheet;
  const { width, height } = camera.size;
  pen.moveTo(0, 0);
  pen.lineTo(width, 0);
  pen.lineTo(width, height);
  pen.lineTo(0, height);
  pen.close();
  pen.paint({ fill: 'paper' });
  const edge = gap === undefined ? 0 : Math.max(0, gap.upper);
  for (const spacing of RULINGS) {
    const square = (spacing * camera.framing.scale) / pen.unit;
    const alpha = ramp(square, FADE_FROM, FADE_TO);
    if (alpha <= 0 || square > 900) continue;
    ruleUpright(sheet, spacing);
    ruleLevel(sheet, { spacing, from: edge, to: height, lifted: 0 });
    if (gap !== undefined) ruleLevel(sheet, { spacing, from: 0, to: edge, lifted: gap.leftOut });
    pen.paint({ stroke: 'grid', width: 'thin', alpha });
  }
}

function ruleUpright({ pen, camera }: Sheet, spacing: number): void {
  const { width, height } = camera.size;
  for (let i = Math.ceil(camera.sectionX(0) / spacing); i * spacing <= camera.sectionX(width); i += 1) {
    const x = Math.round(camera.sheetX(i * spacing)) + 0.5;
    pen.moveTo(x, 0);
    pen.lineTo(x, height);
  }
}

/** Level lines between two edges of the sheet [px]; a lifted piece shows heights that lie so much higher [m]. */
function ruleLevel(
  { pen, camera }: Sheet,
  piece: { readonly spacing: number; readonly from: number; readonly to: number; readonly lifted: number },
): void {
  const { spacing, from, to, lifted } = piece;
  const top = camera.sectionY(from) + lifted;
  for (let i = Math.ceil((camera.sectionY(to) + lifted) / spacing); i * spacing <= top; i += 1) {
    const y = lifted === 0 ? Math.round(camera.sheetY(i * spacing)) + 0.5 : camera.sheetY(i * spacing - lifted);
    pen.moveTo(0, y);
    pen.lineTo(camera.size.width, y);
  }
}
