import { describe, expect, it } from 'vitest';
import { drawDots, drawPaths, PLACES, shareOf } from '../../../client/hall/landingsDrawing.ts';
import { keepPath } from '../../../client/hall/flownLanding.ts';
import {
  choiceOfHall,
  layOut,
  MOST_POINTS,
  parsePhoneLanding,
  type PathPoint,
  type PhoneLanding,
} from '../../../levels/index.ts';

const plan = layOut(choiceOfHall({ lander: 'trivet', site: 'saddlers-bench', world: 'moon', start: 'low', seed: 1 }));
if (!plan.ok) throw new Error('not laid out');
const { setup } = plan.value;

const landingAt = (speed: number, outcome: PhoneLanding['outcome'] = 'upright inside limit'): PhoneLanding => ({
  outcome,
  path: [
    [setup.start.x, setup.start.y],
    [setup.start.x + 9, 2],
  ],
  contact: { speed, descentRate: 1, tip: 2, upTo: 6 },
});

/** Where marks stand on the sheet: rings begin at their right, crosses at their left. */
function marksIn({ markup, viewBox }: { markup: string; viewBox: string }): readonly number[] {
  const width = Number(viewBox.split(' ')[2]);
  const marks = [...markup.matchAll(/<path d="M([\d.]+) [^"]*"[^>]*stroke="var\(--ink\)"/g)].map(([, x]) => Number(x));
  // the last line in ink is the axis
  return marks.slice(0, -1).map((x) => x / width);
}

describe('the path of a landing', () => {
  it.each([1, 2, 39, 40, 41, 500, 5000])('of %i points keeps the first, the last and at most 40, in order', (count) => {
    const path = keepPath();
    const points = Array.from({ length: count }, (_, i): PathPoint => [i, 5000 - i]);
    for (const point of points) path.add(point);
    const kept = path.points();
    expect(kept.length).toBeLessThanOrEqual(MOST_POINTS);
    expect(kept.length).toBeGreaterThanOrEqual(Math.min(count, MOST_POINTS / 2));
    expect([kept[0], kept.at(-1)]).toEqual([points[0], points.at(-1)]);
    expect(kept.map(([x]) => x)).toEqual(kept.map(([x]) => x).toSorted((a, b) => a - b));
  });

  it('is taken by the reader of landings as the phone keeps it', () => {
    const path = keepPath();
    for (let i = 0; i < 777; i++) path.add([i / 3, 100 - i / 9]);
    const landing = { outcome: 'gear overload', path: path.points() };
    expect(parsePhoneLanding(JSON.parse(JSON.stringify(landing)))).toEqual({ ok: true, value: landing });
    // the guard of the server takes bodies of 2 kB
    expect(JSON.stringify(landing).length).toBeLessThan(1000);
  });
});

describe('the landings of a hall', () => {
  it('stand against the tip limit of their own arrival', () => {
    expect(shareOf({ speed: 1, descentRate: 1, tip: 2, upTo: 6 })).toBe(0.5);
    // it tips at no speed that was looked at: at most so much of one
    expect(shareOf({ speed: 1, descentRate: 1, upTo: 4 })).toBe(0.25);
    // it tips without speed, or was beyond what is simulated
    expect(shareOf({ speed: 0, descentRate: 1, tip: 0, upTo: 6 })).toBe(Infinity);
    expect(shareOf({ speed: 99, descentRate: 1 })).toBe(Infinity);
  });

  it('are dots to the left of the line below the tip limit, to the right of it from there on', () => {
    const [below] = marksIn(drawDots([landingAt(1.99)]));
    const [above] = marksIn(drawDots([landingAt(2)]));
    const [farBeyond] = marksIn(drawDots([landingAt(90)]));
    expect(below).toBeLessThan(PLACES.limit);
    expect(above).toBeGreaterThan(PLACES.limit);
    expect(farBeyond).toBeGreaterThan(PLACES.beyond);
    expect(farBeyond).toBeLessThanOrEqual(1);
  });

  it('are drawn one line each, two hundred of them as well as none, wherever they ended', () => {
    const far = { ...landingAt(3, 'off site'), path: [[setup.start.x, setup.start.y] as const, [9000, 1] as const] };
    for (const landings of [[], [far], Array.from({ length: 200 }, (_, i) => landingAt(i / 40))]) {
      const { markup } = drawPaths(setup, landings);
      expect(markup.match(/var\(--pencil\)/g) ?? []).toHaveLength(landings.length);
      expect(markup + drawDots(landings).markup).not.toMatch(/NaN|Infinity|undefined/);
    }
  });
});
