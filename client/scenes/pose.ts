import { groundHeight, type DescentState, type LegState, type Terrain } from '../../engine/world/index.ts';
import type { Spot } from '../ink/stencil.ts';
import type { FootPose, LanderPose } from '../views/lander/drawLander.ts';
import type { Figure } from '../views/lander/figure.ts';

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
export function onGround(pose: LanderPose, terrain: Terrain): LanderPose {
  const [left, right] = pose.feet.map((foot) => ({ ...foot, y: Math.max(foot.y, groundHeight(terrain, foot.x)) }));
  return left === undefined || right === undefined ? pose : { ...pose, feet: [left, right] };
}

export function footSpots(pose: LanderPose): readonly [Spot, Spot] {
  return [pose.feet[0], pose.feet[1]];
}

/** Height of the centre of mass over the footpad plane as the legs of a state show it; undefined once they are crushed. */
export function shownCenterHeight(state: DescentState): number | undefined {
  if (state.legs.length === 0 || state.legs.some((leg) => leg.stroke > 0)) return undefined;
  const depths = state.legs.map(
    (leg) => (leg.footX - state.x) * Math.sin(state.angle) - (leg.footY - state.y) * Math.cos(state.angle),
  );
  return Math.max(...depths);
}

/** The leg that stands farthest to one side; legs that coincide in the drawing are drawn once. */
export function outerLeg({ legs }: DescentState, side: 'left' | 'right'): LegState | undefined {
  const sign = side === 'right' ? 1 : -1;
  return legs.reduce<LegState | undefined>(
    (outer, leg) => (outer === undefined || sign * (leg.footX - outer.footX) > 0 ? leg : outer),
    undefined,
  );
}

function footPose(state: DescentState, figure: Figure, index: 0 | 1): FootPose {
  const leg = outerLeg(state, index === 0 ? 'left' : 'right');
  if (leg !== undefined) return { x: leg.footX, y: leg.footY, inContact: leg.inContact };
  const side = index === 0 ? -1 : 1;
  const { halfStance, centerHeight } = figure;
  return {
    x: state.x + side * halfStance * Math.cos(state.angle) + centerHeight * Math.sin(state.angle),
    y: state.y + side * halfStance * Math.sin(state.angle) - centerHeight * Math.cos(state.angle),
    inContact: false,
  };
}
