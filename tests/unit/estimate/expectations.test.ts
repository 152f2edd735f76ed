import { describe, expect, it } from 'vitest';
import type { Estimate } from '../../../engine/estimate/index.ts';
import { expectAltimeter } from '../../../engine/estimate/expectAltimeter.ts';
import { createExpectation, type Expect } from '../../../engine/estimate/expectation.ts';
import { expectAttitude } from '../../../engine/estimate/expectAttitude.ts';
import { expectCamera } from '../../../engine/estimate/expectCamera.ts';
import { expectRadar } from '../../../engine/estimate/expectRadar.ts';
import { ANGLE, HEIGHT, STATES, VX, VY, X } from '../../../engine/estimate/state.ts';
import { evenGround, MOON } from '../../support/dropLander.ts';
import { KNOWN, plainEstimate, TRUE_MAP } from '../../support/plainEstimate.ts';

const SLOPE = 0.08;
const MAP = { ...TRUE_MAP, terrain: evenGround(SLOPE), sigma: 0.3 };

/** Believed to lean and move over a slope, with no error under the beam: how that one's size grows with the lean is not in the row. */
function leaning(): Estimate {
  return plainEstimate({
    gravity: MOON,
    map: MAP,
    start: { x: 3, height: 40, vx: 2, vy: -3, angle: 0.2 },
    startSigma: KNOWN,
  });
}

function valueOf(expectation: Expect, channel: number, change?: readonly [state: number, by: number]): number {
  const estimate = leaning();
  if (change !== undefined) estimate.past[change[0]]! += change[1];
  const into = createExpectation();
  expectation(estimate, 0, into, channel);
  return into.value;
}

const SOURCES: readonly (readonly [string, Expect, number])[] = [
  ['altimeter', expectAltimeter, 0],
  ['radar across', expectRadar, 0],
  ['radar along', expectRadar, 1],
  ['attitude reference', expectAttitude, 0],
  ['camera', expectCamera, 0],
];

describe('what a source should say', () => {
  // over an even slope the way x enters cancels out
  it.each(SOURCES)('[ES10] moves with each state as its row says: %s', (_, expectation, channel) => {
    const into = createExpectation();
    expectation(leaning(), 0, into, channel);
    const step = 1e-5;
    let moved = 0;
    for (let state = 0; state < STATES; state++) {
      const [more, less] = [step, -step].map((by) => valueOf(expectation, channel, [state, by]));
      const slope = (more! - less!) / (2 * step);
      expect(Math.abs(into.row[state]! - slope), `state ${state}`).toBeLessThan(1e-4);
      if (slope !== 0) moved++;
    }
    expect(moved).toBeGreaterThan(0);
  });

  it('[ES10] is the geometry of the beam and the turned velocity', () => {
    // beam down and to the right by 0.2 rad onto ground that rises by 0.08 rad: r·(cos θ + sin θ·tan s) = h
    const plain = leaning();
    const into = createExpectation();
    expectAltimeter(plain, 0, into);
    expect(into.value).toBeCloseTo(40 / (Math.cos(0.2) + Math.sin(0.2) * Math.tan(SLOPE)), 3);
    expect(valueOf(expectRadar, 0)).toBeCloseTo(2 * Math.cos(0.2) - 3 * Math.sin(0.2), 12);
    expect(valueOf(expectRadar, 1)).toBeCloseTo(-3 * Math.cos(0.2) - 2 * Math.sin(0.2), 12);
    expect(valueOf(expectAttitude, 0)).toBe(0.2);
    expect(valueOf(expectCamera, 0)).toBe(2);
  });

  it('[ES10] of the altimeter grows by the angle as the beam swings out', () => {
    const plain = leaning();
    const into = createExpectation();
    expectAltimeter(plain, 0, into);
    // d/dθ of h / (cos θ + sin θ·t)
    const [c, s, t] = [Math.cos(0.2), Math.sin(0.2), Math.tan(SLOPE)];
    expect(into.row[ANGLE]).toBeCloseTo((40 * (s - c * t)) / (c + s * t) ** 2, 2);
    expect(into.row[HEIGHT]).toBeCloseTo(1 / (c + s * t), 4);
    expect([into.row[X], into.row[VX], into.row[VY]]).toEqual([0, 0, 0]);
  });

  it('[ES10] of an altimeter that leans too far is nothing', () => {
    const fallen = leaning();
    fallen.past[ANGLE] = 0.8;
    expect(expectAltimeter(fallen, 0, createExpectation())).toBe(false);
  });
});
