import { Stencil } from '../../ink/stencil.ts';
import type { Pen } from '../../ink/pen.ts';
import type { SectionCamera } from '../../camera/sectionCamera.ts';
import { drawBolster } from './bolster.ts';
import type { Figure } from './figure.ts';
import { drawInnerLegs, drawLeg } from './legs.ts';
import { drawPlain } from './plain.ts';
import { drawSteeple } from './steeple.ts';
import { drawTrivet } from './trivet.ts';

/** How a lander stands in the section now. Angles counter-clockwise [rad], lengths in meters. */
export interface LanderPose {
  /** Center of mass. */
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly rate: number;
  /** Left and right. */
  readonly feet: readonly [FootPose, FootPose];
  /** Of the ground under the feet, for the pads that rest on it. */
  readonly slope: number;
  /** Propellant left as a share of what the tanks held at the start. */
  readonly fill: number;
  /** 0 in flight, when the liquid lies against the thrust; 1 on the ground, when it lies level. */
  readonly settled: number;
}

export interface FootPose {
  readonly x: number;
  readonly y: number;
  readonly inContact: boolean;
  /** The leg has nothing left to give: it is drawn snapped. */
  readonly broken: boolean;
}

/** What the drawings of the single landers get: the body's own stencil and how it is filled. */
export interface BodyDrawing {
  readonly stencil: Stencil;
  readonly figure: Figure;
  readonly fill: number;
  /** Where up is for the liquid, from the body's own z toward +x [rad]. */
  readonly up: number;
}

/** Where the origin of the body (on its footpad plane, below the center of mass) lies. */
export function bodyOrigin(figure: Figure, pose: { x: number; y: number; angle: number }): { x: number; y: number } {
  return {
    x: pose.x + figure.centerHeight * Math.sin(pose.angle),
    y: pose.y - figure.centerHeight * Math.cos(pose.angle),
  };
}

/** From this scale on lines have their full width; smaller drawings get finer lines, down to a share [drafting units/m]. */
const FULL_WIDTH_FROM = 36;
const FINEST = 0.5;

/** The lander as an ink drawing, with its legs as far crushed as they are. */
export function drawLander(pen: Pen, camera: SectionCamera, figure: Figure, pose: LanderPose): void {
  const lightness = Math.max(FINEST, Math.min(1, camera.framing.scale / pen.unit / FULL_WIDTH_FROM));
  pen.lighter(lightness, () => drawWhole(pen, camera, figure, pose));
}

function drawWhole(pen: Pen, camera: SectionCamera, figure: Figure, pose: LanderPose): void {
  const origin = bodyOrigin(figure, pose);
  const stencil = new Stencil(pen, camera.placement(origin.x, origin.y, pose.angle));
  const feet = pose.feet.map((foot) => inBody(origin, pose.angle, foot));
  const [left, right] = feet;
  if (left === undefined || right === undefined) return;
  drawInnerLegs(stencil, figure, left, right);
  // the near half of the right side is cut away, so what is seen there is the far leg, behind the body
  drawLeg(stencil, figure, { side: 1, foot: right, padTilt: padTilt(pose, 1), broken: pose.feet[1].broken });
  drawBody({ stencil, figure, fill: pose.fill, up: pose.angle * pose.settled });
  drawLeg(stencil, figure, { side: -1, foot: left, padTilt: padTilt(pose, 0), broken: pose.feet[0].broken });
}

function drawBody(body: BodyDrawing): void {
  switch (body.figure.id) {
    case 'trivet':
      return drawTrivet(body);
    case 'steeple':
      return drawSteeple(body);
    case 'bolster':
      return drawBolster(body);
    default:
      return drawPlain(body);
  }
}

/** A pad in contact lies on the ground; in flight it keeps square to the body. */
function padTilt(pose: LanderPose, foot: 0 | 1): number {
  return pose.feet[foot].inContact ? pose.slope - pose.angle : 0;
}

function inBody(origin: { x: number; y: number }, angle: number, point: { x: number; y: number }) {
  const dx = point.x - origin.x;
  const dy = point.y - origin.y;
  return { x: dx * Math.cos(angle) + dy * Math.sin(angle), z: -dx * Math.sin(angle) + dy * Math.cos(angle) };
}
