import { HASTY, pilot, STEADY } from '../../engine/descent/index.ts';
import {
  createDescent,
  hashDescent,
  readDescent,
  stepDescent,
  type DescentState,
  type Outcome,
} from '../../engine/world/index.ts';
import { firstLanding } from '../../levels/index.ts';

/**
 * Golden runs: the first landing flown by a scripted pilot, for every platform to compute to the bit.
 *
 * THE HASHES ARE OUR OWN OUTPUT. They check nothing but that nothing changed: they are changed by hand, in a commit of their
 * own that says why, together with PHYSICS_REVISION and a line in engine/CHANGELOG.md. The other values are read back so
 * that equal hashes cannot be equal for nothing.
 */
interface GoldenRun {
  readonly name: string;
  readonly seed: number;
  readonly manner: 'steady' | 'hasty';
  /** Turned by so many edges of the footprint on the way. */
  readonly facing?: number;
  readonly outcome: Outcome;
  readonly ticks: number;
  /** After the last tick. */
  readonly hash: string;
}

export const GOLDEN_RUNS: readonly GoldenRun[] = [
  {
    name: 'a landing that stays upright',
    seed: 1,
    manner: 'steady',
    outcome: 'upright',
    ticks: 1983,
    hash: 'b9540c6527d26400',
  },
  {
    name: 'a landing that tips',
    seed: 4,
    manner: 'hasty',
    outcome: 'tipped downhill',
    ticks: 1412,
    hash: '1df59f331f2b0fac',
  },
  {
    name: 'a landing that turns about its long axis',
    seed: 1,
    manner: 'steady',
    facing: -1,
    outcome: 'upright',
    ticks: 1974,
    hash: '86e12c12bf22177e',
  },
];

export interface FlownRun {
  readonly name: string;
  readonly outcome: Outcome | undefined;
  readonly ticks: number;
  readonly hash: string;
  readonly state: DescentState;
}

/** Flies a golden run from its start. */
export function flyGolden({ name, seed, manner, facing }: GoldenRun): FlownRun {
  const { setup } = firstLanding(seed);
  const craft = { engine: setup.lander.engine, gravity: setup.gravity };
  const descent = createDescent(setup);
  while (descent.outcome === undefined)
    stepDescent(descent, pilot(manner === 'steady' ? STEADY : HASTY, craft, readDescent(descent)), undefined, facing);
  const state = readDescent(descent);
  return { name, outcome: state.outcome, ticks: state.tick, hash: hashDescent(descent), state };
}
