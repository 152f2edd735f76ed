import { groundHeight, type Terrain } from '../../engine/ground/index.ts';
import { findLander } from '../../levels/index.ts';
import { SectionCamera } from '../camera/sectionCamera.ts';
import { SvgPen } from '../ink/svgPen.ts';
import { drawHeight, drawSlope } from './dimensions.ts';
import { drawFootprint } from './footprint.ts';
import { drawGround } from './ground.ts';
import { drawLander, type FootPose, type LanderPose } from './lander/drawLander.ts';
import { figureOf, type Figure } from './lander/figure.ts';
import { drawCenterOfMass, drawLineAndBob } from './plumbLine.ts';
import { drawPlume } from './plume.ts';
import { drawProtractor } from './protractor.ts';
import type { Sheet } from './sheet.ts';
import { drawSpeedVector } from './speedVector.ts';
import { drawTrail, type TrailPoint } from './trail.ts';

/** Size of the sheet [drafting units]. Wider than any window: what does not fit is cut off on the left. */
const WIDTH = 2000;
const HEIGHT = 900;
/** Where the lander hangs on it. */
const LANDER_X = 1590;
/** Room for figures to either side of it [drafting units]. */
const FREE = WIDTH - LANDER_X;
const SCALE = 92;
const SLOPE = (-6 * Math.PI) / 180;
const TILT = (-3.5 * Math.PI) / 180;
/** Of the lowest foot above the ground [m]. */
const HEIGHT_ABOVE = 1.05;

/** Class in the drawing, sign, and size of the unit [m]. */
const START_UNITS = [
  ['in-si', 'm', 1],
  ['in-us', 'ft', 0.3048],
] as const;

/** The start page's own sheet: Trivet about to touch down on a slope, with its margin drawn. Written once, at build. */
export function drawStart(): string {
  const trivet = findLander('trivet');
  if (trivet === undefined) throw new Error('The start page shows Trivet, and there is no such lander');
  const figure = figureOf(trivet);
  const terrain = startGround();
  const pen = new SvgPen(1, 'start');
  const camera = new SectionCamera();
  camera.size = {
    width: WIDTH,
    height: HEIGHT,
    covered: { left: LANDER_X - FREE, right: WIDTH - LANDER_X - FREE, top: 0, bottom: 0 },
  };
  camera.framing = { x: 0, y: 3.55, scale: SCALE };
  const sheet: Sheet = { pen, camera, time: 0, still: true };
  const pose = startPose(figure, terrain);
  drawGround(sheet, terrain);
  pen.group('start-trail', () => drawTrail(sheet, path(pose), { every: 5, words: (time) => `${time} s`, clear: 3.2 }));
  drawMargins(pen, sheet, figure, pose, terrain);
  const label = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}">`;
  return `${label}${pen.markup}</svg>`;
}

/** A shelf that dips at the lander and rolls on to both sides. */
function startGround(): Terrain {
  const firstX = -24;
  const spacing = 0.25;
  const heights = Array.from({ length: 128 }, (_, i) => {
    const x = firstX + i * spacing;
    const dip = Math.tan(SLOPE) * 5 * Math.tanh(x / 5);
    return dip + 0.1 * Math.sin(0.9 * x + 1) + 0.05 * Math.sin(2.3 * x) - 0.02;
  });
  return { firstX, spacing, heights, friction: 0.7 };
}

function startPose(figure: Figure, terrain: Terrain): LanderPose {
  const foot = (side: -1 | 1, y: number): FootPose => ({
    x: side * figure.halfStance * Math.cos(TILT) + figure.centerHeight * Math.sin(TILT),
    y: y + side * figure.halfStance * Math.sin(TILT) - figure.centerHeight * Math.cos(TILT),
    inContact: false,
    broken: false,
  });
  const left = foot(-1, 0);
  const right = foot(1, 0);
  const clearance = Math.min(left.y - groundHeight(terrain, left.x), right.y - groundHeight(terrain, right.x));
  const y = HEIGHT_ABOVE - clearance;
  return {
    x: 0,
    y,
    angle: TILT,
    rate: 0,
    feet: [foot(-1, y), foot(1, y)],
    slope: SLOPE,
    fill: 1,
    settled: 0,
  };
}

function path(pose: LanderPose): TrailPoint[] {
  return Array.from({ length: 41 }, (_, i) => {
    const before = (40 - i) / 2;
    return { x: pose.x - 0.62 * before, y: pose.y + 0.5 * before + 0.022 * before * before, seconds: 35 - before };
  });
}

function drawMargins(pen: SvgPen, sheet: Sheet, figure: Figure, pose: LanderPose, terrain: Terrain): void {
  const { camera } = sheet;
  const [left, right] = pose.feet;
  const onGround = (x: number) => ({ x, y: groundHeight(terrain, x) });
  drawFootprint(sheet, onGround(left.x), onGround(right.x));
  pen.group('start-plume', () => drawPlume(sheet, figure, pose, 0.3, HEIGHT_ABOVE));
  drawLander(pen, camera, figure, pose);
  drawProtractor(sheet, { foot: right, center: pose, side: 'right', words: '', alpha: 1 });
  const x = camera.sheetX(pose.x);
  const y = camera.sheetY(pose.y);
  pen.group('sway', () => drawLineAndBob(pen, x, y, camera.sheetY(groundHeight(terrain, pose.x)) - 3));
  drawSpeedVector(sheet, {
    x: pose.x,
    y: pose.y,
    speed: 0.87,
    leadsTo: 0.87,
    limit: 1.54,
    side: 'right',
    clear: 0,
    unitsPerSpeed: 140,
    limitWords: 'tip limit',
    speedWords: 'inside',
    speedShort: 'inside',
    speedBare: 'inside',
  });
  drawCenterOfMass(pen, x, y, pose.angle, 9);
  const groundY = groundHeight(terrain, left.x);
  // written when the page is built: in both units, of which the page shows the viewer's
  for (const [name, sign, size] of START_UNITS)
    pen.group(name, () => {
      const words = `${((left.y - groundY) / size).toFixed(1)} ${sign}`;
      drawHeight(sheet, { foot: left, groundY, side: 'left', words });
    });
  drawSlope(sheet, { from: onGround(right.x), slope: SLOPE, side: 'right', words: 'slope' });
}
