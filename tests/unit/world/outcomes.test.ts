import { describe, expect, it } from 'vitest';
import {
  createDescent,
  readDescent,
  stepDescent,
  type DescentEvent,
  type DescentSetup,
  type StartState,
} from '../../../engine/world/index.ts';
import { COAST, dropLander, evenGround, MOON, settle } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

const CATCHING = 5;

function kinds(events: readonly DescentEvent[]): readonly string[] {
  return events.map((event) => (event.kind === 'phase' ? event.phase : event.kind));
}

/** Comes down at 6 m/s from a height [m] with three kilograms of propellant. */
function runDry(height: number) {
  const lander = plainLander({ propellant: 3, maxThrust: 12_000 });
  const descent = dropLander({ lander, terrain: evenGround(), descentRate: 6, height, propellant: 3 });
  const events = settle(descent, 7200, { thrustPercent: 60, tiltDeg: 0 });
  return { descent, events };
}

describe('outcomes', () => {
  it('[PL10] upright: a gentle landing', () => {
    const descent = dropLander({ lander: plainLander(), terrain: evenGround(0, CATCHING), vx: 0.5, descentRate: 1 });
    settle(descent);
    expect(descent.outcome).toBe('upright');
  });

  it('[PL10] upright: the feet slid', () => {
    // friction 0.3 is below b/h = 0.75: the feet slide where they would trip it if they caught
    const descent = dropLander({ lander: plainLander(), terrain: evenGround(0, 0.3), vx: 4, descentRate: 1 });
    settle(descent);
    expect(descent.outcome).toBe('upright');
  });

  it.each([
    { slopeDeg: -5, vx: 3, outcome: 'tipped downhill' },
    { slopeDeg: 5, vx: -3, outcome: 'tipped downhill' },
    { slopeDeg: 5, vx: 3, outcome: 'tipped uphill' },
    { slopeDeg: -5, vx: -3.4, outcome: 'tipped uphill' },
    { slopeDeg: 0, vx: 3, outcome: 'tipped downhill' },
    { slopeDeg: 0, vx: -3, outcome: 'tipped downhill' },
  ])('[PL10] $outcome: $vx m/s on a slope of $slopeDeg degrees', ({ slopeDeg, vx, outcome }) => {
    const terrain = evenGround((slopeDeg * Math.PI) / 180, CATCHING);
    const descent = dropLander({ lander: plainLander(), terrain, vx, descentRate: 0.5 });
    settle(descent);
    expect(descent.outcome).toBe(outcome);
    // it lies: turned well past its balance point, to the side it went
    expect(Math.abs(descent.motion.angle)).toBeGreaterThan(Math.PI / 4);
    expect(Math.sign(descent.motion.angle)).toBe(-Math.sign(vx));
  });

  it('[PL10] gear overload: legs used up and then some, before anything tips', () => {
    const descent = dropLander({ lander: plainLander({ stroke: 0.2 }), descentRate: 9 });
    const events = settle(descent);
    expect(descent.outcome).toBe('gear overload');
    expect(kinds(events)).toContain('bottomed');
    expect(readDescent(descent).legs.some(({ usedUp }) => usedUp)).toBe(true);
  });

  it('[PL10] a crash has its verdict within three seconds of its contact', () => {
    // 17 m/s, as a scorecard once let cartwheel for 47 s
    for (const [vx, descentRate] of [
      [0, 17],
      [12, 12],
      [16, 6],
    ] as const) {
      const descent = dropLander({ lander: plainLander(), vx, descentRate, angle: 0.2 });
      settle(descent);
      expect(descent.outcome).toMatch(/^(tipped|gear)/);
      expect(descent.tick - descent.arrivals[0]!.tick).toBeLessThanOrEqual(180);
    }
  });

  it('[PL10] a crash is called once it has been seen for two seconds', () => {
    const descent = dropLander({ lander: plainLander(), descentRate: 17, angle: 0.2 });
    settle(descent);
    expect(descent.outcome).toBe('gear overload');
    expect(descent.tick - descent.contact.crashTick).toBe(120);
  });

  it('[PL10] a lander that stands is called once it has been still for one and a half seconds', () => {
    const descent = dropLander({ lander: plainLander(), vx: 0.5, descentRate: 1 });
    let still = 0;
    while (descent.outcome === undefined && descent.tick < 3000) {
      stepDescent(descent, COAST);
      const { vx, vy, rate, legs } = readDescent(descent);
      const isStill = Math.hypot(vx, vy) < 0.01 && Math.abs(rate) < 0.002 && legs.every(({ inContact }) => inContact);
      still = isStill ? still + 1 : 0;
    }
    expect(descent.outcome).toBe('upright');
    expect(still).toBe(90);
  });

  it('[PL10] nothing is called in flight, however far the lander leans', () => {
    const plain = plainLander();
    const lander = { ...plain, engine: { ...plain.engine, attitudeTorque: 1e-6 } };
    for (const angle of [1.3, -1.3, 3]) {
      const descent = dropLander({ lander, angle, height: 20 });
      settle(descent, 200);
      expect(descent).toMatchObject({ outcome: undefined, phase: 'terminal descent', tick: 200 });
    }
  });

  it('[PL10] off site: past the end of the ground, at once', () => {
    const setup: DescentSetup = {
      lander: plainLander(),
      gravity: MOON,
      terrain: evenGround(),
      start: { x: 195, y: 60, angle: 0, vx: 10, vy: 0, rate: 0 },
      propellant: 0,
    };
    const descent = createDescent(setup);
    const events = settle(descent);
    expect(descent.outcome).toBe('off site');
    expect(descent.tick).toBe(30);
    expect(kinds(events)).toEqual(['at rest', 'outcome']);
    expect(readDescent(descent).touchdown).toBeUndefined();
  });

  it('[PL10] the end shuts the engine down, whatever was commanded', () => {
    const lander = plainLander({ propellant: 100 });
    const start = { x: 195, y: 60, angle: 0, vx: 10, vy: 0, rate: 0 };
    const descent = createDescent({ lander, gravity: MOON, terrain: evenGround(), start, propellant: 100 });
    settle(descent, 20, { thrustPercent: 60, tiltDeg: 5 });
    expect(readDescent(descent).thrust).toBeGreaterThan(1000);
    settle(descent, 60, { thrustPercent: 60, tiltDeg: 5 });
    const { outcome, thrust, commanded } = readDescent(descent);
    expect({ outcome, thrust, commanded }).toEqual({
      outcome: 'off site',
      thrust: 0,
      commanded: { thrustPercent: 0, tiltDeg: 5 },
    });
  });

  it('[PL10] propellant exhausted: the tanks ran dry on high and the fall cost the landing', () => {
    const high = runDry(60);
    expect(kinds(high.events)).toContain('propellantOut');
    expect(high.descent.outcome).toBe('propellant exhausted');
    // the same empty tanks just above the ground decide nothing
    const low = runDry(0.5);
    expect(low.descent.outcome).not.toBe('propellant exhausted');
  });
});

describe('phases and events', () => {
  const start: StartState = { x: 0, y: 62, angle: 0, vx: 0, vy: -5, rate: 0 };
  const setup: DescentSetup = {
    lander: plainLander({ propellant: 100 }),
    gravity: MOON,
    terrain: evenGround(),
    start,
    propellant: 100,
  };

  it('[PL16] run from approach to rest in their order', () => {
    const descent = createDescent(setup);
    expect(readDescent(descent).phase).toBe('approach');
    const events: DescentEvent[] = [];
    while (descent.outcome === undefined) {
      const { height, vy } = readDescent(descent);
      // hold 2 m/s, cut at 2 m
      const thrustPercent = height < 2 ? 0 : vy < -2 ? 60 : 20;
      events.push(...stepDescent(descent, { thrustPercent, tiltDeg: 0 }));
    }
    expect(events.filter(({ kind }) => kind === 'phase').map((event) => kinds([event])[0])).toEqual([
      'terminal descent',
      'final drop',
      'contact',
      'settling',
      'at rest',
    ]);
    expect(events.at(-1)).toMatchObject({ kind: 'outcome', outcome: 'upright' });
    const down = events.filter(({ kind }) => kind === 'footDown');
    expect(down.length).toBeGreaterThanOrEqual(2);
    // ticks never go back
    expect(events.map(({ tick }) => tick)).toEqual(events.map(({ tick }) => tick).toSorted((a, b) => a - b));
  });

  it('[PL16] go back to terminal descent when the lander flies off again', () => {
    const descent = dropLander({ lander: plainLander({ propellant: 100 }), descentRate: 1, propellant: 100 });
    settle(descent, 60);
    expect(descent.phase).toBe('settling');
    settle(descent, 240, { thrustPercent: 100, tiltDeg: 0 });
    expect(descent.phase).toBe('terminal descent');
    // and the thrusters hold it again
    settle(descent, 300, { thrustPercent: 40, tiltDeg: 10 });
    expect(descent.motion.angle).toBeCloseTo((10 * Math.PI) / 180, 2);
  });

  it('[PL15] give a reading that is plain, new, and changes nothing', () => {
    const descent = dropLander({ lander: plainLander(), descentRate: 2 });
    settle(descent, 30);
    const first = readDescent(descent);
    expect(structuredClone(first)).toEqual(first);
    expect(readDescent(descent)).toEqual(first);
    expect(readDescent(descent)).not.toBe(first);
    expect(first.touchdown).toMatchObject({ firstFoot: 'both', descentRate: 2, vx: 0, mass: 2000 });
  });

  it('[PL15] stand still once the outcome is called', () => {
    const descent = dropLander({ lander: plainLander(), descentRate: 1 });
    settle(descent);
    const before = readDescent(descent);
    expect(stepDescent(descent, { thrustPercent: 100, tiltDeg: 5 })).toEqual([]);
    expect(readDescent(descent)).toEqual(before);
    expect(stepDescent(descent, COAST)).toEqual([]);
  });
});
