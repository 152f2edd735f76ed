/** What an envelope is asked, and the classes of its answer. */
import { assert } from '../assert.ts';
import type { Lander } from '../lander/lander.ts';
import type { ContactState, TouchdownConditions, TouchdownLimit } from '../touchdown/touchdownCase.ts';

/** Equal steps from one value to another, both included. */
interface GridAxis {
  readonly from: number;
  readonly to: number;
  /** At least 2. */
  readonly count: number;
}

/** How the lander is turned, and which way it travels. */
interface EnvelopeDirection {
  /** Turn of the lander about the vertical [rad]. */
  readonly yaw: number;
  /** World azimuth along which positive horizontal speed points; default down the fall line [rad]. */
  readonly travelAzimuth?: number;
}

export interface EnvelopeQuestion {
  readonly lander: Lander;
  /** Everything but the two speeds, yaw and travel, which the envelope sets. */
  readonly conditions: Omit<TouchdownConditions, 'state'> & {
    readonly state?: Omit<ContactState, 'horizontalSpeed' | 'descentRate' | 'yaw' | 'travelAzimuth'>;
  };
  /** Along the direction of travel, signed: + downhill where that is the fall line [m/s]. */
  readonly horizontalSpeed: GridAxis;
  /** Positive downward [m/s]. */
  readonly descentRate: GridAxis;
  /** The envelope is the worst of them: a touchdown is inside when it is inside for each. At least one. */
  readonly directions: readonly EnvelopeDirection[];
  /**
   * Every how many steps of the grid the first pass looks; a whole number from 1. Whatever lies between and is thinner than
   * that in both directions may be missed, unless `every` node is asked for. Default 4.
   */
  readonly coarse?: number;
  /** Simulate every node of the grid, so that nothing is inferred. Default false. */
  readonly every?: boolean;
  /** Halvings of each step of the grid that the boundary crosses; default 4. */
  readonly halvings?: number;
}

/**
 * What ends a touchdown first in rank, worst first, as a class of the envelope: a limit of the simulation, or the simulation's
 * own time limit. 'inside' hits none.
 */
export const ENVELOPE_CLASSES = [
  'inside',
  'clearance',
  'load',
  'crush exhausted',
  'timed out',
  'tip uphill',
  'tip downhill',
] as const satisfies readonly (TouchdownLimit | 'inside' | 'timed out')[];
export type EnvelopeClass = (typeof ENVELOPE_CLASSES)[number];

/** Directions at equal steps of yaw, travel along the fall line. */
export function yawDirections(count: number): readonly EnvelopeDirection[] {
  assert(Number.isInteger(count) && count >= 1, `a whole number of directions, not ${count}`);
  return Array.from({ length: count }, (_, k) => ({ yaw: (2 * Math.PI * k) / count }));
}

/** Value of a node along an axis. */
export function axisValue(axis: GridAxis, index: number): number {
  return axis.from + ((axis.to - axis.from) * index) / (axis.count - 1);
}

/** Nodes are numbered row by row: horizontal speed runs fastest. */
export function nodeSpeeds(
  { horizontalSpeed, descentRate }: EnvelopeQuestion,
  node: number,
): { readonly horizontalSpeed: number; readonly descentRate: number } {
  const column = node % horizontalSpeed.count;
  const row = (node - column) / horizontalSpeed.count;
  return { horizontalSpeed: axisValue(horizontalSpeed, column), descentRate: axisValue(descentRate, row) };
}

/** Most nodes of a grid. */
const MOST_NODES = 1_000_000;

export function checkQuestion(question: EnvelopeQuestion): void {
  const { horizontalSpeed, descentRate, directions, coarse = 1, halvings = 0 } = question;
  for (const { from, to, count } of [horizontalSpeed, descentRate]) {
    assert(Number.isInteger(count) && count >= 2, `an axis has at least 2 nodes, not ${count}`);
    assert(from < to && to - from < Infinity, `an axis runs from a lower to a higher value, not from ${from} to ${to}`);
  }
  assert(descentRate.from >= 0, `descent rates are 0 or more, not ${descentRate.from}`);
  assert(horizontalSpeed.count * descentRate.count <= MOST_NODES, `a grid has at most ${MOST_NODES} nodes`);
  assert(directions.length >= 1, 'an envelope has at least one direction');
  assert(Number.isInteger(coarse) && coarse >= 1, `the first pass looks every whole number of steps, not ${coarse}`);
  assert(Number.isInteger(halvings) && halvings >= 0 && halvings <= 40, `0 to 40 halvings, not ${halvings}`);
}
