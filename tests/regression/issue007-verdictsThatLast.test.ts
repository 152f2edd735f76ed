/**
 * Tipped: a hull point that did not touch yet caught the body, which then stood. Overloaded: landers on their sides, or still sliding when
 * their time was up. Timed out: tall landers that rocked on for a minute, far below what could tip them.
 */
import { describe, expect, it } from 'vitest';
import { seedRandom } from '../../engine/math/random.ts';
import type { TouchdownCase, TouchdownResult } from '../../engine/touchdown/index.ts';
import { ringLander } from '../support/ringLander.ts';
import { plane, touchDown, MOON, shippedLander } from '../support/touchDown.ts';
import { drawWildTouchdown } from '../support/wildTouchdown.ts';

const DEGREE = Math.PI / 180;

/** A wild arrival, by its seed and its number in the draw. */
function wild(seed: number, number: number): TouchdownCase {
  const random = seedRandom(seed);
  let drawn = drawWildTouchdown(random);
  for (let i = 0; i < number; i++) drawn = drawWildTouchdown(random);
  return drawn;
}

/** Simulated on until nothing moves any more. */
function inTheEnd(touchdown: TouchdownCase, seconds: number): TouchdownResult {
  return touchDown(touchdown, { stopWhenDecided: false, timeLimit: seconds });
}

describe('a verdict of tipping', () => {
  // found among the first thousand of seed 1: called tipped at 12, 91 and 19 deg, at rest on all feet after 8, 13 and 15 s
  it.each([
    [282, 20],
    [398, 20],
    [670, 20],
  ])('[TD11] waits for a hull point that catches the body, wild arrival %i', (number, seconds) => {
    const touchdown = wild(1, number);
    const late = inTheEnd(touchdown, seconds);
    expect(late.restTiltDeg).toBeLessThan(15);
    expect(late.outcome).not.toMatch(/^tipped/);
    expect(touchDown(touchdown).outcome).not.toMatch(/^tipped/);
  });
});

describe('a lander that does not stay up', () => {
  // two of seed 1 that were called overloaded: lying at 87 deg, and sliding down until it trips
  it.each([557, 819])('[TD13] is not overloaded, wild arrival %i', (number) => {
    const touchdown = wild(1, number);
    expect(inTheEnd(touchdown, 250).restTiltDeg).toBeGreaterThan(60);
    expect(touchDown(touchdown).outcome).not.toBe('overloaded');
  });
});

describe('a lander that rocks below what could tip it', () => {
  it('[TD12] is upright, and said to rock, as soon as its energy shows it', () => {
    for (let yaw = 0; yaw < 60; yaw += 10) {
      const state = { horizontalSpeed: 0.7, descentRate: 1, yaw: yaw * DEGREE };
      const touchdown = { lander: shippedLander('steeple'), gravity: MOON, ground: plane(0.8, 4 * DEGREE), state };
      const late = inTheEnd(touchdown, 200);
      expect(late).toMatchObject({ outcome: 'upright', stillRocking: false });
      expect(late.time).toBeGreaterThan(20);
      expect(touchDown(touchdown, { timeLimit: 5 })).toMatchObject({ outcome: 'upright', stillRocking: true });
      const tipping = touchDown(touchdown, { only: 'tipping' });
      expect(tipping.outcome).toBe('upright');
      expect(tipping.time).toBeLessThan(5);
    }
  });

  it('[TD12] is not timed out where it rocks longer than the time it is given', () => {
    const heavy = ringLander({
      mass: 14_000,
      inertia: [220_000, 220_000, 40_000],
      centerHeight: 5.86,
      legCount: 6,
      radius: 4.2,
      crushForce: 60_000,
      stroke: 0.5,
      hipInset: 2,
      hipHeight: 2.5,
    });
    let rocking = 0;
    for (let yaw = 0; yaw < 30; yaw += 3) {
      const state = { horizontalSpeed: 0, descentRate: 2, yaw: yaw * DEGREE };
      const touchdown = { lander: heavy, gravity: MOON, ground: plane(0.8, 8 * DEGREE), state };
      const result = touchDown(touchdown, { damping: 0.01 });
      expect(result.outcome).toBe('upright');
      if (result.stillRocking) rocking++;
    }
    expect(rocking).toBeGreaterThan(3);
  });
});

describe('a run', () => {
  it('ends with its budget of steps, and says so', () => {
    const state = { horizontalSpeed: 2.5, descentRate: 1.5 };
    const touchdown = { lander: shippedLander('trivet'), gravity: MOON, ground: plane(0.8), state };
    expect(touchDown(touchdown)).toMatchObject({ outcome: 'upright', outOfSteps: false });
    const cut = touchDown(touchdown, { maxSteps: 80 });
    expect(cut).toMatchObject({ outcome: 'timed out', outOfSteps: true });
    expect(cut.steps).toBeLessThan(80 + 8);
  });
});
