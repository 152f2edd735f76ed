import { describe, expect, it } from 'vitest';
import type { Lander } from '../../../engine/lander/index.ts';
import {
  createDescent,
  hashDescent,
  readDescent,
  stepDescent,
  TICK_DT,
  type Descent,
} from '../../../engine/world/index.ts';
import { facingsOf, headingAt, ticksOfTurn, turnedOn } from '../../../engine/world/facings.ts';
import { layOutSection } from '../../../engine/world/layOutSection.ts';
import { findLander } from '../../../levels/index.ts';
import { COAST, dropLander, evenGround, MOON } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

const START = { x: 0, y: 5000, angle: 0, vx: 0, vy: 0, rate: 0 };
/** A quarter turn at 10 deg/s [tick]. */
const QUARTER = 540;

function high(lander: Lander, start: Partial<typeof START> = {}, facing?: number): Descent {
  const terrain = evenGround();
  const setup = { lander, gravity: MOON, terrain, start: { ...START, ...start }, propellant: 0 };
  return createDescent(facing === undefined ? setup : { ...setup, facing });
}

function fly(descent: Descent, ticks: number, facing?: number): void {
  for (let i = 0; i < ticks; i++) stepDescent(descent, COAST, undefined, facing);
}

/** Feet from the center of mass: to the right, and toward the viewer [m]. */
function feet(descent: Descent): readonly (readonly [number, number])[] {
  const { legs, x } = readDescent(descent);
  return legs.map(({ footX, footZ }) => [footX - x, footZ]);
}

describe('a turn about the long axis', () => {
  it('[PL23] takes a whole edge, a quarter turn in nine seconds here, and counts when it is complete', () => {
    const descent = high(plainLander());
    const before = feet(descent);
    fly(descent, QUARTER - 1, 1);
    expect(readDescent(descent).facing).toMatchObject({ steps: 0 });
    expect(feet(descent)).toEqual(before);
    fly(descent, 1, 1);
    expect(readDescent(descent).facing!.steps).toBe(1);
    expect(readDescent(descent).facing!.yaw).toBeCloseTo(Math.PI / 2, 12);
    // counter-clockwise seen from above: what was toward the viewer is now to the right, what was to the right is now away
    for (const [leg, [right, near]] of feet(descent).entries()) {
      expect(right).toBeCloseTo(before[leg]![1], 12);
      expect(near).toBeCloseTo(-before[leg]![0], 12);
    }
    fly(descent, 300, 1);
    expect(readDescent(descent).facing!.yaw).toBeCloseTo(Math.PI / 2, 12);
  });

  it('[PL23] leaves the center of mass on its path, and keeps the angular momentum', () => {
    const plain = plainLander();
    const stretched: Lander = {
      ...plain,
      engine: { ...plain.engine, attitudeTorque: 1e-9 },
      parts: [{ ...plain.parts[0]!, shape: { kind: 'inertia', moments: [3000, 4500, 3000] } }],
    };
    const start = { vx: 3, vy: -1, rate: 0.001 };
    const [turned, straight] = [high(stretched, start), high(stretched, start)];
    fly(turned, QUARTER, 1);
    fly(straight, QUARTER);
    const [one, other] = [readDescent(turned), readDescent(straight)];
    for (const field of ['x', 'y', 'vx', 'vy'] as const) expect(one[field]).toBeCloseTo(other[field], 9);
    // no more than it turns in the last tick
    expect(Math.abs(one.angle - other.angle)).toBeLessThan(start.rate * TICK_DT);
    // the edge that comes to the right is of the other pair: about it the body has half as much inertia again, or two thirds
    const inertias = [turned, straight].map(({ bulk }) => bulk.inertia);
    expect(inertias.toSorted((a, b) => a - b)).toEqual([expect.closeTo(3000, 6), expect.closeTo(4500, 6)]);
    expect(turned.bulk.inertia * one.rate).toBeCloseTo(straight.bulk.inertia * other.rate, 9);
  });

  it('[PL23] ends as a descent that began so turned: same feet, same hull, same masses', () => {
    const lander = findLander('steeple')!;
    const turned = high(lander);
    fly(turned, 720, 2);
    const begun = high(lander, {}, 2);
    fly(begun, 720, 2);
    expect(turned.section).toEqual(begun.section);
    for (const [leg, [right, near]] of feet(turned).entries()) {
      expect(right).toBeCloseTo(feet(begun)[leg]![0], 9);
      expect(near).toBeCloseTo(feet(begun)[leg]![1], 9);
    }
    expect(turned.hull.body.getInertia()).toBeCloseTo(begun.hull.body.getInertia(), 6);
    expect(turned.hull.body.getMass()).toBe(begun.hull.body.getMass());
  });

  it('[PL23] takes as long back as it came, by the order that stands', () => {
    const descent = high(plainLander());
    fly(descent, 200, 1);
    fly(descent, 150, 0);
    expect(readDescent(descent).facing!.yaw).toBeCloseTo((50 / QUARTER) * (Math.PI / 2), 12);
    expect(readDescent(descent).facing!.rest).toBe(readDescent(descent).facing!.yaw);
    fly(descent, 50, 0);
    expect(readDescent(descent).facing).toEqual({ steps: 0, yaw: 0, rest: 0 });
    fly(descent, 2 * QUARTER, -2);
    expect(readDescent(descent).facing).toMatchObject({ steps: -2, yaw: expect.closeTo(-Math.PI, 12) });
  });

  it('[PL23] is for free flight: whoever meets the ground between two edges stands as before', () => {
    const descent = dropLander({ lander: plainLander(), height: 10 });
    const before = feet(descent);
    while (descent.outcome === undefined) fly(descent, 1, 1);
    const { facing, touchdown, outcome } = readDescent(descent);
    expect(outcome).toBe('upright');
    expect(facing!.steps).toBe(0);
    expect(facing!.yaw).toBeGreaterThan(0);
    expect(facing!.yaw).toBeLessThan(Math.PI / 2);
    expect(touchdown).not.toHaveProperty('facing');
    for (const [leg, [right]] of feet(descent).entries()) expect(Math.sign(right)).toBe(Math.sign(before[leg]![0]));
  });

  it('[PL23] says at the contact how it stood', () => {
    const descent = dropLander({ lander: plainLander(), height: 120 });
    while (descent.touchdown === undefined) fly(descent, 1, -1);
    expect(readDescent(descent).touchdown!.facing).toBe(-1);
    expect(readDescent(descent).contacts[0]!.facing).toBe(-1);
  });

  it('[PL23] changes no bit where nobody orders one, and every bit counts where somebody does', () => {
    const [asked, unasked, turning] = [high(plainLander()), high(plainLander()), high(plainLander())];
    fly(asked, 100, 0);
    fly(unasked, 100);
    fly(turning, 100, 1);
    expect(readDescent(asked)).not.toHaveProperty('facing');
    expect(hashDescent(asked)).toBe(hashDescent(unasked));
    expect(hashDescent(turning)).not.toBe(hashDescent(unasked));
  });

  it('[PL23] refuses a start that is turned by part of an edge', () => {
    expect(() => high(plainLander(), {}, 0.5)).toThrow(/facing is a whole number of edges, got 0.5/);
  });
});

describe('the edges that may lie to the right', () => {
  it('[PL23] are those as far from the center of mass as the nearest, and take as long as their angle asks for', () => {
    // Bolster stands on two rows of three: only half a turn brings a like edge there
    const bolster = layOutSection(findLander('bolster')!, 0).facings;
    expect(bolster.map(({ yaw }) => yaw)).toEqual([0, expect.closeTo(Math.PI, 12)]);
    // Steeple's six legs stand on a hexagon, with the center of mass a little off its middle
    const steeple = layOutSection(findLander('steeple')!, 0).facings;
    expect(steeple.map(({ yaw }) => yaw)).toEqual([0, 1, 2, 3, 4, 5].map((i) => expect.closeTo((i * Math.PI) / 3, 12)));
    expect(ticksOfTurn(steeple, headingAt(steeple, 0), 1)).toBe(360);
    expect(ticksOfTurn(steeple, headingAt(steeple, 0), -2)).toBe(720);
    expect(ticksOfTurn(steeple, headingAt(steeple, 1), -1)).toBe(720);
  });

  it('[PL23] are one where no other edge is like the nearest', () => {
    expect(facingsOf(plainLander(), [0.3, 0.1])).toHaveLength(1);
  });

  it('[PL23] count as they pass, there and back', () => {
    const facings = facingsOf(plainLander(), [0, 0]);
    let heading = headingAt(facings, 0);
    const turn = (ticks: number, ordered: number) => {
      for (let i = 0; i < ticks; i++) heading = turnedOn(facings, heading, ordered);
      return heading.steps;
    };
    expect([turn(QUARTER + 10, 3), turn(9, 0), turn(1, 0), turn(QUARTER - 1, 0), turn(1, 0)]).toEqual([1, 1, 1, 1, 0]);
  });
});
