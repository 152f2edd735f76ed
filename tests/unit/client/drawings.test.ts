import { PLAIN_TOUCHDOWN } from '../../support/plainTouchdown.ts';
import { describe, expect, it } from 'vitest';
import { NO_INSETS, SectionCamera } from '../../../client/camera/sectionCamera.ts';
import { SvgPen } from '../../../client/ink/svgPen.ts';
import { drawSpeedScale } from '../../../client/panels/speedScale.ts';
import { drawFork, type ForkLines } from '../../../client/panels/forkDrawing.ts';
import { CONTACT_HEIGHT, drawContact } from '../../../client/panels/contactDrawing.ts';
import { drawLander } from '../../../client/views/lander/drawLander.ts';
import { figureOf } from '../../../client/views/lander/figure.ts';
import { drawLanderPicture, drawSitePicture } from '../../../client/views/choicePictures.ts';
import { drawStart } from '../../../client/views/startSheet.ts';
import { massProperties } from '../../../engine/lander/index.ts';
import { LANDERS, SITES } from '../../../levels/index.ts';

/** What a drawing must not contain: something that was to be a number and is none. */
const NO_NUMBER = /NaN|Infinity|undefined/;

describe.each(LANDERS.map((lander) => ({ lander, id: lander.id })))('the drawing of $id', ({ lander }) => {
  const figure = figureOf(lander);

  it('stands its outer feet at the least half stance of its legs', () => {
    const { center } = massProperties(lander);
    const reach = Math.max(...lander.legs.map(({ footpad: [x, y] }) => Math.hypot(x - center[0], y - center[1])));
    expect(figure.halfStance).toBeGreaterThan(0.4 * reach);
    expect(figure.halfStance).toBeLessThanOrEqual(reach + 1e-9);
  });

  it.each([0, 0.3, -2.9])('has only numbers at an attitude of %d rad, with one leg used up', (angle) => {
    const pen = new SvgPen(1, 'test');
    const camera = new SectionCamera();
    camera.size = { width: 900, height: 700, covered: NO_INSETS };
    const foot = (side: number, crushed: number) => ({
      x: side * figure.halfStance,
      y: crushed,
      inContact: true,
      broken: crushed > 0,
    });
    drawLander(pen, camera, figure, {
      x: 0,
      y: figure.centerHeight,
      angle,
      rate: 0,
      feet: [foot(-1, 0), foot(1, figure.stroke)],
      slope: 0.05,
      fill: 0.4,
      settled: 1,
    });
    expect(pen.markup.length).toBeGreaterThan(5000);
    expect(pen.markup).not.toMatch(NO_NUMBER);
  });
});

describe('the pictures of the choice', () => {
  it.each(LANDERS.map((lander) => ({ id: lander.id, lander })))('have only numbers: $id', ({ lander }) => {
    const { markup } = drawLanderPicture(lander);
    expect(markup).not.toMatch(NO_NUMBER);
    // as tall as its highest point
    const top = Math.max(...lander.hull.map(([, , z]) => z));
    expect(markup).toContain(`${top.toFixed(1)}\u202fm`);
  });

  it('have only numbers, and dots where the ground is dust: sites', () => {
    const lengths = SITES.map((site) => {
      const { markup } = drawSitePicture(site, 1);
      expect(markup).not.toMatch(NO_NUMBER);
      return { soft: site.ground.soil !== undefined, length: markup.length };
    });
    const soft = lengths.filter((one) => one.soft).map(({ length }) => length);
    const rigid = lengths.filter((one) => !one.soft).map(({ length }) => length);
    expect(soft).toHaveLength(1);
    expect(Math.min(...soft)).toBeGreaterThan(2 * Math.max(...rigid));
  });
});

describe('the drawings on the sheets', () => {
  it('are whole for a start page', () => {
    const markup = drawStart();
    expect(markup.length).toBeGreaterThan(5000);
    expect(markup).not.toMatch(NO_NUMBER);
  });

  it.each([
    { speed: 0.4, tip: 2.15, upTo: 4 },
    { speed: 4.3, tip: 2.1, upTo: 4, closedForm: 3.1 },
    { speed: 1.2, tip: 0, upTo: 4 },
    { speed: 0, tip: undefined, upTo: 3.5, closedForm: 0 },
    { speed: 0.7, tip: 2.1, upTo: 4, stated: 0.45 },
    { speed: 0.7, tip: 0.6, upTo: 4, stated: 10 },
  ])('rule a speed scale for $speed against $tip m/s, and hatch only what is beyond a limit', (finding) => {
    for (const width of [480, 340]) {
      const { markup, viewBox } = drawSpeedScale(finding, width);
      expect(markup).not.toMatch(NO_NUMBER);
      expect(viewBox).toMatch(/^0 0 \d+ \d+$/);
      expect(markup.includes('var(--shade)')).toBe(finding.tip !== undefined);
      // what is no limit of the lander is dashed, and nothing else is
      expect(markup.includes('stroke-dasharray')).toBe(finding.closedForm !== undefined);
      const ends = [...markup.matchAll(/<text x="([\d.]+)"[^>]*font-size="([\d.]+)"[^>]*>([^<]*)</g)].map(
        ([, x, size, words = '']) => Number(x) + 0.4 * Number(size) * words.length,
      );
      expect(Math.max(...ends)).toBeLessThan(width + 2);
    }
  });

  it.each(LANDERS.map((lander) => [lander.name, lander] as const))(
    'draw the contact of %s, and cross out a leg that gave way',
    (_, lander) => {
      const figure = figureOf(lander);
      const limit = { tip: 0.8, tolerance: 0.01, upTo: 3, friction: 1, first: 'tip', closedForm: 1 } as const;
      for (const [angle, height] of [0, 0.5, -2.5].flatMap((lean) =>
        Object.values(CONTACT_HEIGHT).map((high) => [lean, high] as const),
      )) {
        const contact = {
          arrival: { ...PLAIN_TOUCHDOWN, angle, after: 'first' },
          limit,
          band: 'outside',
          callout: 'outside',
        } as const;
        const whole = drawContact(contact, figure, { broken: [false, false], fill: 0.5, height }).markup;
        const crossed = drawContact(contact, figure, { broken: [true, false], fill: 0.5, height }).markup;
        expect(whole + crossed).not.toMatch(NO_NUMBER);
        expect(crossed).toContain('gave way');
        expect(whole).not.toContain('gave way');
        expect(whole).toContain('tips from here');
        expect(whole).toContain('slope 5.7° at contact');
      }
    },
  );
});

describe('a pen that writes SVG', () => {
  it('draws a full circle as two half arcs', () => {
    const pen = new SvgPen(1, 'test');
    pen.arc(10, 10, 5, 0, 2 * Math.PI);
    pen.paint({ stroke: 'ink' });
    expect(pen.markup).toContain('d="M15 10A5 5 0 0 1 5 10A5 5 0 0 1 15 10"');
  });

  it('escapes words', () => {
    const pen = new SvgPen(1, 'test');
    pen.text('a < b & c', 0, 0, { size: 10 });
    expect(pen.markup).toContain('a &lt; b &amp; c');
  });
});

/** Straight down from so high to the ground, within so many seconds. */
function falling(height: number, seconds: number) {
  return Array.from({ length: 11 }, (_, i) => ({ time: (i * seconds) / 10, value: height - (i * height) / 10 }));
}

describe('the drawing of a fork', () => {
  const lines: ForkLines = {
    happened: falling(50, 20),
    forked: falling(50, 30),
    parted: 8,
    partedWords: 'it fails',
    forkedName: 'healthy altimeter',
  };

  it('has what happened as a full line and the fork dashed, each with its name, and says when it failed', () => {
    const { markup } = drawFork(lines, 480);
    expect(markup).not.toMatch(NO_NUMBER);
    const paths = [...markup.matchAll(/<path d="M([\d.]+) [^"]*" ([^>]*)stroke="var\(--ink\)"([^>]*)\/>/g)];
    expect(paths.some(([, , , style]) => style?.includes('stroke-dasharray'))).toBe(true);
    for (const words of ['as it was', 'healthy altimeter', 'it fails']) expect(markup).toContain(`>${words}<`);
    expect(markup).not.toContain('doubted');
    expect(drawFork({ ...lines, doubted: 11 }, 480).markup).toContain('>doubted<');
  });

  it.each([
    ['that parted by nothing', { forked: falling(50, 20) }],
    ['that failed at once', { failed: 0 }],
    ['of which one ended before the other began to differ', { happened: falling(50, 8.1) }],
    ['at no speed at all', { happened: falling(0, 20), forked: falling(0, 20) }],
    ['below nothing', { happened: falling(-2, 20), forked: falling(1, 20) }],
  ])('has only numbers for two descents %s, and every word on the sheet', (_, said) => {
    for (const width of [340, 480]) {
      const { markup } = drawFork({ ...lines, ...said }, width);
      expect(markup).not.toMatch(NO_NUMBER);
      const places = [...markup.matchAll(/<text x="(-?[\d.]+)" y="(-?[\d.]+)"/g)];
      expect(places.length).toBeGreaterThan(5);
      for (const [, x, y] of places) {
        expect(Number(x)).toBeGreaterThanOrEqual(0);
        expect(Number(x)).toBeLessThan(width);
        expect(Number(y)).toBeGreaterThan(0);
        expect(Number(y)).toBeLessThanOrEqual(210);
      }
    }
  });
});
