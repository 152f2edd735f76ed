import { feetOf, type FootOffset } from '../estimate/index.ts';
import { cos, sin } from '../math/trig.ts';
import type { DescentSetup, DescentState, FacingState } from '../world/descent.ts';
import { facingAt, headingAt, readHeading, turnedOn, type Facings, type Heading } from '../world/facings.ts';
import { layOutSection } from '../world/layOutSection.ts';

/**
 * How far the crew knows the lander to have turned about its long axis: as it was ordered, by the clock. Nothing measures it, and nothing of the model makes it doubtful.
 */
export interface BelievedFacing {
  readonly setup: Pick<DescentSetup, 'lander' | 'propellant'>;
  /** Worked out with the first order. */
  facings: Facings | undefined;
  /** At the start. */
  readonly feet: readonly FootOffset[];
  /** Undefined while nobody has ordered a turn. */
  heading: Heading | undefined;
}

export function createBelievedFacing(setup: DescentSetup, first: DescentState): BelievedFacing {
  return { setup, facings: undefined, feet: feetOf(first), heading: undefined };
}

/** One tick of turning toward the edge that is ordered. Returns where the feet are from now on when another edge has come to the right. */
export function followOrder(facing: BelievedFacing, ordered: number): readonly FootOffset[] | undefined {
  const { setup, heading, feet } = facing;
  if (heading === undefined && ordered === 0) return undefined;
  const facings = (facing.facings ??= layOutSection(setup.lander, setup.propellant).facings);
  const before = heading ?? headingAt(facings, 0);
  facing.heading = turnedOn(facings, before, ordered);
  const { steps } = facing.heading;
  return steps === before.steps ? undefined : feet.map((foot) => turned(foot, facingAt(facings, steps).yaw));
}

export function viewFacing({ facings, heading }: BelievedFacing): FacingState | undefined {
  return facings && heading && readHeading(facings, heading);
}

/** Counter-clockwise seen from above: what was toward the viewer comes to the right. */
export function turned({ across, along, aside }: FootOffset, yaw: number): FootOffset {
  const [c, s] = [cos(yaw), sin(yaw)];
  return { across: c * across + s * aside, along, aside: c * aside - s * across };
}
