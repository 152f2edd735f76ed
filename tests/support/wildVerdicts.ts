import { seedRandom } from '../../engine/math/random.ts';
import { prepareTouchdown, runTouchdown, type TouchdownCase } from '../../engine/touchdown/index.ts';
import { drawWildTouchdown } from './wildTouchdown.ts';

/** How long an arrival is simulated on, in units of sqrt(height of the center of mass / gravity); a run without the verdict ends after 40. */
const ON_PENDULUM = 150;

/** Faster than this the lander still slides or rolls [m/s]. */
const MOVING = 0.3;

/** Verdicts of wild arrivals, and what became of them when they were simulated on. */
interface WildVerdicts {
  tipped: number;
  stays: number;
  timedOut: number;
  /** Called tipped, at rest inside the footprint at last; called upright or overloaded, outside it at last. By their number in the draw. */
  readonly tippedThatStand: number[];
  readonly staysThatLie: number[];
  /** Asked for tipping only, they came to another verdict. */
  readonly otherwise: number[];
}

/** Gives `count` wild arrivals of one seed a verdict, and simulates each on; `acting` adds what acts on them, such as thrust. */
export function judgeWildTouchdowns(
  seed: number,
  count: number,
  acting: (wild: TouchdownCase) => TouchdownCase = (wild) => wild,
): WildVerdicts {
  const random = seedRandom(seed);
  const verdicts: WildVerdicts = {
    tipped: 0,
    stays: 0,
    timedOut: 0,
    tippedThatStand: [],
    staysThatLie: [],
    otherwise: [],
  };
  for (let number = 0; number < count; number++) {
    const { lander, ...conditions } = acting(drawWildTouchdown(random));
    const prepared = prepareTouchdown(lander);
    if (!prepared.ok) throw new Error(JSON.stringify(prepared.error));
    const { outcome } = runTouchdown(prepared.value, conditions);
    const quick = runTouchdown(prepared.value, conditions, { only: 'tipping' }).outcome;
    if (quick.startsWith('tipped') !== outcome.startsWith('tipped')) verdicts.otherwise.push(number);
    if (outcome === 'timed out') {
      verdicts.timedOut++;
      continue;
    }
    const timeLimit = ON_PENDULUM * Math.sqrt(lander.parts[0]!.center[2] / conditions.gravity);
    const late = runTouchdown(prepared.value, conditions, { stopWhenDecided: false, timeLimit, historyEvery: 64 });
    const last = late.history!.at(-1)!;
    const [, x, y] = last.attitude;
    const inside = last.margin > 0 && 1 - 2 * (x * x + y * y) > 0;
    if (outcome.startsWith('tipped')) {
      verdicts.tipped++;
      if (inside && Math.hypot(...last.velocity) < MOVING) verdicts.tippedThatStand.push(number);
    } else {
      verdicts.stays++;
      if (!inside) verdicts.staysThatLie.push(number);
    }
  }
  return verdicts;
}
