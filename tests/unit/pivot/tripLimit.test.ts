import { describe, expect, it } from 'vitest';
import { tripLimit, type ContactCondition, type PivotBody } from '../../../engine/pivot/index.ts';

const DEG = Math.PI / 180;
const MOON = 1.62422;
const block: PivotBody = { mass: 1000, halfStance: 1.5, centerHeight: 2, inertia: 1500 };

function limitOf(body: PivotBody, condition: ContactCondition) {
  const limit = tripLimit(body, condition);
  if (limit.kind !== 'limit') throw new Error('the body cannot stand');
  return limit;
}

/** How a contact goes, from vectors in the gravity frame; shares no formula with the engine. Travel is along +x. */
function contact(body: PivotBody, condition: ContactCondition, horizontal: number) {
  const { mass: m, halfStance: b, centerHeight: h, inertia } = body;
  const { gravity, slope, descentRate = 0, rate = 0, firstContact = 'leading' } = condition;
  const along = [Math.cos(slope), -Math.sin(slope)] as const;
  const out = [Math.sin(slope), Math.cos(slope)] as const;
  const side = firstContact === 'leading' ? b : -b;
  // center of mass from the foot that catches, and from the foot it must turn over
  const arm = [h * out[0] - side * along[0], h * out[1] - side * along[1]] as const;
  const climbArm = [h * out[0] - b * along[0], h * out[1] - b * along[1]] as const;
  const velocity = [horizontal, -descentRate] as const;
  const clockwise = m * (arm[1] * velocity[0] - arm[0] * velocity[1]) + inertia * rate;
  const turn = clockwise / (inertia + m * (b * b + h * h));
  const climb = Math.sqrt(b * b + h * h) - climbArm[1];
  const energy = 0.5 * (inertia + m * (b * b + h * h)) * turn * turn;
  const before = 0.5 * m * (horizontal * horizontal + descentRate * descentRate) + 0.5 * inertia * rate * rate;
  return {
    falls: turn > 0 && energy >= m * gravity * climb,
    couldFall: before >= m * gravity * climb,
    closing: -(velocity[0] * out[0] + velocity[1] * out[1]),
  };
}

describe('trip limit of a body that slides along the ground', () => {
  it('[TR1] on level ground is sqrt(2 g I_P (L - h) / (m h^2))', () => {
    const expected = Math.sqrt((2 * MOON * 7750 * 0.5) / (1000 * 4));
    const limit = limitOf(block, { gravity: MOON, slope: 0 });
    expect(limit.plastic.alongGround).toBeCloseTo(expected, 12);
    expect(limit.plastic.horizontal).toBe(limit.plastic.alongGround);
  });

  it('[TR2] has a lossless bound of sqrt(2 g (L - h)) on level ground, below the plastic limit', () => {
    const limit = limitOf(block, { gravity: MOON, slope: 0 });
    expect(limit.lossless?.alongGround).toBeCloseTo(Math.sqrt(2 * MOON * 0.5), 12);
    expect(limit.lossless?.alongGround).toBeLessThan(limit.plastic.alongGround);
  });

  it('[TR1] does not depend on mass when the inertia grows with it', () => {
    const heavy = { ...block, mass: 7000, inertia: 10500 };
    expect(limitOf(heavy, { gravity: 3.7, slope: 0.1 }).plastic.alongGround).toBeCloseTo(
      limitOf(block, { gravity: 3.7, slope: 0.1 }).plastic.alongGround,
      12,
    );
  });

  it('[TR3] gives the horizontal part of a speed along a slope', () => {
    const limit = limitOf(block, { gravity: MOON, slope: 12 * DEG });
    expect(limit.plastic.horizontal).toBeCloseTo(limit.plastic.alongGround * Math.cos(12 * DEG), 12);
    expect(limit.lossless?.horizontal).toBeCloseTo((limit.lossless?.alongGround ?? 0) * Math.cos(12 * DEG), 12);
  });

  it('[TR3] falls to nothing as the slope reaches the static tilt', () => {
    const tilt = Math.atan(0.75);
    const near = limitOf(block, { gravity: MOON, slope: tilt - 1e-6 });
    expect(near.plastic.alongGround).toBeGreaterThan(0);
    expect(near.plastic.alongGround).toBeLessThan(1e-5);
  });

  it('[TR5] goes down by I_cg omega_0 / (m h) for a body rate toward the edge and up for one away from it', () => {
    const still = limitOf(block, { gravity: MOON, slope: 0 }).plastic.alongGround;
    const toward = limitOf(block, { gravity: MOON, slope: 0, rate: 0.3 }).plastic.alongGround;
    const away = limitOf(block, { gravity: MOON, slope: 0, rate: -0.3 }).plastic.alongGround;
    expect(still - toward).toBeCloseTo((1500 * 0.3) / 2000, 12);
    expect(away - still).toBeCloseTo((1500 * 0.3) / 2000, 12);
  });

  it('[TR8] is negative when the body rate alone turns it over', () => {
    const limit = limitOf(block, { gravity: MOON, slope: 0, rate: 3 });
    expect(limit.plastic.alongGround).toBeLessThan(0);
    expect(limit.lossless).toBeUndefined();
    expect(contact(block, { gravity: MOON, slope: 0, rate: 3 }, 0).falls).toBe(true);
  });
});

describe('trip limit of a body that descends', () => {
  const cases: readonly ContactCondition[] = [
    { gravity: MOON, slope: 0, descentRate: 1, firstContact: 'leading' },
    { gravity: MOON, slope: 5 * DEG, descentRate: 1.5, firstContact: 'leading' },
    { gravity: 3.72787, slope: -8 * DEG, descentRate: 2, firstContact: 'leading' },
    { gravity: 9.80665, slope: 10 * DEG, descentRate: 3, rate: 0.2, firstContact: 'leading' },
    { gravity: MOON, slope: -5 * DEG, descentRate: 1, rate: -0.4, firstContact: 'leading' },
    { gravity: 9.80665, slope: 5 * DEG, descentRate: 1, firstContact: 'trailing' },
    { gravity: MOON, slope: 0, descentRate: 0.5, firstContact: 'trailing' },
    { gravity: MOON, slope: 3 * DEG, descentRate: 1.5, rate: 0.1, firstContact: 'trailing' },
    { gravity: MOON, slope: -6 * DEG, descentRate: 2, firstContact: 'trailing' },
  ];

  it.each(cases)('[TR4] parts the states that fall from those that do not: %j', (condition) => {
    const { plastic } = limitOf(block, condition);
    expect(contact(block, condition, plastic.horizontal).closing).toBeGreaterThan(0);
    expect(contact(block, condition, plastic.horizontal + 1e-9).falls).toBe(true);
    expect(contact(block, condition, plastic.horizontal - 1e-9).falls).toBe(false);
  });

  it.each(cases)('[TR2] leaves no energy to fall below the lossless bound: %j', (condition) => {
    const { plastic, lossless } = limitOf(block, condition);
    expect(contact(block, condition, 0).couldFall).toBe(lossless === undefined);
    if (lossless === undefined) return;
    expect(contact(block, condition, lossless.horizontal - 1e-9).couldFall).toBe(false);
    expect(contact(block, condition, lossless.horizontal + 1e-9).couldFall).toBe(true);
    expect(lossless.horizontal).toBeLessThanOrEqual(plastic.horizontal);
  });

  it('[TR4] takes the lower of leading and trailing foot first when nothing is said', () => {
    for (const slope of [0, 5 * DEG, -5 * DEG]) {
      const condition = { gravity: MOON, slope, descentRate: 1 };
      const of = (firstContact?: ContactCondition['firstContact']) =>
        limitOf(block, firstContact === undefined ? condition : { ...condition, firstContact }).plastic.horizontal;
      expect(of()).toBe(Math.min(of('leading'), of('trailing')));
      expect(of('worst')).toBe(of());
      expect(of()).toBeLessThan(of('leading'));
    }
  });

  it('[TR4] is higher when the leading foot comes first and lower when the trailing foot does', () => {
    const sliding = limitOf(block, { gravity: MOON, slope: 0 }).plastic.horizontal;
    const leading = limitOf(block, { gravity: MOON, slope: 0, descentRate: 1, firstContact: 'leading' }).plastic
      .horizontal;
    const trailing = limitOf(block, { gravity: MOON, slope: 0, descentRate: 1, firstContact: 'trailing' });
    expect(leading - sliding).toBeCloseTo(0.75, 12);
    expect(sliding - trailing.plastic.horizontal).toBeCloseTo(0.75, 12);
  });

  it('[TR13] takes no side with crushing legs: on level ground the descent rate drops out, on a slope its part along the ground stays', () => {
    const sliding = limitOf(block, { gravity: MOON, slope: 0 });
    expect(limitOf(block, { gravity: MOON, slope: 0, descentRate: 3, firstContact: 'together' })).toEqual({
      ...sliding,
      lossless: undefined,
    });

    const slope = 5 * DEG;
    const along = limitOf(block, { gravity: MOON, slope });
    const coming = limitOf(block, { gravity: MOON, slope, descentRate: 2, firstContact: 'together' });
    const horizontal = (speed: number) => (speed - 2 * Math.sin(slope)) / Math.cos(slope);
    expect(coming.plastic.alongGround).toBeCloseTo(along.plastic.alongGround, 12);
    expect(coming.plastic.horizontal).toBeCloseTo(horizontal(along.plastic.alongGround), 12);
    // the energy of descent and the height that the legs can lose are in no bound: there is none
    expect(coming.lossless).toBeUndefined();
  });

  it('[TR4] on a slope adds the part of the descent that runs along the ground', () => {
    const { plastic } = limitOf(block, { gravity: MOON, slope: 8 * DEG, descentRate: 2 });
    const along = plastic.horizontal * Math.cos(8 * DEG) + 2 * Math.sin(8 * DEG);
    expect(plastic.alongGround).toBeCloseTo(along, 12);
  });

  it('[TR4] with the trailing foot first lies below the limit of two plastic impacts in turn', () => {
    const condition: ContactCondition = { gravity: MOON, slope: 0, descentRate: 0.5, firstContact: 'trailing' };
    const { mass: m, halfStance: b, centerHeight: h, inertia } = block;
    const pivotInertia = inertia + m * (b * b + h * h);
    const needed = Math.sqrt((2 * m * MOON * (2.5 - h)) / pivotInertia);
    // the second impact leaves 1 − 2 m b²/I_P of the turn
    const kept = 1 - (2 * m * b * b) / pivotInertia;
    const twoImpacts = (pivotInertia * needed) / kept / (m * h) - (b * 0.5) / h;
    expect(limitOf(block, condition).plastic.horizontal).toBeLessThan(twoImpacts);
  });
});

describe('grazing contact', () => {
  it('[TR6] is taken as sliding when the speed sought would lift the body off a falling slope', () => {
    const condition = { gravity: MOON, slope: 10 * DEG };
    const grazing = limitOf(block, { ...condition, descentRate: 0.01 });
    expect(grazing).toEqual(limitOf(block, condition));
    expect(contact(block, { ...condition, descentRate: 0.01 }, grazing.plastic.horizontal).closing).toBeLessThan(0);
  });

  it('[TR6] goes over into sliding without a jump', () => {
    const condition = { gravity: MOON, slope: 10 * DEG };
    const sliding = limitOf(block, condition).plastic.horizontal;
    const edge = sliding * Math.tan(10 * DEG);
    const just = limitOf(block, { ...condition, descentRate: edge * (1 + 1e-9) }).plastic.horizontal;
    expect(Math.abs(just - sliding)).toBeLessThan(1e-8);
  });

  it('[TR6] is no matter on a rising slope, where speed closes on the ground', () => {
    const rising = limitOf(block, { gravity: MOON, slope: -10 * DEG, descentRate: 0, firstContact: 'leading' });
    const sliding = limitOf(block, { gravity: MOON, slope: -10 * DEG });
    expect(rising.plastic.horizontal).toBeGreaterThan(sliding.plastic.horizontal);
  });
});

describe('a wide stance on steep ground', () => {
  const wide: PivotBody = { mass: 1000, halfStance: 6, centerHeight: 1.5, inertia: 3000 };

  it('[TR6] uphill never trips on its leading foot, and the limit given is one of many speeds that stay up', () => {
    const condition: ContactCondition = { gravity: MOON, slope: -25 * DEG, descentRate: 1 };
    const { plastic, lossless } = limitOf(wide, condition);
    for (const speed of [0, plastic.horizontal, 10, 1000, 1e6])
      expect(contact(wide, condition, speed).falls, `${speed} m/s`).toBe(false);
    expect(plastic.horizontal).toBeGreaterThan(lossless?.horizontal ?? 0);
  });

  it('[TR8] downhill with the trailing foot first is negative exactly when it falls at no horizontal speed', () => {
    const condition: ContactCondition = { gravity: MOON, slope: 25 * DEG, firstContact: 'trailing' };
    let fell = 0;
    for (const descentRate of [0.1, 0.5, 1, 2, 3, 4, 6, 10]) {
      const { plastic } = limitOf(wide, { ...condition, descentRate });
      const { falls } = contact(wide, { ...condition, descentRate }, 0);
      expect(plastic.horizontal < 0, `${descentRate} m/s down`).toBe(falls);
      if (falls) fell++;
    }
    expect(fell).toBeGreaterThan(1);
    expect(fell).toBeLessThan(8);
  });
});

describe('a body that cannot stand', () => {
  it('[TR7] has no limit on a slope at its static tilt or steeper, down or up', () => {
    const staticTilt = Math.atan(0.75);
    for (const slope of [staticTilt, 40 * DEG, -staticTilt, -40 * DEG])
      expect(tripLimit(block, { gravity: MOON, slope })).toEqual({ kind: 'cannotStand', staticTilt });
  });

  it('[TR7] is judged by the edge that lies downhill', () => {
    const lopsided = { ...block, oppositeHalfStance: 4 };
    expect(tripLimit(lopsided, { gravity: MOON, slope: -40 * DEG }).kind).toBe('limit');
    expect(tripLimit(lopsided, { gravity: MOON, slope: 40 * DEG }).kind).toBe('cannotStand');
  });
});

describe('critical friction', () => {
  it('[TR9] is the half stance over the center height, on any slope', () => {
    for (const slope of [-10, 0, 20]) {
      expect(limitOf(block, { gravity: MOON, slope: slope * DEG }).criticalFriction).toBe(0.75);
    }
  });

  it('[TR9] agrees with a block that slides at constant speed: it overturns when its slope passes the static tilt', () => {
    // moments about the center at constant speed: friction m g sin(slope), push m g cos(slope) at the leading foot
    for (const slope of [20, 30, 36, 37, 40, 50]) {
      const overturns = 2 * Math.sin(slope * DEG) > 1.5 * Math.cos(slope * DEG);
      const frictionAtConstantSpeed = Math.tan(slope * DEG);
      expect(frictionAtConstantSpeed > limitOf(block, { gravity: MOON, slope: 0 }).criticalFriction).toBe(overturns);
      expect(tripLimit(block, { gravity: MOON, slope: slope * DEG }).kind === 'cannotStand').toBe(overturns);
    }
  });
});

describe('the contract of tripLimit', () => {
  it.each([
    ['mass', { ...block, mass: 0 }],
    ['half stance', { ...block, halfStance: Number.NaN }],
    ['center height', { ...block, centerHeight: -1 }],
    ['inertia', { ...block, inertia: Number.POSITIVE_INFINITY }],
    ['opposite half stance', { ...block, oppositeHalfStance: 0 }],
    ['mass', { ...block, mass: Infinity }],
    ['half stance', { ...block, halfStance: Infinity }],
    ['center height', { ...block, centerHeight: Infinity }],
    ['center height', { ...block, centerHeight: 0 }],
    ['opposite half stance', { ...block, oppositeHalfStance: Infinity }],
  ])('names the broken field: %s', (name, body) => {
    expect(() => tripLimit(body, { gravity: MOON, slope: 0 })).toThrow(name);
  });

  it.each([
    ['gravity', { gravity: 0, slope: 0 }],
    ['slope', { gravity: MOON, slope: Number.NaN }],
    ['descent rate', { gravity: MOON, slope: 0, descentRate: -1 }],
    ['rate', { gravity: MOON, slope: 0, rate: Number.NaN }],
    ['gravity', { gravity: Infinity, slope: 0 }],
    ['slope', { gravity: MOON, slope: Math.PI / 2 }],
    ['descent rate', { gravity: MOON, slope: 0, descentRate: Infinity }],
    ['rate', { gravity: MOON, slope: 0, rate: -Infinity }],
  ])('names the broken condition: %s', (name, condition) => {
    expect(() => tripLimit(block, condition)).toThrow(name);
  });
});
