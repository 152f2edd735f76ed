import { describe, expect, it } from 'vitest';
import { legPlaces, sideOf, uphillOf } from '../../../client/panels/legPlaces.ts';
import { drawFootprintPlan } from '../../../client/panels/footprintDrawing.ts';
import { turnedWords } from '../../../client/panels/turnLine.ts';
import { midTurn } from '../../../client/scenes/midTurn.ts';
import { readingBetween } from '../../../client/net/smoothing.ts';
import { stepWords } from '../../../client/text/facing.ts';
import { createDescent, readDescent, stepDescent, type DescentState } from '../../../engine/world/index.ts';
import { COAST, evenGround, MOON } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

const THIN = '\u202f';

/** Four legs 1.5 m to each side, falling from on high, after so many ticks of a turn; a quarter takes 540. */
function turning(ticks: number, steps = 1): DescentState {
  const start = { x: 0, y: 5000, angle: 0.1, vx: 2, vy: 0, rate: 0 };
  const descent = createDescent({ lander: plainLander(), gravity: MOON, terrain: evenGround(), start, propellant: 0 });
  for (let i = 0; i < ticks; i += 1) stepDescent(descent, COAST, undefined, steps);
  return readDescent(descent);
}

function count(markup: string, what: string): number {
  return markup.split(what).length - 1;
}

describe('the legs from above', () => {
  it('stand by their numbers, and those not shown locked are marked', () => {
    const places = legPlaces(turning(0), [true, false, true, true]);
    expect(places.map(({ leg }) => leg)).toEqual([1, 2, 3, 4]);
    expect(places.filter(({ isWeak }) => isWeak).map(({ leg }) => leg)).toEqual([2]);
    for (const { across, aside } of places) {
      expect(Math.abs(across)).toBeCloseTo(1.5, 9);
      expect(Math.abs(aside)).toBeCloseTo(1.5, 9);
    }
    expect(places.map((place) => sideOf(place, 1.5)).toSorted()).toEqual(['left', 'left', 'right', 'right']);
  });

  it('go round with a turn in progress, to the left as seen from above', () => {
    const [before, after] = [legPlaces(turning(0), []), legPlaces(turning(0), [], Math.PI / 2)];
    for (const [index, { across, aside }] of before.entries()) {
      // right goes away from the viewer, near comes to the right
      expect(after[index]!.across).toBeCloseTo(aside, 9);
      expect(after[index]!.aside).toBeCloseTo(-across, 9);
    }
  });

  it('know uphill where the slope is enough to be read', () => {
    expect([0.1, -0.1, 0.005, undefined].map(uphillOf)).toEqual(['right', 'left', undefined, undefined]);
  });

  it('are drawn with a cross through each that is not locked, and a dashed outline of what is ordered', () => {
    const legs = legPlaces(turning(0), [true, false, true, true]);
    const crossed = drawFootprintPlan({ legs, uphill: 'left' }).markup;
    const sound = drawFootprintPlan({ legs: legPlaces(turning(0), []), uphill: undefined }).markup;
    expect(crossed).toContain('uphill');
    expect(sound).not.toContain('uphill');
    // two circles fewer halves, a square and its cross more
    expect(count(sound, 'A9 9')).toBe(8);
    expect(count(crossed, 'A9 9')).toBe(6);
    const ordered = legPlaces(turning(0), [], 0.5);
    expect(count(drawFootprintPlan({ legs, ordered, uphill: undefined }).markup, 'stroke-dasharray')).toBe(2);
  });
});

describe('the drawing of a lander that turns', () => {
  it('has its feet where the turn has brought them, on the same body', () => {
    const half = turning(270);
    const drawn = midTurn(half);
    expect(half.facing).toMatchObject({ steps: 0 });
    // half of a quarter turn: two feet stand at 1.5 √2 to either side, two in the middle
    const across = legPlaces(drawn, []).map((place) => place.across);
    const corner = 1.5 * Math.SQRT2;
    expect(across.map(Math.abs).toSorted((a, b) => a - b)).toEqual(
      [0, 0, corner, corner].map((value) => expect.closeTo(value, 9)),
    );
    expect(midTurn(turning(0))).toEqual(turning(0));
  });

  it('goes on without a jump from the reading before an edge counts to that after it', () => {
    const [before, after] = [turning(538), turning(541)];
    const drawn = midTurn(readingBetween(before, after, 0.5));
    const [from, to] = [midTurn(before), midTurn(after)];
    for (const [index, leg] of drawn.legs.entries()) {
      const least = Math.min(from.legs[index]!.footX, to.legs[index]!.footX) - 0.01;
      const most = Math.max(from.legs[index]!.footX, to.legs[index]!.footX) + 0.01;
      expect(leg.footX).toBeGreaterThan(least);
      expect(leg.footX).toBeLessThan(most);
    }
  });
});

describe('a turn in words', () => {
  it('says how far, and on the card when it was ordered and done', () => {
    expect([0, 1, -2].map(stepWords)).toEqual(['as it started', '1 step left', '2 steps right']);
    expect(turnedWords({})).toBeUndefined();
    const card = { steps: -1, orderedAfter: 6, doneAfter: 12 };
    expect(turnedWords({ facing: card })).toBe(
      `It was turned about its long axis: ordered 6${THIN}s after the start, 1 step right from 12${THIN}s on.`,
    );
    expect(turnedWords({ facing: { steps: 0, orderedAfter: 6 } })).toMatch(/landed before a step was complete/);
  });
});
