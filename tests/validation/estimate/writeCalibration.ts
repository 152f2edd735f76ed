/**
 * Measures how well P(stay upright) is calibrated, for the table in engine/estimate/README.md; some minutes:
 *
 *   node tests/validation/estimate/writeCalibration.ts [descents, default 2000]
 *
 * To be run again after every change of the estimate, of the touchdown simulation or of the tables of limits.
 */
import { clopperPearson } from '../../../engine/dispersion/index.ts';
import { nextUniform, seedRandom, type RandomState } from '../../../engine/math/random.ts';
import { limitMaker, type LimitEntry } from '../../../engine/table/index.ts';
import { findLander, findLimits } from '../../../levels/index.ts';
import { MOON } from '../../support/dropLander.ts';
import { interpolateLimit } from '../../../engine/table/interpolateLimit.ts';
import { flyToArrival, LIMIT_SIGMA, MASS, type BelievedArrival } from './believedArrival.ts';

const CONTACTS = 60;
const EDGES = [0, 0.02, 0.1, 0.3, 0.5, 0.7, 0.9, 0.98, 1] as const;
const [count = '2000'] = process.argv.slice(2);

process.stdout.write(`interpolated limit off by ${interpolationError()} m/s, taken as ${LIMIT_SIGMA}\n`);

const arrivals: BelievedArrival[] = [];
for (let seed = 1; seed <= Number(count); seed++) {
  const arrival = flyToArrival(seed);
  if (arrival !== undefined) arrivals.push(arrival);
}
process.stdout.write(`${arrivals.length} of ${count} descents shut down before contact\n`);
for (let i = 1; i < EDGES.length; i++) printBin(EDGES[i - 1]!, EDGES[i]!);
const brier = arrivals.reduce((sum, { odds, stood }) => sum + (odds - Number(stood)) ** 2, 0) / arrivals.length;
const expected = arrivals.reduce((sum, { odds }) => sum + odds * (1 - odds), 0) / arrivals.length;
const surplus = arrivals.reduce((sum, { odds, stood }) => sum + Number(stood) - odds, 0);
process.stdout.write(`Brier score ${brier.toFixed(4)}, expected of itself ${expected.toFixed(4)}\n`);
process.stdout.write(
  `more stood than told by ${(surplus / Math.sqrt(expected * arrivals.length)).toFixed(2)} deviations\n`,
);

function printBin(from: number, to: number): void {
  const inside = arrivals.filter(({ odds }) => odds >= from && (odds < to || to === 1));
  if (inside.length === 0) return;
  const told = inside.reduce((sum, { odds }) => sum + odds, 0) / inside.length;
  const stood = inside.filter((arrival) => arrival.stood).length;
  const { low, high } = clopperPearson({ runs: inside.length, successes: stood }, 0.95);
  const share = `${(stood / inside.length).toFixed(3)} (${low.toFixed(3)} to ${high.toFixed(3)})`;
  process.stdout.write(`| ${from} to ${to} | ${inside.length} | ${told.toFixed(3)} | ${share} |\n`);
}

/** Root mean square of the interpolated limit less that by direct search, over contacts such as these descents end in [m/s]. */
function interpolationError(): string {
  const lander = findLander('trivet')!;
  const table = findLimits('trivet', 'moon')!;
  const random = seedRandom(5);
  let sum = 0;
  for (let contact = 0; contact < CONTACTS; contact++) {
    const entry = drawContact(random);
    const search = limitMaker({ ...table, lander, gravity: MOON, masses: [entry.mass] });
    sum += (interpolateLimit(table, entry) - search(entry)) ** 2;
  }
  return Math.sqrt(sum / CONTACTS).toFixed(4);
}

function drawContact(random: RandomState): LimitEntry {
  const degree = Math.PI / 180;
  return {
    slope: (nextUniform(random) - 0.5) * 12 * degree,
    descentRate: 1 + 0.4 * nextUniform(random),
    lean: (nextUniform(random) - 0.5) * 2 * degree,
    mass: MASS - 20 * nextUniform(random),
  };
}
