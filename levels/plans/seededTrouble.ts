import type { Fault } from '../../engine/faults/index.ts';
import { nextUniform, seedRandom } from '../../engine/math/index.ts';
import { TICK_RATE } from '../../engine/world/index.ts';
import type { Start } from './findStart.ts';

/** Draws of the trouble, apart from those of the ground. */
const STREAM = 77;

/** When it begins: between these shares of the time that the start would need at its own rate of descent, so that there is time to see it and to act. */
const EARLIEST = 0.3;
const LATEST = 0.6;

/** Radar biases that matter at contact and that nobody sees in one reading [m/s]. */
const BIAS = { least: 0.8, most: 1.4 };
/** In which such a bias grows [s]. */
const RISE = 4;

/**
 * What fails in a descent with sensor trouble, and when: one of four things that a crew can find out, drawn by the seed. An altimeter that freezes, and
 * still calls itself valid; one that falls silent; a radar that takes sideways speed on, to either side; a radar that freezes.
 */
export function seededTrouble(seed: number, { height, descentRate }: Start): Fault {
  const random = seedRandom(seed, STREAM);
  const share = EARLIEST + (LATEST - EARLIEST) * nextUniform(random);
  const fromTick = Math.round((share * height * TICK_RATE) / descentRate);
  const kind = Math.floor(4 * nextUniform(random));
  const side = nextUniform(random) < 0.5 ? -1 : 1;
  const size = side * (BIAS.least + (BIAS.most - BIAS.least) * nextUniform(random));
  if (kind === 0) return { source: 'altimeter', kind: 'freeze', fromTick, parameters: {} };
  if (kind === 1) return { source: 'altimeter', kind: 'noData', fromTick, parameters: {} };
  if (kind === 2)
    return { source: 'velocityRadar', channel: 'across', kind: 'bias', fromTick, parameters: { size, rise: RISE } };
  return { source: 'velocityRadar', kind: 'freeze', fromTick, parameters: {} };
}
