import { ramp, type Sheet } from './sheet.ts';

/** Squares of the paper are metric: 0.5, 1, 5, ... m; the next finer ruling fades in as the picture closes in. */
const RULINGS = [0.5, 1, 5, 10, 50, 100];
/** Square sizes between which a ruling fades in [drafting units]. */
const FADE_FROM = 13;
const FADE_TO = 40;

/** The ruled paper under everything. It lies still on the section, so its squares also show how the lander moves. */
export function drawPaper(sheet: Sheet): void {
  const { pen, camera } = sheet;
  const { width, height } = camera.size;
  pen.moveTo(0, 0);
  pen.lineTo(width, 0);
  pen.lineTo(width, height);
  pen.lineTo(0, height);
  pen.close();
  pen.paint({ fill: 'paper' });
  for (const spacing of RULINGS) {
    const square = (spacing * camera.framing.scale) / pen.unit;
    const alpha = ramp(square, FADE_FROM, FADE_TO);
    if (alpha <= 0 || square > 900) continue;
    ruleUpright(sheet, spacing);
    ruleLevel(sheet, spacing);
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

function ruleLevel({ pen, camera }: Sheet, spacing: number): void {
  const { width, height } = camera.size;
  for (let i = Math.ceil(camera.sectionY(height) / spacing); i * spacing <= camera.sectionY(0); i += 1) {
    const y = Math.round(camera.sheetY(i * spacing)) + 0.5;
    pen.moveTo(0, y);
    pen.lineTo(width, y);
  }
}
