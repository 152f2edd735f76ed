import { describe, expect, it } from 'vitest';
import { inSlowInk } from '../../../client/replay/clipShow.ts';
import { Traces } from '../../../client/scenes/traces.ts';
import { figureOf } from '../../../client/views/lander/figure.ts';
import type { DescentState, LegState } from '../../../engine/world/index.ts';
import { firstLanding } from '../../../levels/index.ts';
import { viewOf } from '../../support/flightView.ts';

const FIGURE = figureOf(firstLanding(1).setup.lander);
const MAX_THRUST = 6000;
const AT = { tick: 600, x: 0, vx: 0, descentRate: 1, angle: 0, rate: 0, slope: 0, mass: 2000 };
const touchdown = { ...AT, firstFoot: 'both' } as const;

function leg(footX: number, inContact: boolean): LegState {
  return { footX, footY: 0, footZ: 0, inContact, stroke: 0, strokeUsed: 0, usedUp: false, load: 0 };
}

function taken(...moments: readonly Partial<DescentState>[]): Traces {
  const traces = new Traces();
  for (const moment of moments) traces.take(viewOf({ height: 0, y: 1.5, ...moment }).flight, FIGURE, MAX_THRUST);
  return traces;
}

describe('what a descent leaves on the sheet', () => {
  it('is a print where a pad stood, which stays when the pad is gone', () => {
    const { prints } = taken(
      { tick: 600, touchdown, legs: [leg(-1.5, true), leg(1.5, true)] },
      { tick: 620, touchdown, legs: [leg(-1.4, false), leg(1.6, true)] },
      { tick: 640, touchdown, legs: [leg(-0.2, false), leg(3.2, true)] },
    );
    expect(prints).toEqual([
      { from: -1.5, to: -1.5 },
      // slid a little
      { from: 1.5, to: 1.6 },
      // and came down farther on
      { from: 3.2, to: 3.2 },
    ]);
  });

  it('is one print of two legs that coincide in the section, and none of pads in the air', () => {
    expect(taken({ touchdown, legs: [leg(1.5, true), leg(1.52, true), leg(-1.5, false)] }).prints).toHaveLength(1);
  });

  it('has dust of the engine only low over the ground, and only where it pushes', () => {
    expect(taken({ height: 30, thrust: 3000 }).puffs).toEqual([]);
    expect(taken({ height: 3, thrust: 0 }).puffs).toEqual([]);
    expect(taken({ height: 3, thrust: 3000 }).puffs).toHaveLength(1);
  });

  it('has no dust once the last of it has come down', () => {
    expect(taken({ tick: 600, height: 3, thrust: 3000 }, { tick: 900, height: 3, thrust: 0 }).puffs).toEqual([]);
  });

  it('is an outline for every 30 degrees of a fall, and none of a lander that stands', () => {
    const falling = Array.from({ length: 91 }, (_, deg) => ({
      tick: 600 + deg,
      touchdown,
      angle: (-(deg + 0.1) * Math.PI) / 180,
    }));
    const { ghosts } = taken(...falling);
    expect(ghosts.map(({ angle }) => Math.round((angle * 180) / Math.PI))).toEqual([-30, -60, -90]);
    expect(taken(...falling.slice(0, 28)).ghosts).toEqual([]);
  });

  it('is gone with the next descent', () => {
    const traces = taken({ tick: 600, touchdown, legs: [leg(1.5, true)] }, { tick: 0, height: 40 });
    expect([traces.prints, traces.ghosts, traces.puffs, traces.trail.length]).toEqual([[], [], [], 1]);
  });
});

describe('slow ink', () => {
  it('is half a second at the first contact, at a quarter of the pace, and plain before and after', () => {
    const contact = 20;
    expect(inSlowInk(19.9, contact)).toBe(19.9);
    // a sixtieth after another, well within it
    expect(inSlowInk(20.1 + 1 / 60, contact) - inSlowInk(20.1, contact)).toBeCloseTo(1 / 240, 9);
    expect(inSlowInk(22 + 1 / 60, contact) - inSlowInk(22, contact)).toBeCloseTo(1 / 60, 9);
    // three quarters of half a second are lost over it
    expect(22 - inSlowInk(22, contact)).toBeCloseTo(0.375, 9);
  });

  it('never goes back, and holds the contact', () => {
    let before = 19.9;
    for (let played = 19.9; played < 21; played += 0.005) {
      const shown = inSlowInk(played, 20);
      expect(shown).toBeGreaterThanOrEqual(before);
      before = shown;
    }
    expect(inSlowInk(20.05, 20)).toBeLessThan(20);
    expect(inSlowInk(20.4, 20)).toBeGreaterThan(20);
  });
});
