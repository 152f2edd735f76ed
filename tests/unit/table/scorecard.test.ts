import { describe, expect, it } from 'vitest';
import {
  bandOf,
  calloutOf,
  playedModel,
  type DescentSetup,
  type DescentState,
  type TouchdownState,
} from '../../../engine/index.ts';
import { plainLander } from '../../support/plainLander.ts';

/** Moon [m/s²]: GM over the mean radius squared, as in the table of published checks. */
const MOON = 1.62422;

/** Half stance 1.5 m, center at 2 m, I/m 1.5 m²: the body of the published table of trip limits. */
const setup: DescentSetup = {
  lander: plainLander(),
  gravity: MOON,
  terrain: { firstX: -50, spacing: 10, heights: Array.from({ length: 11 }, () => 0), friction: 1 },
  start: { x: 0, y: 10, angle: 0, vx: 0, vy: -1, rate: 0 },
  propellant: 0,
};

const level: TouchdownState = {
  tick: 100,
  x: 0,
  vx: 0,
  descentRate: 0,
  angle: 0,
  rate: 0,
  slope: 0,
  mass: 2000,
  firstFoot: 'both',
};

/** Standing where it came down: feet at ±1.5 m, center 2 m above them, turned by `angle`. */
function standing(touchdown: TouchdownState | undefined, angle = 0): DescentState {
  const foot = (side: number) => ({
    footX: side * 1.5 * Math.cos(angle) + 2 * Math.sin(angle),
    footY: side * 1.5 * Math.sin(angle) - 2 * Math.cos(angle),
    footZ: 0,
    inContact: true,
    stroke: 0.15,
    strokeUsed: 0.25,
    usedUp: false,
    load: 800,
  });
  return {
    tick: 400,
    phase: 'at rest',
    x: 0,
    y: 0,
    vx: 0,
    vy: 0,
    angle,
    rate: 0,
    thrust: 0,
    propellant: 0,
    mass: 2000,
    height: 0,
    slope: 0,
    legs: [foot(-1), foot(1)],
    commanded: { thrustPercent: 0, tiltDeg: 0 },
    outcome: 'upright inside limit',
    contacts: touchdown === undefined ? [] : [{ ...touchdown, after: 'first' }],
    ...(touchdown && { touchdown }),
  };
}

function score(contact: Partial<TouchdownState>, angle = 0) {
  return playedModel.scorecard(standing({ ...level, ...contact }, angle), setup);
}

function flying(state: Partial<DescentState>): DescentState {
  return { ...standing(undefined), y: 5, ...state };
}

describe('bands of utilisation', () => {
  it.each([
    [0, 'desired', 'inside'],
    [0.6, 'desired', 'inside'],
    [0.600001, 'adequate', 'inside'],
    [0.85, 'adequate', 'inside'],
    [0.850001, 'thin', 'close'],
    [1, 'thin', 'close'],
    [1.000001, 'outside', 'outside'],
    [Number.POSITIVE_INFINITY, 'outside', 'outside'],
  ])('[TA14] U = %s is %s, called out as %s', (utilisation, band, callout) => {
    expect(bandOf(utilisation)).toBe(band);
    expect(calloutOf(bandOf(utilisation))).toBe(callout);
  });
});

describe('the scorecard', () => {
  it('[TA15] holds the touchdown against the published trip limit on the level Moon', () => {
    const card = score({ vx: 1.2 });
    // Physics Teacher 58(1) A69, 2020, same physics: 1.7740 m/s; lossless bound sqrt(2 g (L - h)), L = 2.5 m
    expect(card.limit?.plastic).toBeCloseTo(1.774, 4);
    expect(card.limit?.lossless).toBeCloseTo(Math.sqrt(2 * MOON * 0.5), 10);
    expect(card.speedMargin).toBeCloseTo(1.774 - 1.2, 4);
    expect(card.utilisation).toBeCloseTo(1.2 / 1.774, 4);
    expect(card).toMatchObject({ band: 'adequate', callout: 'inside', outcome: 'upright inside limit' });
  });

  it('[TA15] uses the published limits on slopes, with the fall of the ground in the direction of travel', () => {
    // published table: 5, 8, 12 degrees downhill on the Moon, along the ground
    for (const [slopeDeg, alongGround] of [
      [5, 1.5401],
      [8, 1.3984],
      [12, 1.208],
    ] as const) {
      const slope = (slopeDeg * Math.PI) / 180;
      // it slides along the ground at 0.5 m/s; at the limit it would leave the ground, so the limit is that of sliding
      const vx = 0.5 * Math.cos(slope);
      const descentRate = 0.5 * Math.sin(slope);
      const right = score({ vx, descentRate, slope: -slope });
      const left = score({ vx: -vx, descentRate, slope });
      expect(right.limit?.plastic).toBeCloseTo(alongGround * Math.cos(slope), 4);
      expect(left.limit).toEqual(right.limit);
    }
  });

  it('[TA15] gives no limit, and calls outside, where the slope alone overturns the lander', () => {
    const card = score({ vx: 0.1, slope: -0.7 });
    expect(card.limit).toBeUndefined();
    expect(card.utilisation).toBeUndefined();
    expect(card.speedMargin).toBeUndefined();
    expect(card).toMatchObject({ band: 'outside', callout: 'outside' });
  });

  it('[TA15] counts tripping backward: slow forward speed does not help a lander that spins the other way', () => {
    const card = score({ vx: 0.2, rate: 3 });
    expect(card.utilisation).toBeUndefined();
    expect(card.band).toBe('outside');
    expect(card.speedMargin).toBeLessThan(0);
  });

  it('[TA16] splits the static tilt into used and left, toward the side of travel', () => {
    const alpha = Math.atan(1.5 / 2);
    expect(score({ vx: 1 }).staticTilt?.limit).toBeCloseTo(alpha, 12);
    const leaning = score({ vx: 1 }, -0.1).staticTilt;
    expect(leaning?.used).toBeCloseTo(0.1, 12);
    expect(leaning?.left).toBeCloseTo(alpha - 0.1, 12);
    const leaningBack = score({ vx: -1 }, -0.1).staticTilt;
    expect(leaningBack?.used).toBeCloseTo(-0.1, 12);
    const fallen = score({ vx: 1 }, -1.2).staticTilt;
    expect(fallen?.left).toBeCloseTo(alpha - 1.2, 12);
    expect(fallen?.left).toBeLessThan(0);
  });

  it('[TA16] reports strokes and propellant as they are', () => {
    expect(score({ vx: 1 })).toMatchObject({ strokeUsed: [0.25, 0.25], propellantLeft: 0 });
  });

  it('[TA16] has no margin without a touchdown', () => {
    const card = playedModel.scorecard({ ...standing(undefined), outcome: 'off site' }, setup);
    expect(card).toEqual({ outcome: 'off site', strokeUsed: [0.25, 0.25], propellantLeft: 0 });
  });
});

describe('the live margin', () => {
  const gauge = playedModel.createMarginGauge(setup);

  it('[TA17] is that of the scorecard for the same state', () => {
    const state = { vx: -0.9, vy: -0.4, angle: 0.004, rate: 0.01, slope: 0.05 };
    const margin = gauge(flying(state));
    // the ground rises by 3 m x 0.05 to the right foot, far more than is closed in a tick: that foot comes first
    const card = score({ ...state, descentRate: 0.4, firstFoot: 'right' });
    expect(margin.limit).toBe(card.limit?.plastic);
    expect(margin.speedMargin).toBe(card.speedMargin);
    expect(margin.utilisation).toBe(card.utilisation);
    expect(margin.callout).toBe(card.callout);
  });

  it('[TA17] counts both feet as first when the second follows within a tick', () => {
    // 3 m x sin(0.002) = 6 mm; at 1 m/s a tick closes 17 mm
    const margin = gauge(flying({ vx: 1, vy: -1, angle: 0.002 }));
    expect(margin.limit).toBe(score({ vx: 1, descentRate: 1, angle: 0.002, firstFoot: 'both' }).limit?.plastic);
  });

  it('[TA17] measures the tilt left toward the side of travel', () => {
    const alpha = Math.atan(0.75);
    expect(gauge(flying({ vx: 1, angle: -0.2 })).tiltLeft).toBeCloseTo(alpha - 0.2, 12);
    expect(gauge(flying({ vx: -1, angle: -0.2 })).tiltLeft).toBeCloseTo(alpha + 0.2, 12);
  });

  it.each([0.65, -0.65, 1.6, -3, 40])('[TA17] allows no speed to a lander turned by %s rad', (angle) => {
    expect(gauge(flying({ vx: 1, angle }))).toMatchObject({
      limit: 0,
      speedMargin: -1,
      utilisation: Infinity,
      callout: 'outside',
    });
  });

  it('[TA17] is negative where the lander would trip backward, though its forward speed is below the limit', () => {
    // it leans back by 20 degrees and comes down fast: the trailing foot catches first
    const margin = gauge(flying({ vx: 1.2, vy: -7, angle: 0.35 }));
    expect(margin.limit).toBeGreaterThan(1.2);
    expect(margin.speedMargin).toBeLessThan(0);
    expect(margin.callout).toBe('outside');
  });

  it('[TA17] is finite in its limit while climbing, still and at rest', () => {
    for (const state of [{ vy: 3 }, { vx: 0, vy: 0 }, { vx: 0, vy: -1, slope: 0.1 }]) {
      const margin = gauge(flying(state));
      expect(margin.limit).toBeGreaterThan(0);
      expect(margin.limit).toBeLessThan(10);
      expect(margin.callout).toBe('inside');
    }
  });
});
