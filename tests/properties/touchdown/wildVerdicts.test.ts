import { describe, expect, it } from 'vitest';
import type { TouchdownCase } from '../../../engine/touchdown/index.ts';
import { judgeWildTouchdowns } from '../../support/wildVerdicts.ts';

/** Weight [N] and sqrt(height of the center of mass / gravity) [s] of a wild lander. */
function scalesOf({ lander, gravity }: TouchdownCase): { readonly weight: number; readonly pendulum: number } {
  const [body] = lander.parts;
  return { weight: body!.mass * gravity, pendulum: Math.sqrt(body!.center[2] / gravity) };
}

/** An engine that bears half the weight for a while after contact. */
function thrusting(wild: TouchdownCase): TouchdownCase {
  const { weight, pendulum } = scalesOf(wild);
  return { ...wild, thrust: { thrust: weight / 2, cutoffDelay: 4 * pendulum, timeConstant: pendulum / 4 } };
}

/** Thrusters whose torque is the weight on an arm of 0.3 m. */
function held(wild: TouchdownCase): TouchdownCase {
  const { weight, pendulum } = scalesOf(wild);
  const engine = { ...wild.lander.engine, attitudeTorque: 0.3 * weight };
  return { ...wild, lander: { ...wild.lander, engine }, hold: { duration: 10 * pendulum } };
}

describe('verdicts on landers that nobody would build', () => {
  it('[TD11] [TD12] last when they are simulated on, and are the same when asked for tipping only', () => {
    const verdicts = judgeWildTouchdowns(31, 40);
    expect(verdicts).toMatchObject({ tippedThatStand: [], staysThatLie: [], otherwise: [] });
    expect(verdicts.tipped).toBeGreaterThan(10);
    expect(verdicts.stays).toBeGreaterThan(10);
    expect(verdicts.timedOut).toBeLessThan(8);
  });

  it.each([
    { what: 'the engine burns on', acting: thrusting },
    { what: 'thrusters hold', acting: held },
  ])('[TD11] [TD12] last while $what', ({ acting }) => {
    const verdicts = judgeWildTouchdowns(32, 25, acting);
    expect(verdicts).toMatchObject({ tippedThatStand: [], staysThatLie: [], otherwise: [] });
    expect(verdicts.tipped).toBeGreaterThan(5);
    expect(verdicts.stays).toBeGreaterThan(5);
    expect(verdicts.timedOut).toBeLessThan(6);
  });

  it('[TD11] wait for a hull close above a slope, which throws some back onto their feet', () => {
    // one of 5791 draws that a verdict without that wait calls tipped, and that stands at last
    expect(judgeWildTouchdowns(5128, 1)).toMatchObject({ tipped: 0, stays: 1, tippedThatStand: [], staysThatLie: [] });
  });
});
