import { assert } from '../assert.ts';
import type { Lander } from '../lander/lander.ts';
import type { Vec2 } from '../math/vec2.ts';
import { supportPolygon } from '../statics/supportPolygon.ts';
import { TICK_DT } from './constants.ts';
import type { FacingState } from './descent.ts';

/**
 * Turning about the long axis: a lander can bring another edge of its footprint to the right, one like the edge that lies there at the start. How far it has turned is counted
 * in whole such edges, which for even legs are whole legs; counter-clockwise seen from above is positive.
 */

/** How fast it turns [rad/s]: 10 degrees a second. Ours: slower than the attitude hold turns in the section, so that a quarter turn can be followed by eye. */
export const FACING_RATE = Math.PI / 18;

/** Edges are alike whose distances from the center of mass differ by no more than this share of the least [-]. Ours; what it costs the limits is in engine/table/README.md. */
const ALIKE = 0.05;

/** One edge of the footprint that may lie to the right. */
interface Facing {
  /** Of the outward normal of that edge, from the lander's +x toward its +y [rad]. */
  readonly azimuth: number;
  /** From the foot point of the center of mass to that edge [m]. */
  readonly halfStance: number;
  /** How far the lander has turned from its start when that edge lies to the right, 0 to below 2 pi [rad]. */
  readonly yaw: number;
}

/** That of the start first, which is the nearest to the foot point of the center of mass; then as they come to the right while the lander turns counter-clockwise. */
export type Facings = readonly [Facing, ...Facing[]];

const WHOLE_TURN = 2 * Math.PI;

/** The edges of a footprint that may lie to the right; `foot` is straight below the center of mass. */
export function facingsOf({ legs }: Lander, foot: Vec2): Facings {
  const support = supportPolygon(
    legs.map(({ footpad }): Vec2 => [footpad[0], footpad[1]]),
    foot,
  );
  assert(support.kind === 'polygon', 'the footpads of a lander span an area');
  const nearest = support.edges.reduce((least, edge) => (edge.distance < least.distance ? edge : least));
  assert(nearest.distance > 0, 'the center of mass of a lander stands inside its footprint');
  const facingOf = ({ normal, distance }: typeof nearest): Facing => ({
    azimuth: normal,
    halfStance: distance,
    // what was ahead comes to the right by turning back by its azimuth
    yaw: normal > nearest.normal ? nearest.normal - normal + WHOLE_TURN : nearest.normal - normal,
  });
  const others = support.edges.filter((edge) => edge !== nearest && edge.distance <= nearest.distance * (1 + ALIKE));
  return [facingOf(nearest), ...others.map(facingOf).toSorted((a, b) => a.yaw - b.yaw)];
}

/** The edge that lies to the right after so many have passed there. */
export function facingAt(facings: Facings, steps: number): Facing {
  return facings[indexOf(facings, steps)] ?? facings[0];
}

/** How far a lander has turned, of which `steps` says what counts and `ticks` how far it has come. */
export interface Heading {
  /** Whole edges that have come to the right: the section is laid out by the last of them. */
  readonly steps: number;
  /** Of turning counter-clockwise, less those of turning back [tick]. */
  readonly ticks: number;
}

/** A lander that came to stand like this without turning. */
export function headingAt(facings: Facings, steps: number): Heading {
  return { steps, ticks: ticksTo(facings, steps) };
}

/** Turned on for one tick toward an edge, by as many steps from the start as ordered; where that edge lies to the right, nothing changes. */
export function turnedOn(facings: Facings, heading: Heading, ordered: number): Heading {
  const goal = ticksTo(facings, ordered);
  if (heading.ticks === goal) return heading;
  const way = goal > heading.ticks ? 1 : -1;
  const ticks = heading.ticks + way;
  // on its way it passes one edge at the most in a tick
  const passed = [heading.steps + way, heading.steps].find((steps) => ticksTo(facings, steps) === ticks);
  return { steps: passed ?? heading.steps, ticks };
}

/** How long a turn from where it is to an edge takes [tick]. */
export function ticksOfTurn(facings: Facings, { ticks }: Heading, ordered: number): number {
  return Math.abs(ticksTo(facings, ordered) - ticks);
}

/** As it is read. */
export function readHeading(facings: Facings, heading: Heading): FacingState {
  const { steps } = heading;
  const yaw = yawOf(heading);
  return { steps, yaw, rest: yaw - yawAt(facings, steps) };
}

function yawOf({ ticks }: Heading): number {
  return ticks * FACING_RATE * TICK_DT;
}

/** How far a lander has turned that stands so many edges from how it started [rad]. */
export function yawAt(facings: Facings, steps: number): number {
  return yawOf(headingAt(facings, steps));
}

function ticksTo(facings: Facings, steps: number): number {
  const index = indexOf(facings, steps);
  const yaw = (facings[index]?.yaw ?? 0) + ((steps - index) / facings.length) * WHOLE_TURN;
  return Math.round(yaw / (FACING_RATE * TICK_DT));
}

function indexOf({ length }: readonly Facing[], steps: number): number {
  return ((steps % length) + length) % length;
}
