import { groundHeight, type Terrain } from '../../engine/ground/index.ts';
import type { TrackPoint } from '../../engine/replay/index.ts';
import { NO_INSETS, SectionCamera } from '../camera/sectionCamera.ts';
import { PencilPen } from '../ink/pencilPen.ts';
import type { Pen } from '../ink/pen.ts';
import { SvgPen } from '../ink/svgPen.ts';
import { onGround, poseOf } from '../scenes/pose.ts';
import { drawGround } from '../views/ground.ts';
import { drawLander } from '../views/lander/drawLander.ts';
import type { Figure } from '../views/lander/figure.ts';
import { drawCenterOfMass } from '../views/plumbLine.ts';
import type { Sheet } from '../views/sheet.ts';

interface Drawn {
  readonly markup: string;
  readonly viewBox: string;
}

interface Place {
  readonly x: number;
  readonly y: number;
}

/** Nearer than this the picture does not come [px/m], and so much of the sheet is kept free above and below [px]. */
const NEAREST = 26;
const FREE = 46;
/** A lander smaller than this is ringed, so that it is found [px]. */
const SMALL = 14;

/** One moment of a descent in section: the path flown so far, the lander in ink, and in pencil where the crew took it to be. */
export function drawMoment(
  points: readonly TrackPoint[],
  index: number,
  { figure, terrain, width, height }: { figure: Figure; terrain: Terrain; width: number; height: number },
): Drawn {
  const point = points[index];
  const pen = new SvgPen(1, 'moment');
  const viewBox = `0 0 ${width} ${height}`;
  if (point === undefined) return { markup: '', viewBox };
  const { truth, believed } = point;
  // where the crew took it to be under the ground, that is in the picture too
  const low = Math.min(groundHeight(terrain, truth.x), (believed?.y ?? Infinity) - figure.centerHeight);
  const top = Math.max(truth.y, believed?.y ?? truth.y) + figure.centerHeight;
  const scale = Math.min(NEAREST, (height - 2 * FREE) / Math.max(1, top - low));
  const camera = new SectionCamera();
  camera.size = { width, height, covered: NO_INSETS };
  // the ground stays near the foot of the sheet
  camera.framing = { x: truth.x, y: low + (height / 2 - FREE) / scale, scale };
  const sheet: Sheet = { pen, camera, time: 0, still: true };
  drawGround(sheet, terrain);
  const past = points.slice(0, index + 1);
  drawPath(
    pen,
    camera,
    past.flatMap((one) => (one.believed === undefined ? [] : [one.believed])),
    'believed',
  );
  drawPath(
    pen,
    camera,
    past.map((one) => one.truth),
    'true',
  );
  const pose = onGround(poseOf(truth, figure), terrain);
  const isSmall = scale * figure.halfStance < SMALL;
  if (believed !== undefined) {
    const bare = new PencilPen(pen, { bare: true });
    const held = { ...truth, ...believed, legs: [] };
    if (isSmall) ring(pen, camera, believed, 'believed');
    else drawLander(bare, camera, figure, poseOf(held, figure));
  }
  if (isSmall) ring(pen, camera, truth, 'true');
  drawLander(pen, camera, figure, pose);
  drawCenterOfMass(pen, camera.sheetX(truth.x), camera.sheetY(truth.y), truth.angle, isSmall ? 5 : 8);
  return { markup: pen.markup, viewBox };
}

/** The paths of two descents over one ground, to one scale: the first as a full line, the other dashed. */
export function drawPaths(
  [first, second]: readonly [readonly Place[], readonly Place[]],
  names: readonly [string, string],
  { terrain, width, height }: { terrain: Terrain; width: number; height: number },
): Drawn {
  const pen = new SvgPen(1, 'paths');
  const places = [...first, ...second];
  const [xs, ys] = [places.map(({ x }) => x), places.map(({ y }) => y)];
  const [left, right, top] = [Math.min(...xs), Math.max(...xs), Math.max(...ys)];
  const ground = groundHeight(terrain, (left + right) / 2);
  const scale = Math.min((width - 160) / Math.max(1, right - left), (height - 2 * FREE) / Math.max(1, top - ground));
  const camera = new SectionCamera();
  camera.size = { width, height, covered: NO_INSETS };
  camera.framing = { x: (left + right) / 2, y: ground + (height / 2 - FREE) / scale, scale };
  drawGround({ pen, camera, time: 0, still: true }, terrain);
  drawPath(pen, camera, second, 'believed');
  drawPath(pen, camera, first, 'true');
  [first, second].forEach((path, i) => nameStart(pen, camera, path, { words: names[i] ?? '', row: i }));
  return { markup: pen.markup, viewBox: `0 0 ${width} ${height}` };
}

function drawPath(pen: Pen, camera: SectionCamera, path: readonly Place[], as: 'true' | 'believed'): void {
  path.forEach(({ x, y }, i) => {
    if (i === 0) pen.moveTo(camera.sheetX(x), camera.sheetY(y));
    else pen.lineTo(camera.sheetX(x), camera.sheetY(y));
  });
  if (as === 'true') pen.paint({ stroke: 'ink', width: 'edge' });
  else pen.paint({ stroke: 'pencil', width: 'edge', dash: 'dashed' });
}

function ring(pen: Pen, camera: SectionCamera, { x, y }: Place, as: 'true' | 'believed'): void {
  pen.arc(camera.sheetX(x), camera.sheetY(y), SMALL, 0, 2 * Math.PI);
  pen.paint(as === 'true' ? { stroke: 'ink', width: 'thin' } : { stroke: 'pencil', width: 'thin', dash: 'fine' });
}

/** Beside the start of the path, one name under the other where both start alike. */
function nameStart(
  pen: Pen,
  camera: SectionCamera,
  path: readonly Place[],
  { words, row }: { readonly words: string; readonly row: number },
): void {
  const [start] = path;
  if (start === undefined) return;
  const x = camera.sheetX(start.x);
  const isRight = x > camera.size.width / 2;
  pen.text(words, x + (isRight ? -10 : 10), camera.sheetY(start.y) - 8 + 18 * row, {
    size: 15,
    halo: 'paper',
    align: isRight ? 'right' : 'left',
    tone: row === 0 ? 'ink' : 'pencil',
  });
}
