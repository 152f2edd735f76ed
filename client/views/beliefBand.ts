import type { Profile } from '../../engine/ground/index.ts';
import { surfacePoints, trace } from './ground.ts';
import type { Sheet } from './sheet.ts';

/** Standard deviations to either side that hold 95 % of what may be (1.96, rounded up). */
export const BAND = 2;

/** Distance between hatching lines [drafting units]. */
const APART = 9;

/** Where something might be, with its middle and how far it reaches each way [m]. */
interface Band {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** Where the lander might be: a lightly hatched box, behind it. */
export function drawBeliefBand(sheet: Sheet, band: Band): void {
  const { pen, camera } = sheet;
  const box = () => {
    pen.moveTo(camera.sheetX(band.left), camera.sheetY(band.top));
    pen.lineTo(camera.sheetX(band.right), camera.sheetY(band.top));
    pen.lineTo(camera.sheetX(band.right), camera.sheetY(band.bottom));
    pen.lineTo(camera.sheetX(band.left), camera.sheetY(band.bottom));
    pen.close();
  };
  box();
  pen.within(() => hatchFalling(sheet));
  box();
  pen.paint({ stroke: 'pencil', width: 'hair', dash: 'dotted' });
}

/** Where the ground might be: a lightly hatched strip along the map's profile, `reach` above and below it [m]. */
export function drawProfileBand(sheet: Sheet, profile: Profile, reach: number): void {
  const { pen, camera } = sheet;
  const points = surfacePoints(sheet, profile);
  const off = reach * camera.framing.scale;
  trace(sheet, points, -off);
  for (let i = points.length - 2; i >= 0; i -= 2)
    pen.lineTo(camera.sheetX(points[i] ?? 0), camera.sheetY(points[i + 1] ?? 0) + off);
  pen.close();
  pen.within(() => hatchFalling(sheet));
  for (const shift of [-off, off]) {
    trace(sheet, points, shift);
    pen.paint({ stroke: 'pencil', width: 'hair', dash: 'dotted' });
  }
}

/** The map's profile alone, as it lies over the true ground at rest. */
export function drawMapLine(sheet: Sheet, profile: Profile): void {
  trace(sheet, surfacePoints(sheet, profile), 0);
  sheet.pen.paint({ stroke: 'pencil', width: 'edge', dash: 'dashed' });
}

/** Lines falling to the right, against those of the soil, fixed to the section; across the whole sheet. */
function hatchFalling({ pen, camera }: Sheet): void {
  const { width, height } = camera.size;
  const step = APART * Math.SQRT2 * pen.unit;
  const shift = (((camera.sheetX(0) - camera.sheetY(0)) % step) + step) % step;
  for (let from = shift - height - step; from < width; from += step) {
    pen.moveTo(from, 0);
    pen.lineTo(from + height, height);
  }
  pen.paint({ stroke: 'pencil', width: 'hair', alpha: 0.42 });
}
