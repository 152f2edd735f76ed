import { groundHeight, type Profile } from '../../engine/ground/index.ts';
import { ramp, scatter, type Sheet } from './sheet.ts';

/** Distance between hatching lines across the sheet [drafting units]: the coarser set is always there, the finer fades. */
const HATCH_FROM = 7;
const HATCH_TO = 14;

/** The ground as a sheet of paper cut along the surface and laid on the drawing: hatched soil, speckled near the top. */
export function drawGround(sheet: Sheet, terrain: Profile): void {
  const { pen, camera } = sheet;
  const points = surfacePoints(sheet, terrain);
  // the cut sheet stands off the paper by a little: a soft edge above the cut
  for (const [lift, width] of [
    [3.5, 'heavy'],
    [2, 'thick'],
  ] as const) {
    trace(sheet, points, -lift * pen.unit);
    pen.paint({ stroke: 'faint', width, alpha: 0.28 });
  }
  trace(sheet, points, 0);
  pen.lineTo(camera.size.width + 20, camera.size.height + 20);
  pen.lineTo(-20, camera.size.height + 20);
  pen.close();
  pen.within(() => {
    pen.moveTo(-20, -20);
    pen.lineTo(camera.size.width + 20, -20);
    pen.lineTo(camera.size.width + 20, camera.size.height + 20);
    pen.lineTo(-20, camera.size.height + 20);
    pen.close();
    pen.paint({ fill: 'soil' });
    drawHatching(sheet);
    drawSpeckle(sheet, terrain);
  });
  // a light edge under the ink shows the thickness of the cut paper
  trace(sheet, points, 3 * pen.unit);
  pen.paint({ stroke: 'card', width: 'edge', alpha: 0.7 });
  trace(sheet, points, 0);
  pen.paint({ stroke: 'ink', width: 'thick' });
}

/** The surface from edge to edge of the sheet: x, y, x, y, ... [m]. */
export function surfacePoints(sheet: Sheet, terrain: Profile): number[] {
  const { camera } = sheet;
  const left = camera.sectionX(-20);
  const right = camera.sectionX(camera.size.width + 20);
  const step = Math.max(terrain.spacing, 2 / camera.framing.scale);
  const points: number[] = [left, groundHeight(terrain, left)];
  for (let i = Math.ceil((left - terrain.firstX) / step); terrain.firstX + i * step < right; i += 1) {
    const x = terrain.firstX + i * step;
    points.push(x, groundHeight(terrain, x));
  }
  points.push(right, groundHeight(terrain, right));
  return points;
}

/** The surface as a path, moved down the sheet by `shift` [px]. */
export function trace(sheet: Sheet, points: readonly number[], shift: number): void {
  const { pen, camera } = sheet;
  for (let i = 0; i + 1 < points.length; i += 2) {
    const x = camera.sheetX(points[i] ?? 0);
    const y = camera.sheetY(points[i + 1] ?? 0) + shift;
    if (i === 0) pen.moveTo(x, y);
    else pen.lineTo(x, y);
  }
}

/** Section hatching at 45 degrees, fixed to the ground; every other line fades as the picture draws back. */
function drawHatching(sheet: Sheet): void {
  const { pen, camera } = sheet;
  let spacing = 1;
  while ((spacing * camera.framing.scale) / Math.SQRT2 / pen.unit > HATCH_TO) spacing /= 2;
  while ((spacing * camera.framing.scale) / Math.SQRT2 / pen.unit < HATCH_FROM) spacing *= 2;
  const apart = (spacing * camera.framing.scale) / Math.SQRT2 / pen.unit;
  hatchSet(sheet, 2 * spacing, 0, 0.75);
  hatchSet(sheet, 2 * spacing, spacing, 0.75 * ramp(apart, HATCH_FROM, HATCH_FROM + 3));
}

/** Lines rising to the right whose crossing with height 0 is a whole number of spacings, plus the offset [m]. */
function hatchSet(sheet: Sheet, spacing: number, offset: number, alpha: number): void {
  const { pen, camera } = sheet;
  const { width, height } = camera.size;
  const first = camera.sectionX(0) - camera.sectionY(0);
  const last = camera.sectionX(width) - camera.sectionY(height);
  for (let i = Math.floor((first - offset) / spacing); i * spacing + offset < last; i += 1) {
    const crossing = i * spacing + offset;
    const low = camera.sectionY(height);
    const high = camera.sectionY(0);
    pen.moveTo(camera.sheetX(crossing + low), height);
    pen.lineTo(camera.sheetX(crossing + high), 0);
  }
  pen.paint({ stroke: 'hatch', width: 'hair', alpha });
}

/** Dots of loose soil under the surface, denser toward the top. */
function drawSpeckle(sheet: Sheet, terrain: Profile): void {
  const { pen, camera } = sheet;
  const alpha = ramp(camera.framing.scale / pen.unit, 9, 22);
  if (alpha === 0) return;
  const cell = 0.16;
  const right = Math.floor(camera.sectionX(camera.size.width) / cell);
  for (let i = Math.floor(camera.sectionX(0) / cell); i <= right; i += 1) {
    const x = (i + scatter(i, 1)) * cell;
    const depth = 0.05 + 0.75 * scatter(i, 2) * scatter(i, 3);
    const px = camera.sheetX(x);
    const py = camera.sheetY(groundHeight(terrain, x) - depth);
    const size = (0.5 + 0.9 * scatter(i, 4)) * pen.unit;
    pen.moveTo(px + size, py);
    pen.arc(px, py, size, 0, 2 * Math.PI);
  }
  pen.paint({ fill: 'hatch', alpha });
}
