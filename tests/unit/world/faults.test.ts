import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../engine/faults/index.ts';
import {
  createDescent,
  setFaults,
  hashDescent,
  readDescent,
  stepDescent,
  type ControlInput,
  type Descent,
} from '../../../engine/world/index.ts';
import { evenGround, MOON } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

const FULL = 12_000;
const LEAST = 2400;
const MASS = 2000;
const PROPELLANT = 200;
const HALF: ControlInput = { thrustPercent: 50, tiltDeg: 0 };
const OFF: ControlInput = { thrustPercent: 0, tiltDeg: 0 };
const SPAN = { fromTick: 60, toTick: 120 };

/** High up, with an engine that follows at once. */
function fly(faults: readonly Fault[] = [], lag = 0): Descent {
  const lander = plainLander({ mass: MASS, propellant: PROPELLANT, maxThrust: FULL, minThrust: LEAST, lag });
  const start = { x: 0, y: 1000, angle: 0, vx: 0, vy: 0, rate: 0 };
  return createDescent({ lander, gravity: MOON, terrain: evenGround(), start, propellant: PROPELLANT, faults });
}

/** Thrust at each tick under one command [N]. */
function thrusts(descent: Descent, input: (tick: number) => ControlInput, ticks = 180): readonly number[] {
  const found: number[] = [];
  for (let tick = 1; tick <= ticks; tick++) {
    stepDescent(descent, input(tick));
    found.push(readDescent(descent).thrust);
  }
  return found;
}

/** What tick from 1 on gives, inside and outside the span. */
function expected(inside: number, outside: number): readonly number[] {
  return Array.from({ length: 180 }, (_, i) => (i + 1 >= SPAN.fromTick && i + 1 < SPAN.toTick ? inside : outside));
}

describe('a fault in the played world', () => {
  it('[PL22] takes its share of the thrust, and of what it burns', () => {
    const loss = { source: 'engine', kind: 'thrustLoss', parameters: { factor: 0.6 }, ...SPAN } as const;
    const descent = fly([loss]);
    expect(thrusts(descent, () => HALF)).toEqual(expected(0.6 * 6000, 6000));
    // impulse over specific impulse times standard gravity: two seconds whole, one at the share
    const burned = PROPELLANT - readDescent(descent).propellant;
    expect(burned).toBeCloseTo((6000 * 2 + 3600) / (311 * 9.80665), 6);
  });

  it('[PL22] changes the motion by what is missing', () => {
    const loss = { source: 'engine', kind: 'thrustLoss', parameters: { factor: 0 }, ...SPAN } as const;
    const [healthy, out] = [fly(), fly([loss])];
    for (let tick = 1; tick <= 119; tick++) for (const descent of [healthy, out]) stepDescent(descent, HALF);
    // sixty ticks without 6000 N on some 2190 kg
    const missing = (6000 / 2197) * 1;
    expect((readDescent(healthy).vy - readDescent(out).vy) / missing).toBeCloseTo(1, 2);
  });

  it('[PL22] adds to the thrust only while the engine burns', () => {
    const offset = { source: 'engine', kind: 'thrustOffset', parameters: { percent: 5 }, ...SPAN } as const;
    expect(thrusts(fly([offset]), () => HALF)).toEqual(expected(6000 + 0.05 * FULL, 6000));
    expect(thrusts(fly([offset]), () => OFF)).toEqual(expected(0, 0));
  });

  it('[PL22] keeps a burning engine at its least, until it is over', () => {
    const stuck = { source: 'engine', kind: 'cutOffFails', parameters: {}, ...SPAN } as const;
    const descent = fly([stuck]);
    const found = thrusts(descent, (tick) => (tick < 80 ? HALF : OFF));
    expect(found.slice(0, 79)).toEqual(found.slice(0, 79).map(() => 6000));
    expect(found.slice(79, 119)).toEqual(found.slice(79, 119).map(() => LEAST));
    expect(found.slice(119)).toEqual(found.slice(119).map(() => 0));
    // an engine that was off before stays off
    expect(thrusts(fly([stuck]), () => OFF)).toEqual(expected(0, 0));
  });

  it('[PL22] leaks what it says, and the lander gets lighter', () => {
    const leak = { source: 'tanks', kind: 'leak', parameters: { flow: 3 }, ...SPAN } as const;
    const descent = fly([leak]);
    thrusts(descent, () => OFF);
    const { propellant, mass } = readDescent(descent);
    expect(propellant).toBeCloseTo(PROPELLANT - 3, 9);
    expect(mass).toBeCloseTo(MASS + propellant, 6);
  });

  it('[PL22] leaks until nothing is left, and then nothing burns', () => {
    const leak = { source: 'tanks', kind: 'leak', parameters: { flow: 100 }, fromTick: 1 } as const;
    const descent = fly([leak]);
    const events = Array.from({ length: 180 }, () => stepDescent(descent, HALF)).flat();
    expect(readDescent(descent)).toMatchObject({ propellant: 0, thrust: 0, commanded: { thrustPercent: 0 } });
    expect(events.filter(({ kind }) => kind === 'propellantOut').length).toBe(1);
  });

  it('[PL22] is the same dealt beforehand or in flight', () => {
    const loss = { source: 'engine', kind: 'thrustLoss', parameters: { factor: 0.6 }, ...SPAN } as const;
    const [before, dealt] = [fly([loss], 0.2), fly([], 0.2)];
    for (let tick = 1; tick <= 180; tick++) {
      if (tick === 50) setFaults(dealt, [loss]);
      for (const descent of [before, dealt]) stepDescent(descent, HALF);
    }
    expect(hashDescent(dealt)).toBe(hashDescent(before));
  });

  it('[PL22] changes no bit where it does not act', () => {
    const none: readonly Fault[] = [
      { source: 'engine', kind: 'thrustLoss', parameters: { factor: 0.6 }, fromTick: 1000 },
      { source: 'tanks', kind: 'leak', parameters: { flow: 3 }, fromTick: 1000 },
      { source: 'altimeter', kind: 'freeze', parameters: {}, fromTick: 0 },
    ];
    const [healthy, waiting] = [fly([], 0.2), fly(none, 0.2)];
    for (let tick = 1; tick <= 180; tick++) for (const descent of [healthy, waiting]) stepDescent(descent, HALF);
    expect(hashDescent(waiting)).toBe(hashDescent(healthy));
  });
});
