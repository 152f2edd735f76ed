import type { Lander } from '../../../engine/lander/index.ts';
import { nextUniform, type RandomState } from '../../../engine/math/random.ts';
import { limitOfArrival } from '../../../engine/table/judgeContact.ts';
import { HIGHEST_FRICTION } from '../../../engine/touchdown/index.ts';
import { evenGround, type Drop } from '../../support/dropLander.ts';
import { fell, playArrival } from './playArrivals.ts';

/** How far beside a limit the play looks, over it [-]; at least its tolerance. */
const BESIDE = [0, 0.02, 0.05];

interface Confirmed {
  readonly within: string;
  limits: number;
  standsBelow: number;
  tipsAbove: number;
  /** Limits that the play does not confirm. */
  readonly cases: unknown[];
}

/**
 * Whether the play stands just below the tip limit that the scorecard states of an arrival, and tips just above it: arrivals in the plane, to 8 deg of
 * slope, 0.2 to 3 m/s down, 4 deg of lean and 3 deg/s either way, to either side, each evenly, on ground of the highest plausible friction, so that
 * the limit is one of that ground alone. Those without a limit, or with none above 0, are drawn again.
 */
export function confirmLimits(lander: Lander, random: RandomState, count: number): readonly Confirmed[] {
  const between = (low: number, high: number): number => low + (high - low) * nextUniform(random);
  const all = BESIDE.map((share): Confirmed => {
    const within = share === 0 ? 'one tolerance' : `${100 * share} %`;
    return { within, limits: 0, standsBelow: 0, tipsAbove: 0, cases: [] };
  });
  while (all[0]!.limits < count) {
    const slope = between(-0.14, 0.14);
    const drop: Drop = {
      lander,
      terrain: evenGround(slope, HIGHEST_FRICTION),
      descentRate: between(0.2, 3),
      angle: between(-0.07, 0.07),
      rate: between(-0.05, 0.05),
    };
    const sense = between(-1, 1) < 0 ? -1 : 1;
    const { setup, contacts } = playArrival({ ...drop, vx: 0.5 * sense });
    const { tip = 0, tolerance = 0 } = limitOfArrival(setup, contacts[0]!) ?? {};
    if (tip === 0) continue;
    all.forEach((confirmed, i) => {
      const beside = Math.max(tolerance, BESIDE[i]! * tip);
      const below = fell(playArrival({ ...drop, vx: sense * Math.max(0, tip - beside) }));
      const above = fell(playArrival({ ...drop, vx: sense * (tip + beside) }));
      confirmed.limits += 1;
      if (!below) confirmed.standsBelow += 1;
      if (above) confirmed.tipsAbove += 1;
      const { descentRate, angle, rate } = drop;
      if (below || !above)
        confirmed.cases.push({ slope, descentRate, angle, rate, sense, tip, tolerance, below, above });
    });
  }
  return all;
}
