import { describe, expect, it } from 'vitest';
import { massRange } from '../../../engine/lander/drainTanks.ts';
import { PHYSICS_REVISION } from '../../../engine/world/index.ts';
import {
  bandOf,
  calloutOf,
  pivotAtTouchdown,
  playedModel,
  simulateArrival,
  type JudgedContact,
} from '../../../engine/table/index.ts';
import { hasTipped, HIGHEST_FRICTION } from '../../../engine/touchdown/index.ts';
import type { Terrain } from '../../../engine/ground/index.ts';
import type { Arrival, DescentSetup, DescentState, TouchdownState } from '../../../engine/world/index.ts';
import { evenGround } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';
import { shippedLander } from '../../support/touchDown.ts';

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
    outcome: 'upright',
    contacts: touchdown === undefined ? [] : [{ ...touchdown, after: 'first' }],
    ...(touchdown && { touchdown }),
  };
}

function score(contact: Partial<TouchdownState>, angle = 0) {
  return playedModel.scorecard(standing({ ...level, ...contact }, angle), setup);
}

/** Even ground in one piece, on which a simulated touchdown costs half of that on evenGround [rad], [-]. */
function longSlope(slope: number, friction: number): Terrain {
  const fall = 1000 * Math.tan(slope);
  return { firstX: -1000, spacing: 2000, heights: [-fall, fall], friction };
}

/** The one contact of the card. */
function judged(contact: Partial<TouchdownState>): JudgedContact {
  const [only] = score(contact).contacts;
  if (only === undefined) throw new Error('a card with a touchdown has a contact');
  return only;
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
  const SHIPPED: readonly (readonly ['trivet' | 'steeple' | 'bolster', Partial<TouchdownState>])[] = [
    ['trivet', { vx: 1.2, descentRate: 1.5, slope: -0.05 }],
    ['trivet', { vx: -0.8, descentRate: 1, angle: 0.04, rate: -0.03, slope: 0.1 }],
    ['bolster', { vx: 2, descentRate: 2, slope: 0.06 }],
    ['steeple', { vx: 0.4, descentRate: 1.5, slope: -0.1 }],
  ];

  it.each(SHIPPED)(
    '[TA15] states a limit below which that very arrival stands, and above which it tips: %s',
    (id, given) => {
      const lander = shippedLander(id);
      const { full } = massRange(lander);
      const plan = { ...setup, lander, terrain: longSlope(given.slope ?? 0, 0.8) };
      const contact = { ...level, ...given, mass: full };
      const { limit, ...margin } = playedModel.scorecard(standing(contact), plan).contacts[0]!;
      const tip = limit!.tip!;
      const sense = Math.sign(contact.vx);
      const tips = (speed: number, friction: number) => {
        const ground = { ...plan, terrain: { ...plan.terrain, friction } };
        return hasTipped(simulateArrival(ground, { ...contact, vx: sense * speed })!);
      };
      expect(tip).toBeGreaterThan(0.1);
      expect([tips(tip, 0.8), tips(tip, HIGHEST_FRICTION)]).toEqual([false, false]);
      expect(tips(tip + limit!.tolerance, limit!.friction)).toBe(true);
      expect(margin.speedMargin).toBeCloseTo(tip - Math.abs(contact.vx), 12);
      expect(margin.utilisation).toBeCloseTo(Math.abs(contact.vx) / tip, 12);
    },
  );

  it('[TA15] says of a lander that stood whether it was inside the limit, and of others how they ended', () => {
    expect(score({ vx: 0.2 }).outcome).toBe('upright inside limit');
    expect(score({ vx: 4 }).outcome).toBe('upright outside limit');
    const fallen: DescentState = { ...standing({ ...level, vx: 0.2 }), outcome: 'tipped downhill' };
    expect(playedModel.scorecard(fallen, setup).outcome).toBe('tipped downhill');
  });

  it('[TA15] has the closed form beside it as a reference: as published on the level Moon', () => {
    // Physics Teacher 58(1) A69, 2020, same physics: 1.7740 m/s
    expect(judged({ vx: 1.2 }).limit?.closedForm).toBeCloseTo(1.774, 4);
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
      const right = judged({ vx, descentRate, slope: -slope }).limit;
      const left = judged({ vx: -vx, descentRate, slope }).limit;
      expect(right?.closedForm).toBeCloseTo(alongGround * Math.cos(slope), 4);
      expect(left?.closedForm).toBe(right?.closedForm);
    }
  });

  it('[TA15] has one slope: that under the feet, whichever foot was first and however the lander leaned', () => {
    for (const firstFoot of ['left', 'right', 'both'] as const) {
      const contact = { ...level, vx: 1, slope: -0.05, angle: -0.1, firstFoot };
      expect(pivotAtTouchdown(setup, contact).condition.slope).toBe(0.05);
    }
  });

  it('[TA15] allows no speed, and calls outside, where the slope alone overturns the lander', () => {
    const slope = -0.7;
    const card = playedModel.scorecard(standing({ ...level, vx: 0.1, slope }), {
      ...setup,
      terrain: evenGround(slope),
    });
    const contact = card.contacts[0]!;
    expect(contact).toMatchObject({ limit: { tip: 0, closedForm: 0 }, band: 'outside', callout: 'outside' });
    expect(contact.utilisation).toBeUndefined();
    expect(contact.speedMargin).toBe(-0.1);
  });

  it('[TA15] counts tripping backward: slow forward speed does not help a lander that spins the other way', () => {
    const contact = judged({ vx: 0.2, rate: 3 });
    expect(contact).toMatchObject({ limit: { tip: 0 }, band: 'outside' });
    expect(contact.speedMargin).toBeLessThan(0);
  });

  it('[TA15] has no limit, and calls outside, where the simulation does not reach', () => {
    expect(judged({ vx: 1, descentRate: 200 })).toEqual({
      arrival: { ...level, vx: 1, descentRate: 200, after: 'first' },
      band: 'outside',
      callout: 'outside',
    });
  });

  it('[TA16] splits the static tilt into used and left, toward the side over which it falls soonest', () => {
    const alpha = Math.atan(1.5 / 2);
    expect(score({ vx: 1 }).staticTilt?.limit).toBeCloseTo(alpha, 12);
    const leaning = score({ vx: 1 }, -0.1).staticTilt;
    expect(leaning?.used).toBeCloseTo(0.1, 12);
    expect(leaning?.left).toBeCloseTo(alpha - 0.1, 12);
    // whichever way it came, and to whichever side it leans
    expect(score({ vx: -1 }, -0.1).staticTilt?.used).toBeCloseTo(0.1, 12);
    expect(score({ vx: 1 }, 0.1).staticTilt?.used).toBeCloseTo(0.1, 12);
    const fallen = score({ vx: 1 }, -1.2).staticTilt;
    expect(fallen?.left).toBeCloseTo(alpha - 1.2, 12);
    expect(fallen?.left).toBeLessThan(0);
  });

  it('[TA16] reports strokes and propellant as they are', () => {
    expect(score({ vx: 1 })).toMatchObject({ strokeUsed: [0.25, 0.25], propellantLeft: 0 });
  });

  it('[TA16] has no contact without a touchdown', () => {
    const card = playedModel.scorecard({ ...standing(undefined), outcome: 'off site' }, setup);
    expect(card).toEqual({
      outcome: 'off site',
      contacts: [],
      contactCount: 0,
      restTilt: 0,
      strokeUsed: [0.25, 0.25],
      propellantLeft: 0,
      physics: PHYSICS_REVISION,
    });
  });

  it('[TA16] gives the lean at rest from the vertical, to either side', () => {
    expect(score({ vx: 1 }, -0.1).restTilt).toBe(0.1);
    expect(score({ vx: 1 }, 0.1).restTilt).toBe(0.1);
  });
});

describe('a descent with several contacts', () => {
  const slow = { ...level, tick: 300, vx: 0.1, descentRate: 0.1 };
  const first: Arrival = { ...level, vx: 0.3, descentRate: 1, after: 'first' };
  const hardest: Arrival = { ...level, tick: 200, vx: 1.4, descentRate: 0.5, after: 're-light' };
  const last: Arrival = { ...slow, tick: 500, vx: 0, after: 'hop' };
  const contacts = [
    first,
    { ...slow, after: 'hop' as const },
    hardest,
    { ...slow, tick: 400, after: 'hop' as const },
    last,
  ];
  const final: DescentState = { ...standing(level), contacts };
  const card = playedModel.scorecard(final, setup);

  it('[TA24] judges the first, the hardest of the others, and the last, and counts them all', () => {
    expect(card.contacts.map(({ arrival }) => arrival)).toEqual([first, hardest, last]);
    expect(card.contactCount).toBe(5);
  });

  it('[TA24] speaks of the worst by what it used of its own limit, and says by it whether the landing was inside', () => {
    expect(card.worst).toBe(1);
    const used = card.contacts.map(({ utilisation = 0 }) => utilisation);
    expect(Math.max(...used)).toBe(used[1]);
    const outside = { ...hardest, vx: 4 };
    const spoiled = playedModel.scorecard({ ...final, contacts: [first, outside, last] }, setup);
    expect(spoiled).toMatchObject({ worst: 1, outcome: 'upright outside limit' });
  });

  it('[TA24] judges a contact once that is first, hardest and last', () => {
    const once = playedModel.scorecard({ ...final, contacts: [first] }, setup);
    expect(once.contacts.map(({ arrival }) => arrival)).toEqual([first]);
    expect(once).toMatchObject({ worst: 0, contactCount: 1 });
  });
});
