import { describe, expect, it } from 'vitest';
import { drawLimits } from '../../../client/panels/limitDrawing.ts';
import { drawPlan } from '../../../client/panels/planDrawing.ts';
import { drawProfile } from '../../../client/panels/profileDrawing.ts';
import { drawSwing } from '../../../client/panels/swingDrawing.ts';
import { drawTwoBars } from '../../../client/panels/twoBars.ts';

const NO_NUMBER = /NaN|Infinity|undefined/;

function count(markup: string, what: RegExp): number {
  return [...markup.matchAll(what)].length;
}

function bars(one: number | undefined, other: number) {
  return [
    { words: 'gauge', share: one, look: 'filled' },
    { words: 'reckoned', share: other, look: 'hollow' },
  ] as const;
}

describe('two bars on one scale', () => {
  it('hatch what lies between their ends, and nothing where they end together', () => {
    expect(drawTwoBars(bars(0.5, 0.8), { id: 'a' }).markup).toContain('clip-path');
    expect(drawTwoBars(bars(0.8, 0.8), { id: 'a' }).markup).not.toContain('clip-path');
  });

  it('leave out a bar without a figure, and never leave the scale', () => {
    const whole = drawTwoBars(bars(1, 1), { id: 'a' }).markup;
    const without = drawTwoBars(bars(undefined, 1), { id: 'a' }).markup;
    expect(count(without, /<path/g)).toBe(count(whole, /<path/g) - 1);
    expect(drawTwoBars(bars(1.4, -0.2), { id: 'a' }).markup).toBe(drawTwoBars(bars(1, 0), { id: 'a' }).markup);
  });

  it('shade what lies beyond the ceiling', () => {
    expect(drawTwoBars(bars(0.3, 0.3), { id: 'a', most: 0.6 }).markup).toContain('var(--shade)');
    expect(drawTwoBars(bars(0.3, 0.3), { id: 'a', most: 1 }).markup).not.toContain('var(--shade)');
  });
});

const swing = { radius: 0.36, now: 0.05, rise: 0.06, period: 2.3, shift: 0.004 };

/** Height of the surface at either wall on the sheet. */
const surface = (now: number) =>
  /M12 ([\d.]+)L80 ([\d.]+)/
    .exec(drawSwing({ ...swing, now }).markup)
    ?.slice(1)
    .map(Number);

describe('the swing of the liquid', () => {
  it('leans the surface up at the right wall, mirrored for the other way, and stays in its picture', () => {
    const [left = 0, right = 0] = surface(0.05) ?? [];
    expect(right).toBeLessThan(left);
    expect(surface(-0.05)).toEqual([right, left]);
    expect(surface(9)?.every((y) => y > 0 && y < 48)).toBe(true);
  });

  it('is an empty tank without a figure', () => {
    expect(drawSwing(undefined).markup).not.toContain('var(--wash)');
    for (const one of [undefined, swing]) expect(drawSwing(one).markup).not.toMatch(NO_NUMBER);
  });
});

describe('the profile that Site sees', () => {
  const ground = { firstX: -100, spacing: 1, heights: Array.from({ length: 201 }, (_, i) => 0.02 * i) };
  const reading = {
    profile: ground,
    stretch: { from: 0, to: 80 },
    drawnIn: 'pencil',
    x: 10,
    headingFor: 40,
    spot: undefined,
    halfStance: 2,
  } as const;

  it('has full lines for what is true and dashed ones for what is believed', () => {
    const outline = /stroke-width="2"[^>]*stroke-linejoin="round"\/>/g;
    expect(count(drawProfile({ ...reading, drawnIn: 'ink' }).markup, outline)).toBeGreaterThan(0);
    expect(count(drawProfile(reading).markup, outline)).toBe(0);
  });

  it('says by how much heights are stretched: as far as they have room', () => {
    expect(drawProfile(reading).times).toBe(4);
    const steep = { ...ground, heights: ground.heights.map((height) => 20 * height) };
    expect(drawProfile({ ...reading, profile: steep }).times).toBeCloseTo(54 / (32 * 4), 3);
  });

  it('points to a spot beyond its edge by an arrow with a word', () => {
    const inside = drawProfile({ ...reading, spot: { meters: 30, approach: 'to the left' } }).markup;
    const beyond = drawProfile({ ...reading, spot: { meters: 95, approach: 'to the left' } }).markup;
    expect(inside).not.toContain('<text');
    expect(beyond).toContain('>spot</text>');
    for (const markup of [inside, beyond]) expect(markup).not.toMatch(NO_NUMBER);
  });

  it('is whole where nobody knows where it is heading, and on level ground', () => {
    const level = { ...ground, heights: ground.heights.map(() => 3) };
    expect(drawProfile({ ...reading, profile: level, headingFor: undefined }).markup).not.toMatch(NO_NUMBER);
  });
});

describe('the limits to either side', () => {
  it('are told with their unit, a dash where there is none', () => {
    const { markup } = drawLimits({ left: 0.62, right: undefined, drift: 0.3, inForce: undefined });
    expect(markup).toContain('>0.62\u202fm/s<');
    expect(markup).toContain('>–<');
    expect(markup).not.toMatch(NO_NUMBER);
  });

  it('have a tick to either side where a limit is in force', () => {
    const [stated, unstated] = [0.5, undefined].map((inForce) =>
      count(drawLimits({ left: 1, right: 1, drift: 0, inForce }).markup, /stroke-dasharray="4 3"/g),
    );
    expect((stated ?? 0) - (unstated ?? 0)).toBe(2);
  });
});

describe('the plan of the descent as Lead sees it', () => {
  const now = { seconds: 10, height: 40 };
  const flown = [
    { seconds: 0, height: 60 },
    { seconds: 5, height: 50 },
  ];

  it('leads on as it comes down now, and nowhere where it climbs', () => {
    const dashed = [2, -2].map((rate) =>
      count(drawPlan({ flown, now, rate, drawnIn: 'ink', drill: undefined }).markup, /stroke-dasharray/g),
    );
    expect(dashed).toEqual([1, 0]);
  });

  it('is whole before anything was flown, and on the ground', () => {
    for (const height of [0, 40])
      expect(
        drawPlan({ flown: [], now: { seconds: 0, height }, rate: 1, drawnIn: 'pencil', drill: undefined }).markup,
      ).not.toMatch(NO_NUMBER);
  });
});
