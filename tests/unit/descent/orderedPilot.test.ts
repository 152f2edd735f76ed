import { describe, expect, it } from 'vitest';
import { orderedPilot, steadyOrders, type Orders } from '../../../engine/descent/index.ts';
import { parseControlInput } from '../../../engine/input/index.ts';
import {
  createDescent,
  readDescent,
  stepDescent,
  type DescentSetup,
  type DescentState,
} from '../../../engine/world/index.ts';
import { laid } from '../../support/planChoice.ts';

const LANDERS = ['trivet', 'steeple', 'bolster'] as const;

/** As the high start has it, but over a plain so far below and so wide that nothing ends the flight. */
function highOver(lander: string): DescentSetup {
  const { setup } = laid({ lander, mode: 'by orders' });
  const heights = Array.from({ length: 201 }, () => 0);
  const terrain = { ...setup.terrain, firstX: -1000, spacing: 10, heights };
  return { ...setup, terrain, start: { ...setup.start, x: 0, y: 500 } };
}

function holdDrift(descentRateTenths: number, driftTenths: number): Orders {
  return { descentRateTenths, across: 'drift', driftTenths, leanDeg: 0 };
}

function holdLean(descentRateTenths: number, leanDeg: number): Orders {
  return { descentRateTenths, across: 'lean', driftTenths: 0, leanDeg };
}

/** Flies one order for so long [s]; returns every state of the last second. */
function hold(setup: DescentSetup, orders: Orders, seconds: number): readonly DescentState[] {
  const craft = { engine: setup.lander.engine, gravity: setup.gravity };
  const descent = createDescent(setup);
  const states: DescentState[] = [];
  for (let tick = 0; tick < seconds * 60 && descent.outcome === undefined; tick += 1) {
    const state = readDescent(descent);
    states.push(state);
    const input = orderedPilot(orders, craft, state);
    expect(parseControlInput(input)).toEqual({ ok: true, value: input });
    stepDescent(descent, input);
  }
  return states.slice(-60);
}

const furthest = (states: readonly DescentState[], error: (state: DescentState) => number) =>
  Math.max(...states.map((state) => Math.abs(error(state))));

/**
 * How near it comes, from what it commands in whole numbers: half a percent of thrust, of at most 7.4 m/s² (Steeple with empty tanks), is 0.04 m/s² for a
 * second; half a degree of lean on the Moon 0.014 m/s² for three.
 */
const RATE_WITHIN = 0.05;
const DRIFT_WITHIN = 0.05;

describe('the pilot that flies orders', () => {
  it.each(LANDERS.flatMap((lander) => [-20, 0, 20, 60].map((rate) => ({ lander, rate }))))(
    '[DE5] holds $rate dm/s down with $lander within half a minute, and the drift that is ordered beside it',
    ({ lander, rate }) => {
      const setup = highOver(lander);
      for (const drift of [-50, 0, 7]) {
        const states = hold(setup, holdDrift(rate, drift), 30);
        expect(states).toHaveLength(60);
        expect(furthest(states, ({ vy }) => -vy - rate / 10)).toBeLessThan(RATE_WITHIN);
        expect(furthest(states, ({ vx }) => vx - drift / 10)).toBeLessThan(DRIFT_WITHIN);
      }
    },
  );

  it.each(LANDERS)('[DE5] holds an ordered lean with %s, whatever drift comes of it', (lander) => {
    for (const lean of [0, 9, -15]) {
      const states = hold(highOver(lander), holdLean(10, lean), 20);
      expect(furthest(states, ({ angle }) => (180 * angle) / Math.PI - lean)).toBeLessThan(0.1);
      expect(furthest(states, ({ vy }) => -vy - 1)).toBeLessThan(RATE_WITHIN);
      // leaning left, counter-clockwise, pushes to the left
      const gained = (states.at(-1)?.vx ?? NaN) - 3.4;
      expect(Math.abs(gained) < 0.05 ? 0 : Math.sign(gained)).toBe(-Math.sign(lean) + 0);
    }
  });

  it('[DE5] protects nobody from what they order: 4 m/s down to the ground is 4 m/s', () => {
    const { setup } = laid({ start: 'middle', mode: 'by orders' });
    const craft = { engine: setup.lander.engine, gravity: setup.gravity };
    const descent = createDescent(setup);
    while (descent.outcome === undefined)
      stepDescent(descent, orderedPilot(holdDrift(40, 0), craft, readDescent(descent)));
    const { touchdown } = readDescent(descent);
    expect(touchdown?.descentRate).toBeGreaterThan(4 - RATE_WITHIN);
    expect(touchdown?.descentRate).toBeLessThan(4 + RATE_WITHIN);
  });

  it('[DE5] leans at most 20 degrees for a drift, 2 near the ground, and as ordered for a lean', () => {
    const setup = highOver('trivet');
    const craft = { engine: setup.lander.engine, gravity: setup.gravity };
    const state = readDescent(createDescent(setup));
    const low = { ...state, height: 1 };
    expect(orderedPilot(holdDrift(10, -50), craft, state).tiltDeg).toBe(20);
    expect(orderedPilot(holdDrift(10, -50), craft, low).tiltDeg).toBe(2);
    expect(orderedPilot(holdLean(10, -30), craft, low).tiltDeg).toBe(-30);
  });

  it('[DE5] has the engine off and stands upright from contact on, even where a climb is ordered', () => {
    const setup = highOver('trivet');
    const craft = { engine: setup.lander.engine, gravity: setup.gravity };
    const state = readDescent(createDescent(setup));
    const off = { thrustPercent: 0, tiltDeg: 0 };
    expect(orderedPilot(holdLean(-20, 9), craft, state)).not.toEqual(off);
    expect(orderedPilot(holdLean(-20, 9), craft, { ...state, phase: 'contact' })).toEqual(off);
  });
});

describe('a stand-in with a profile', () => {
  it('[DR4] orders the rate of the step that its height is in', () => {
    const profile = [
      { above: 40, rate: 3 },
      { above: 12, rate: 1.5 },
      { above: 0, rate: 0.8 },
    ];
    const state = readDescent(createDescent(highOver('trivet')));
    const rateAt = (height: number) => steadyOrders({ ...state, height }, undefined, profile).descentRateTenths;
    expect([300, 40, 39.9, 12, 11.9, 0, -0.1].map(rateAt)).toEqual([30, 30, 15, 15, 8, 8, 8]);
  });
});
