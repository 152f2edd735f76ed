import { groundHeight, type Profile } from '../../engine/ground/index.ts';
import { type DescentState, type LegState } from '../../engine/world/index.ts';
import type { Spot } from '../ink/stencil.ts';
import type { FootPose, LanderPose } from '../views/lander/drawLander.ts';
import type { Figure } from '../views/lander/figure.ts';

/** Share of its stroke from which a leg has nothing left to give [-]. */
const USED_UP = 1 - 1e-9;

/** How the lander of a state is to be drawn. `fill`: liquid left, as a share of what was aboard at the start. */
export function poseOf(state: DescentState, figure: Figure, fill = 1): LanderPose {
  return {
    x: state.x,
    y: state.y,
    angle: state.angle,
    rate: state.rate,
    feet: [footPose(state, figure, 0), footPose(state, figure, 1)],
    slope: state.slope,
    fill,
    settled: state.touchdown === undefined ? 0 : 1,
  };
}

/** A leg that gave way carries nothing, and its foot would be drawn in the ground: it lies on it instead. */
export function onGround(pose: LanderPose, terrain: Profile): LanderPose {
  const [left, right] = pose.feet.map((foot) => ({ ...foot, y: Math.max(foot.y, groundHeight(terrain, foot.x)) }));
  return left === undefined || right === undefined ? pose : { ...pose, feet: [left, right] };
}

export function footSpots(pose: LanderPose): readonly [Spot, Spot] {
  return [pose.feet[0], pose.feet[1]];
}

/** Height of the center of mass over the footpad plane as the legs of a state show it; undefined once they are crushed. */
export function shownCenterHeight(state: DescentState): number | undefined {
  if (state.legs.length === 0 || state.legs.some((leg) => leg.stroke > 0)) return undefined;
  const depths = state.legs.map(
    (leg) => (leg.footX - state.x) * Math.sin(state.angle) - (leg.footY - state.y) * Math.cos(state.angle),
  );
  return Math.max(...depths);
}

/** The leg that stands farthest to one side of the body; legs that coincide in the drawing are drawn once. */
export function outerLeg(state: DescentState, side: 'left' | 'right'): LegState | undefined {
  const sign = side === 'right' ? 1 : -1;
  return state.legs.reduce<LegState | undefined>(
    (outer, leg) => (outer === undefined || sign * (across(state, leg) - across(state, outer)) > 0 ? leg : outer),
    undefined,
  );
}

/** Whether a leg on that side of the body gave way. */
export function isBroken(state: DescentState, side: 'left' | 'right'): boolean {
  const sign = side === 'right' ? 1 : -1;
  return state.legs.some((leg) => gaveWay(leg) && sign * across(state, leg) > 0);
}

/** How far to the right of its middle the body has a foot, however it is turned [m]. */
function across({ x, y, angle }: DescentState, leg: LegState): number {
  return (leg.footX - x) * Math.cos(angle) + (leg.footY - y) * Math.sin(angle);
}

/** Whether a leg has nothing left to give. */
export function gaveWay({ strokeUsed }: Pick<LegState, 'strokeUsed'>): boolean {
  return strokeUsed >= USED_UP;
}

function footPose(state: DescentState, figure: Figure, index: 0 | 1): FootPose {
  const where = index === 0 ? 'left' : 'right';
  const leg = outerLeg(state, where);
  if (leg !== undefined)
    return { x: leg.footX, y: leg.footY, inContact: leg.inContact, broken: isBroken(state, where) };
  const side = index === 0 ? -1 : 1;
  const { halfStance, centerHeight } = figure;
  return {
    x: state.x + side * halfStance * Math.cos(state.angle) + centerHeight * Math.sin(state.angle),
    y: state.y + side * halfStance * Math.sin(state.angle) - centerHeight * Math.cos(state.angle),
    inContact: false,
    broken: false,
  };
}
