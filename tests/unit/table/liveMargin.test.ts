import { describe, expect, it } from 'vitest';
import {
  entriesOf,
  leastLimit,
  playedModel,
  type LimitEntry,
  type LimitTable,
  type LiveMargin,
  type TablePlan,
} from '../../../engine/table/index.ts';
import { groundHeight, type Terrain } from '../../../engine/ground/index.ts';
import { type DescentState } from '../../../engine/world/index.ts';
import { evenGround, MOON } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';
import { plainChoice } from '../../support/plainChoice.ts';

/** Half stance 1.5 m, center 2 m above the feet, 2000 kg. */
const LANDER = plainLander();
const DEGREE = Math.PI / 180;

const AXES = {
  slopes: [-10, -5, 0, 5, 10].map((degrees) => degrees * DEGREE),
  descentRates: [0.1, 1, 2, 3],
  leans: [-6, 0, 6].map((degrees) => degrees * DEGREE),
  masses: [1000, 2000],
};

/** A limit that falls by hand: 0.1 m/s less for each degree downhill, 0.2 m/s for each 1 m/s down. */
const byHand = ({ slope, descentRate }: LimitEntry) => 2 - 0.1 * (slope / DEGREE) - 0.2 * descentRate;
const TABLE: LimitTable = { ...AXES, limits: entriesOf(AXES).map(byHand) };

function planOf(terrain: Terrain, limits: LimitTable | undefined = TABLE): TablePlan {
  const start = { x: 0, y: 50, angle: 0, vx: 0, vy: -1, rate: 0 };
  const setup = { lander: LANDER, gravity: MOON, terrain, start, propellant: 0 };
  const names = { title: '', landerId: 'plain', siteId: 'even', worldId: 'moon', seed: 1, choice: plainChoice };
  return { ...names, setup, ...(limits && { limits }) };
}

/** In flight, feet 2 m below the center and 1.5 m to either side. */
function flying(state: Partial<DescentState>): DescentState {
  const { x = 0, y = 12 } = state;
  const foot = { footY: y - 2, footZ: 0, inContact: false, stroke: 0, strokeUsed: 0, usedUp: false, load: 0 };
  return {
    tick: 100,
    phase: 'terminal descent',
    x,
    y,
    vx: 0,
    vy: -1,
    angle: 0,
    rate: 0,
    thrust: 0,
    propellant: 0,
    mass: 2000,
    height: y - 2,
    slope: 0,
    contacts: [],
    legs: [
      { ...foot, footX: x - 1.5 },
      { ...foot, footX: x + 1.5 },
    ],
    commanded: { thrustPercent: 0, tiltDeg: 0 },
    ...state,
  };
}

function read(state: Partial<DescentState>, terrain = evenGround(), limits?: LimitTable): LiveMargin {
  return playedModel.createMarginGauge(planOf(terrain, limits))(flying(state));
}

/** The limit on a slope [deg] at a descent rate [m/s], upright, at 2000 kg. */
function about(slopeDeg: number, descentRate: number) {
  return leastLimit(TABLE, {
    slope: [slopeDeg * DEGREE, slopeDeg * DEGREE],
    descentRate: [descentRate, descentRate],
    lean: [0, 0],
    mass: [2000, 2000],
  });
}

describe('a table of limits', () => {
  it('[TA17] gives an entry as it stands, and between entries the least of those around', () => {
    expect(about(5, 1)).toBeCloseTo(2 - 0.5 - 0.2, 12);
    expect(about(2, 1.5)).toBeCloseTo(2 - 0.5 - 0.4, 12);
    expect(about(-2, 1)).toBeCloseTo(2 - 0.2, 12);
  });

  it('[TA17] says what it does not hold', () => {
    expect([about(11, 1), about(0, 3.1), about(0, 0.05)]).toEqual(['slope', 'descentRate', 'descentRate']);
  });

  it('[TA17] takes what leaves its entries by less than a billionth of their width for rounding', () => {
    const table = { slopes: [0, 2], descentRates: [1], leans: [0], masses: [2000], limits: [1, 3] };
    const at = (slope: number) =>
      leastLimit(table, { slope: [slope, slope], descentRate: [1, 1], lean: [0, 0], mass: [2000, 2000] });
    expect([at(2), at(2 + 1e-9), at(-1e-9)]).toEqual([3, 3, 1]);
    expect([at(2 + 4e-9), at(-4e-9)]).toEqual(['slope', 'slope']);
  });

  it('[TA17] takes the least over all that a contact may be', () => {
    const slope = [-5 * DEGREE, 5 * DEGREE] as const;
    expect(leastLimit(TABLE, { slope, descentRate: [1, 1], lean: [0, 0], mass: [2000, 2000] })).toBeCloseTo(1.3, 12);
  });
});

describe('the live margin', () => {
  it('[TA17] is that of the contact ahead: where, when, how fast, on which slope', () => {
    // 10 m of air at 1 m/s: 10 s, 5 m on
    const { predicted, without } = read({ vx: 0.5, vy: -1 });
    expect(without).toBeUndefined();
    expect(predicted?.seconds).toBeCloseTo(10, 9);
    expect(predicted?.x).toBeCloseTo(5, 9);
    expect(predicted).toMatchObject({ descentRate: 1, slope: 0, callout: 'inside' });
    expect(predicted?.limit).toBeCloseTo(1.8, 12);
    expect(predicted?.speedMargin).toBeCloseTo(1.3, 12);
    expect(predicted?.utilisation).toBeCloseTo(0.5 / 1.8, 12);
  });

  it('[TA17] counts the slope along the travel, the same to either side', () => {
    const slope = 5 * DEGREE;
    const down = read({ vx: 0.5 }, evenGround(-slope)).predicted;
    const up = read({ vx: 0.5 }, evenGround(slope)).predicted;
    expect(down?.limit).toBeCloseTo(2 - 0.5 - 0.2, 6);
    expect(up?.limit).toBeCloseTo(2 + 0.5 - 0.2, 6);
    expect(read({ vx: -0.5 }, evenGround(slope)).predicted?.limit).toBe(down?.limit);
    expect(read({ vx: -0.5 }, evenGround(-slope)).predicted?.limit).toBe(up?.limit);
  });

  it('[TA17] does not move with the ground that passes 60 m below on the way to one place', () => {
    // waves of 1 m over 8 m, and level ground where it will land
    const heights = Array.from({ length: 401 }, (_, i) => (i < 230 ? Math.sin((i * Math.PI) / 4) : 0));
    const waves = { firstX: -200, spacing: 1, heights, friction: 1 };
    const readings = Array.from({ length: 41 }, (_, i) => {
      const [x, y] = [-20 + i, 62 - i];
      const slope = Math.atan((groundHeight(waves, x + 1.5) - groundHeight(waves, x - 1.5)) / 3);
      return { margin: read({ x, y, vx: 1, vy: -1, slope }, waves), slope };
    });
    expect(Math.max(...readings.map(({ slope }) => slope))).toBeGreaterThan(0.3);
    for (const { margin } of readings) {
      expect(margin.predicted?.x).toBeCloseTo(40, 6);
      expect(margin.predicted?.limit).toBeCloseTo(1.8, 12);
    }
  });

  it('[TA17] falls free in a final drop', () => {
    const { predicted } = read({ y: 3, vy: -0.4, phase: 'final drop' });
    // energy: v² = 0.4² + 2 g h over 1 m; time is known to a chord over a quarter of a second
    expect(predicted?.descentRate).toBeCloseTo(Math.sqrt(0.16 + 2 * MOON), 1);
  });

  it('[TA17] takes the worse of the attitude that there is and the one commanded', () => {
    const limits = { ...TABLE, limits: entriesOf(AXES).map(({ lean }) => (lean > 0.01 ? 0.5 : 2)) };
    expect(read({ vx: 1 }, evenGround(), limits).predicted?.limit).toBe(2);
    // to the right, with the travel, is clockwise
    expect(read({ vx: 1, angle: -0.02 }, evenGround(), limits).predicted?.limit).toBe(0.5);
    expect(read({ vx: 1, angle: 0.02 }, evenGround(), limits).predicted?.limit).toBe(2);
    const commanded = { thrustPercent: 0, tiltDeg: -2 };
    expect(read({ vx: 1, commanded }, evenGround(), limits).predicted?.limit).toBe(0.5);
  });

  it('[TA17] has no number where there is none to have, and says why', () => {
    const reasons: readonly (readonly [LiveMargin, string])[] = [
      [read({ vy: -0.05 }), 'not descending'],
      [read({ vy: 2 }), 'not descending'],
      [read({ vy: -3.5 }), 'too fast'],
      [read({ angle: 0.3 }), 'turned too far'],
      [read({ vx: 0.5 }, evenGround(-0.3)), 'too steep'],
      [read({ x: 195, vx: 2 }), 'off site'],
      [read({ phase: 'contact' }), 'on the ground'],
      [read({ phase: 'settling' }), 'on the ground'],
      [playedModel.createMarginGauge(withoutTable())(flying({})), 'no table'],
    ];
    for (const [margin, reason] of reasons) {
      expect(margin.without).toBe(reason);
      expect(margin.predicted).toBeUndefined();
    }
  });

  it('[TA17] calls outside, at no utilisation that is a number, where no speed is allowed', () => {
    const limits = { ...TABLE, limits: TABLE.limits.map(() => 0) };
    const { predicted } = read({ vx: 0.5 }, evenGround(), limits);
    expect(predicted).toMatchObject({ limit: 0, utilisation: Infinity, band: 'outside', speedMargin: -0.5 });
  });

  it('[TA17] measures the tilt left toward the side of travel', () => {
    const alpha = Math.atan(1.5 / 2);
    expect(read({ vx: 1, angle: -0.2 }).tiltLeft).toBeCloseTo(alpha - 0.2, 12);
    expect(read({ vx: -1, angle: -0.2 }).tiltLeft).toBeCloseTo(alpha + 0.2, 12);
  });
});

function withoutTable(): TablePlan {
  const { limits: _limits, ...plan } = planOf(evenGround());
  return plan;
}
