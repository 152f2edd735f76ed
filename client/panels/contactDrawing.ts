import type { JudgedContact } from '../../engine/table/index.ts';
import type { TouchdownState } from '../../engine/world/index.ts';
import { NO_INSETS, SectionCamera } from '../camera/sectionCamera.ts';
import { SvgPen } from '../ink/svgPen.ts';
import { SECTION } from '../text/en.ts';
import { isLevel } from '../text/ground.ts';
import { degrees, speed } from '../text/numbers.ts';
import { drawArrow } from '../views/arrow.ts';
import { drawLander, type FootPose, type LanderPose } from '../views/lander/drawLander.ts';
import { landerExtent } from '../views/lander/extent.ts';
import type { Figure } from '../views/lander/figure.ts';
import { drawCenterOfMass } from '../views/plumbLine.ts';
import type { Sheet } from '../views/sheet.ts';
import { drawCrossed } from '../views/strikeMark.ts';

const WIDTH = 480;

/** Heights of the drawing: lower where the window is, so that the scale below it is in sight [px]. */
export const CONTACT_HEIGHT = { full: 172, low: 124 } as const;

/** Length of 1 m/s, and the longest arrow [px]; a faster lander's is cut there. Words stand above one of more than `beside`, and nowhere for one within the lander. */
const PER_SPEED = 70;
const LONGEST = { across: 150, down: 58, beside: 100, bare: 24 } as const;

/**
 * The contact that decided, drawn as it was: the lander at its attitude on the slope, where it moved as an arrow from its
 * center of mass, its tip limit as a tick on that arrow's line, and what gave way crossed out.
 */
export function drawContact(
  { arrival, limit }: JudgedContact,
  figure: Figure,
  as: {
    /** What gave way, left and right. */
    readonly broken: readonly [boolean, boolean];
    /** Liquid left, as a share of what was aboard at the start [-]. */
    readonly fill: number;
    readonly height: number;
  },
): { markup: string; viewBox: string } {
  const { broken, fill, height } = as;
  const width = WIDTH;
  const pen = new SvgPen(1, 'contact');
  const camera = new SectionCamera();
  camera.size = { width, height, covered: NO_INSETS };
  const pose = poseAt(arrival, figure, fill);
  const room = landerExtent(figure, pose);
  const scale = Math.min((height - 40) / Math.max(room.top, 0.1), 190 / (room.right - room.left));
  camera.framing = { x: (room.left + room.right) / 2, y: (height / 2 - 26) / scale, scale };
  const sheet: Sheet = { pen, camera, time: 0, still: true };
  drawPlane(pen, camera, arrival.slope);
  drawLander(pen, camera, figure, pose);
  pose.feet.forEach((foot, index) => {
    if (broken[index] !== true) return;
    const at = { x: foot.x, y: foot.y + 0.28 * figure.hip.z };
    drawCrossed(sheet, at);
    const outward = index === 0 ? -1 : 1;
    pen.text(SECTION.gaveWay, camera.sheetX(at.x) + outward * 18, camera.sheetY(at.y) + 5, {
      size: 14,
      halo: 'card',
      align: outward < 0 ? 'right' : 'left',
    });
  });
  drawMotion(pen, camera, pose, { arrival, tip: limit?.tip, isDownward: broken.includes(true) });
  drawCenterOfMass(pen, camera.sheetX(pose.x), camera.sheetY(pose.y), pose.angle, 8);
  const { slope, angle } = arrival;
  const words = isLevel(slope) ? SECTION.level : SECTION.slopeAtContact(degrees(Math.abs(slope)));
  // where the ground is higher, there is soil for the words
  const sides = [
    { x: 10, align: 'left' },
    { x: width - 10, align: 'right' },
  ] as const;
  const [soil, air] = slope > 0 ? [sides[1], sides[0]] : sides;
  pen.text(words, soil.x, height - 7, { size: 15, align: soil.align, halo: 'soil' });
  const lean = SECTION.leaning(degrees(Math.abs(angle), 0));
  if (Math.abs(angle) > 0.03) pen.text(lean, air.x, height - 7, { size: 15, align: air.align, halo: 'card' });
  return { markup: pen.markup, viewBox: `0 0 ${width} ${height}` };
}

/** On unused legs, so placed that the lower foot touches a ground through 0, 0. */
function poseAt({ angle, rate, slope }: TouchdownState, figure: Figure, fill: number): LanderPose {
  const { halfStance, centerHeight } = figure;
  const offset = (side: -1 | 1) => ({
    x: side * halfStance * Math.cos(angle) + centerHeight * Math.sin(angle),
    y: side * halfStance * Math.sin(angle) - centerHeight * Math.cos(angle),
  });
  const [left, right] = [offset(-1), offset(1)];
  const ground = (x: number) => Math.tan(slope) * x;
  const x = -(left.x + right.x) / 2;
  const y = -Math.min(left.y - ground(x + left.x), right.y - ground(x + right.x));
  const foot = (at: { x: number; y: number }): FootPose => ({
    x: x + at.x,
    y: y + at.y,
    inContact: false,
    broken: false,
  });
  return { x, y, angle, rate, feet: [foot(left), foot(right)], slope, fill, settled: 0 };
}

function drawPlane(pen: SvgPen, camera: SectionCamera, slope: number): void {
  const { width, height } = camera.size;
  const y = (x: number) => camera.sheetY(Math.tan(slope) * camera.sectionX(x));
  const outline = () => {
    pen.moveTo(0, y(0));
    pen.lineTo(width, y(width));
    pen.lineTo(width, height);
    pen.lineTo(0, height);
    pen.close();
  };
  outline();
  pen.paint({ fill: 'soil' });
  outline();
  pen.within(() => {
    for (let x = -height; x < width; x += 9) {
      pen.moveTo(x, height + 80);
      pen.lineTo(x + height + 80, 0);
    }
    pen.paint({ stroke: 'hatch', width: 'hair', alpha: 0.6 });
  });
  pen.moveTo(0, y(0));
  pen.lineTo(width, y(width));
  pen.paint({ stroke: 'ink', width: 'thick' });
  pen.moveTo(width - 130, y(width - 130));
  pen.lineTo(width - 20, y(width - 130));
  pen.paint({ stroke: 'pencil', width: 'thin', dash: 'dashed' });
}

/** Ground that rises by more than this reaches into the words beside the lander [rad]. */
const STEEP = 0.08;

function drawMotion(
  pen: SvgPen,
  camera: SectionCamera,
  pose: LanderPose,
  motion: { readonly arrival: TouchdownState; readonly tip: number | undefined; readonly isDownward: boolean },
): void {
  const { arrival, tip, isDownward } = motion;
  const x = camera.sheetX(pose.x);
  const y = camera.sheetY(pose.y);
  const toward = arrival.vx < 0 ? -1 : 1;
  const across = Math.abs(arrival.vx);
  // arrow and tick keep their proportion where the longer of them is cut
  const perSpeed = Math.min(PER_SPEED, LONGEST.across / Math.max(across, Math.min(tip ?? 0, 3 * across + 0.5), 0.01));
  const down = Math.min(
    LONGEST.down,
    Math.max(Math.max(0, arrival.descentRate) * perSpeed, isDownward ? LONGEST.down : 0),
  );
  const tip0 = x + toward * across * perSpeed;
  const words = SECTION.down(speed(Math.max(0, arrival.descentRate), 1));
  const align = toward > 0 ? 'right' : 'left';
  const away = x - toward * 104;
  if (isDownward) {
    // what broke it: the fall, drawn as strong as it was
    drawArrow(pen, { fromX: away, fromY: y - 44, toX: away, toY: y - 44 + down, tone: 'ink', shaft: 'heavy', head: 8 });
    pen.text(words, away - toward * 14, y - 14, { size: 17, bold: true, halo: 'card', align });
  } else {
    drawArrow(pen, { fromX: x, fromY: y, toX: x, toY: y + down, tone: 'pencil', shaft: 'edge', head: 5 });
    // where the ground stands higher behind it, the words go above it
    const isUphill = toward * arrival.slope < -STEEP;
    pen.text(words, away, isUphill ? y - 40 : y + 26, { size: 14, tone: 'pencil', halo: 'card', align });
  }
  drawArrow(pen, { fromX: x, fromY: y, toX: tip0, toY: y, tone: 'card', shaft: 'heavy', head: 9 });
  drawArrow(pen, { fromX: x, fromY: y, toX: tip0, toY: y, tone: 'ink', shaft: 'thick', head: 6 });
  // no scale stands below that says it
  if ((isDownward || tip === 0) && Math.abs(tip0 - x) > LONGEST.bare) {
    const isLong = Math.abs(tip0 - x) > LONGEST.beside;
    const align = toward > 0 === isLong ? 'right' : 'left';
    const at = { x: isLong ? tip0 : tip0 + toward * 8, y: isLong ? y - 12 : y + 5 };
    pen.text(SECTION.across(speed(across)), at.x, at.y, { size: 14, halo: 'card', align });
  }
  const tickX = x + toward * (tip ?? 0) * perSpeed;
  if (tip === undefined || tip === 0 || isDownward || Math.abs(tickX - x) > 1.2 * LONGEST.across) return;
  for (const mark of [
    { stroke: 'card', width: 'heavy' },
    { stroke: 'blue', width: 'thick' },
  ] as const) {
    pen.moveTo(tickX, y - 16);
    pen.lineTo(tickX, y + 16);
    pen.paint(mark);
  }
  const near = tickX + toward * 60 > 60 && tickX + toward * 60 < WIDTH - 60;
  const side = near ? align : toward > 0 ? 'left' : 'right';
  pen.text(SECTION.tipsHere, tickX, y - 22, {
    size: 14,
    tone: 'blue',
    halo: 'card',
    align: side === 'right' ? 'left' : 'right',
  });
}
