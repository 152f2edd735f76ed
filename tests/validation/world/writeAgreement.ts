/**
 * How well play and simulation agree, for engine/world/README.md; minutes to tens of minutes a lander:
 *
 *   node tests/validation/world/writeAgreement.ts ends | turned | centered | speeds | limits [arrivals, default 2000] [lander ...]
 *
 * `ends`: how arrivals in the plane end and crush; `turned`: the same with each other edge of the footprint to the right, so many arrivals each; `centered`: the same with the center of mass moved into the plane; `speeds`: at which speed the lander falls; `limits`: whether the play confirms the tip limit of the
 * scorecard from both sides. To be run again after every change of the touchdown simulation or of the played world.
 */
import { clopperPearson } from '../../../engine/dispersion/index.ts';
import type { Lander } from '../../../engine/lander/index.ts';
import { seedRandom } from '../../../engine/math/random.ts';
import { layOutSection } from '../../../engine/world/layOutSection.ts';
import { LANDERS } from '../../../levels/index.ts';
import { bisectLimit } from '../../support/bisectLimit.ts';
import { evenGround } from '../../support/dropLander.ts';
import { centerInPlane } from './centerInPlane.ts';
import { confirmLimits } from './confirmLimits.ts';
import { compareArrivals, fell, FRICTION, playArrival, SEED, simulateFirstContact } from './playArrivals.ts';

const CONFIDENCE = 0.95;
const CLOSE = 0.02;
const SLOPES_DEG = [0, 5, 8];
const DESCENT_RATES = [0.5, 1.5];
const [what = 'ends', count = '2000', ...wanted] = process.argv.slice(2);

for (const lander of LANDERS) {
  if (wanted.length > 0 && !wanted.includes(lander.id)) continue;
  if (what === 'ends') writeEnds(lander);
  else if (what === 'turned') writeTurned(lander);
  else if (what === 'centered') writeEnds(centerInPlane(lander));
  else if (what === 'speeds') writeSpeeds(lander);
  else writeLimits(lander);
}

function writeTurned(lander: Lander): void {
  for (let facing = 1; facing < layOutSection(lander, 0).facings.length; facing++) {
    write(`turned by ${facing} edges:`);
    writeEnds(lander, facing);
  }
}

function writeEnds(lander: Lander, facing = 0): void {
  const seen = compareArrivals(lander, seedRandom(SEED), Number(count), facing);
  const { arrivals, alike, bothFall, otherwise, strokes } = seen;
  const sizes = strokes.map(Math.abs).toSorted((a, b) => a - b);
  const close = sizes.filter((size) => size <= CLOSE).length;
  write(`${lander.id}: ${share(alike, arrivals)} end alike, ${bothFall} of them fallen`);
  write(`  largest stroke within ${100 * CLOSE} %: ${share(close, sizes.length)}`);
  write(
    `  difference of it: median ${sizes[Math.floor(sizes.length / 2)]}, 95 of 100 within ${sizes[Math.floor(0.95 * sizes.length)]}`,
  );
  for (const one of otherwise) write(`  ${JSON.stringify(one)}`);
}

/** By bisection to 0.003 m/s, downhill, on ground of FRICTION. */
function writeSpeeds(lander: Lander): void {
  for (const slopeDeg of SLOPES_DEG) {
    for (const descentRate of DESCENT_RATES) {
      const terrain = evenGround((-slopeDeg * Math.PI) / 180, FRICTION);
      const at = (vx: number) => playArrival({ lander, terrain, vx, descentRate });
      const ends = [0.1, 6, 11] as const;
      const played = bisectLimit(...ends, (vx) => fell(at(vx)));
      const simulated = bisectLimit(...ends, (vx) => fell(simulateFirstContact(at(vx))));
      write(
        `${lander.id}, ${slopeDeg} deg, ${descentRate} m/s down: ${played} over ${simulated} = ${played / simulated}`,
      );
    }
  }
}

function writeLimits(lander: Lander): void {
  for (const { within, limits, standsBelow, tipsAbove, cases } of confirmLimits(
    lander,
    seedRandom(SEED),
    Number(count),
  )) {
    write(`${lander.id}: of ${limits} limits the play stands ${within} below: ${share(standsBelow, limits)}`);
    write(`  and tips as much above: ${share(tipsAbove, limits)}`);
    for (const one of cases.slice(0, 12)) write(`  ${JSON.stringify(one)}`);
  }
}

function share(successes: number, runs: number): string {
  const { low, high } = clopperPearson({ runs, successes }, CONFIDENCE);
  return `${successes} of ${runs}, ${(100 * successes) / runs} % (${100 * low} to ${100 * high})`;
}

function write(line: string): void {
  process.stdout.write(`${line}\n`);
}
