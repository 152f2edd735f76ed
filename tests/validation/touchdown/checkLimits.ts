/**
 * Holds stated tip limits against the simulation just below and just above them, at every yaw sampled, for engine/touchdown/README.md:
 *
 *   node tests/validation/touchdown/checkLimits.ts steeple | ring | upright | wild [arrivals, default 200] [first seed, default 20261130]
 *
 * `ring` lands random landers leaning and turning, on slopes across the travel; `upright` the same landers upright and straight downhill, as `kilter limit` asks;
 * `wild` what nobody would build. One arrival again: its seed, and 1 arrival. To be run again after every change of the touchdown simulation or of the search for limits.
 */
import { drawRingArrival } from '../../support/ringArrival.ts';
import { plane, shippedLander } from '../../support/touchDown.ts';
import { drawWildTouchdown } from '../../support/wildTouchdown.ts';
import { seedRandom } from '../../../engine/math/random.ts';
import type { TouchdownCase } from '../../../engine/touchdown/index.ts';
import { countLimits, noCounts, type Contradiction } from './countLimits.ts';

/** Even azimuths besides those square to the edges: every 5 deg, every 30 deg. */
const EVEN_ALONE = 72;
const EVEN_EACH = 12;
const SHOWN = 30;

/** `kilter limit steeple --slope 8 --descent 1.5`. */
const STEEPLE: TouchdownCase = {
  lander: shippedLander('steeple'),
  gravity: 1.62422,
  ground: plane(0.8, (8 * Math.PI) / 180),
  state: { horizontalSpeed: 0, descentRate: 1.5, travelAzimuth: 0 },
};

const DRAWS: Readonly<Record<string, (seed: number) => TouchdownCase>> = {
  ring: drawRingArrival,
  upright: drawUpright,
  wild: (seed) => drawWildTouchdown(seedRandom(seed)),
};

const [kind = 'steeple', count = '200', first = '20261130'] = process.argv.slice(2);
const counts = noCounts();
const draw = DRAWS[kind];
if (draw === undefined) countLimits(counts, 'steeple', STEEPLE, EVEN_ALONE);
else {
  for (let i = 0; i < Number(count); i++) {
    const seed = Number(first) + i;
    countLimits(counts, `${kind} ${seed}`, draw(seed), EVEN_EACH);
  }
}

const { arrivals, yaws, limits, zeros, nones, ...contradictions } = counts;
process.stdout.write(`${kind}: ${arrivals} arrivals, ${yaws} yaws, `);
process.stdout.write(`of which ${limits} have a limit, ${zeros} tip at any speed, ${nones} at none looked at\n`);
for (const [what, list] of Object.entries<Contradiction[]>(contradictions)) {
  const worst = list.toSorted((a, b) => badness(b) - badness(a)).slice(0, SHOWN);
  const seen = new Set(list.map(({ arrival }) => arrival)).size;
  process.stdout.write(`${what}: ${list.length}, of ${seen} arrivals\n`);
  for (const one of worst) process.stdout.write(`  ${JSON.stringify(one)}\n`);
}

/** How far a limit is too high, and of those that stand above it after how long they tip [tolerances]. */
function badness({ limit, speed, tolerance, tipsAfter }: Contradiction): number {
  return speed > limit ? (tipsAfter ?? Infinity) : (limit - speed) / tolerance;
}

function drawUpright(seed: number): TouchdownCase {
  const { lander, gravity, ground, state } = drawRingArrival(seed);
  const slope = ground.shape.kind === 'plane' ? ground.shape.slope : 0;
  const { descentRate } = state;
  return {
    lander,
    gravity,
    ground: plane(ground.friction, slope),
    state: { horizontalSpeed: 1, descentRate, travelAzimuth: 0 },
  };
}
