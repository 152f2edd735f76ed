import { feetOf } from '../../engine/estimate/index.ts';
import { turned } from '../../engine/table/index.ts';
import type { DescentState } from '../../engine/world/index.ts';

/** A state as it is drawn while the lander turns about its long axis: its feet are where a turn in progress has brought them, though in play an edge counts only once it lies to the right. */
export function midTurn(state: DescentState): DescentState {
  const { facing, x, y, angle } = state;
  if (facing === undefined || facing.rest === 0 || state.touchdown !== undefined) return state;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const feet = feetOf(state);
  const legs = state.legs.map((leg, index) => {
    const foot = feet[index];
    if (foot === undefined) return leg;
    const { across, along, aside } = turned(foot, facing.rest);
    return { ...leg, footX: x + across * c - along * s, footY: y + across * s + along * c, footZ: aside };
  });
  return { ...state, legs };
}
