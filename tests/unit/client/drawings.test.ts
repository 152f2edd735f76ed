import { describe, expect, it } from 'vitest';
import { NO_INSETS, SectionCamera } from '../../../client/camera/sectionCamera.ts';
import { SvgPen } from '../../../client/ink/svgPen.ts';
import { drawSpeedScale } from '../../../client/panels/speedScale.ts';
import { drawTiltDial } from '../../../client/panels/tiltDial.ts';
import { drawLander } from '../../../client/views/lander/drawLander.ts';
import { figureOf } from '../../../client/views/lander/figure.ts';
import { drawStart } from '../../../client/views/startSheet.ts';
import { massProperties } from '../../../engine/lander/index.ts';
import { LANDERS } from '../../../levels/index.ts';

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
    const foot = (side: number, crushed: number) => ({ x: side * figure.halfStance, y: crushed, inContact: true });
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

describe('the drawings on the sheets', () => {
  it('are whole for a start page', () => {
    const markup = drawStart();
    expect(markup.length).toBeGreaterThan(5000);
    expect(markup).not.toMatch(NO_NUMBER);
  });

  it.each([
    { speed: 0.4, tripping: 2.15, cautious: 0.94 },
    { speed: 4.3, tripping: 2.1, cautious: 1.4 },
    { speed: 0.2, tripping: 0.21, cautious: 0.2 },
    { speed: 1.2, tripping: -0.4 },
    { speed: 0, tripping: 0 },
  ])('rule a speed scale for $speed against $tripping m/s', (finding) => {
    for (const width of [640, 340]) {
      const { markup, viewBox } = drawSpeedScale(finding, width);
      expect(markup).not.toMatch(NO_NUMBER);
      expect(viewBox).toMatch(/^0 \d+ \d+ \d+$/);
    }
  });

  it.each([
    { speed: 0.09, tripping: 2.05, cautious: 1.33 },
    { speed: 4.51, tripping: 2.01, cautious: 1.3 },
    { speed: 1, tripping: 2.4, cautious: 0.4 },
  ])('run no line of a limit through the words of the other, on a phone, for $speed m/s', (finding) => {
    const { markup } = drawSpeedScale(finding, 340);
    const lines = [...markup.matchAll(/d="M([\d.]+) ([\d.]+)L\1 110"[^>]*stroke-width="(?:2\.8|1\.4)"/g)];
    const words = [...markup.matchAll(/<text x="([\d.]+)" y="([\d.]+)"[^>]*>([^<]* limit [^<]*)</g)];
    expect([lines.length, words.length]).toEqual([2, 2]);
    for (const [tag, x, y, text = ''] of words) {
      const size = Number(/font-size="([\d.]+)"/.exec(tag)?.[1]);
      const wide = 0.5 * size * text.length;
      const from = Number(x) - (tag.includes('text-anchor="end"') ? wide : 0);
      for (const [, lineX, top] of lines) {
        const isAcross = Number(lineX) > from && Number(lineX) < from + wide;
        expect(isAcross && Number(top) < Number(y)).toBe(false);
      }
    }
  });

  it.each([
    { limit: 0.78, used: 0.07, left: 0.71 },
    { limit: 0.78, used: -0.1, left: 0.88 },
    { limit: 0.78, used: 1.9, left: -1.12 },
  ])('lay a protractor for $left rad left of $limit', (finding) => {
    expect(drawTiltDial(finding)).not.toMatch(NO_NUMBER);
  });
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
