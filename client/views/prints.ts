import { groundHeight, type Profile } from '../../engine/ground/index.ts';
import { ramp, type Sheet } from './sheet.ts';

/** Where a pad has stood on the ground, from one middle of its sole to another where it slid [m]. */
export interface Print {
  readonly from: number;
  readonly to: number;
}

/** Rims thrown up at both ends, and lines of pressed soil below [drafting units]. */
const RIM = 5;
const PRESSED = [5, 9, 12];

/** The prints of pads: soil pressed under where they stood or slid, and a rim thrown up at either end. They stay. */
export function drawPrints(
  sheet: Sheet,
  prints: readonly Print[],
  ground: { readonly terrain: Profile; readonly padRadius: number },
): void {
  const { pen, camera } = sheet;
  const alpha = ramp(camera.framing.scale / pen.unit, 14, 30);
  if (alpha === 0) return;
  for (const { from, to } of prints) {
    const [left, right] = [from - ground.padRadius, to + ground.padRadius];
    PRESSED.forEach((depth, i) => {
      // each line shorter than that above it: what presses spreads and fades
      const inset = ((i + 1) * 0.22 * (right - left)) / 2;
      followGround(sheet, { from: left + inset, to: right - inset, lift: -depth * pen.unit, terrain: ground.terrain });
    });
    pen.paint({ stroke: 'ink', width: 'hair', alpha: 0.7 * alpha });
    for (const [end, out] of [
      [left, -1],
      [right, 1],
    ] as const)
      drawRim(sheet, { x: camera.sheetX(end), y: camera.sheetY(groundHeight(ground.terrain, end)), out, alpha });
  }
}

/** A line along the surface, moved up the sheet [px]. */
function followGround(
  { pen, camera }: Sheet,
  line: { readonly from: number; readonly to: number; readonly lift: number; readonly terrain: Profile },
): void {
  const steps = Math.max(1, Math.ceil((line.to - line.from) / line.terrain.spacing));
  for (let i = 0; i <= steps; i += 1) {
    const x = line.from + ((line.to - line.from) * i) / steps;
    const [px, py] = [camera.sheetX(x), camera.sheetY(groundHeight(line.terrain, x)) - line.lift];
    if (i === 0) pen.moveTo(px, py);
    else pen.lineTo(px, py);
  }
}

function drawRim(
  { pen }: Sheet,
  rim: { readonly x: number; readonly y: number; readonly out: 1 | -1; readonly alpha: number },
): void {
  const { x, y, out, alpha } = rim;
  const size = RIM * pen.unit;
  pen.moveTo(x, y);
  pen.curveTo(x + 0.6 * out * size, y - 1.7 * size, x + 2.6 * out * size, y);
  pen.paint({ fill: 'soil', stroke: 'ink', width: 'thin', alpha });
}
