import { refuse } from '../../../engine/result.ts';
import { describe, expect, it } from 'vitest';
import { SectionCamera } from '../../../client/camera/sectionCamera.ts';
import { PencilPen } from '../../../client/ink/pencilPen.ts';
import { SvgPen } from '../../../client/ink/svgPen.ts';
import { surpriseWords } from '../../../client/panels/beliefTable.ts';
import { createPlanReader } from '../../../client/plan.ts';
import { figuresOf } from '../../../client/scenes/figures.ts';
import { BELIEF } from '../../../client/text/en.ts';
import { distance } from '../../../client/text/numbers.ts';
import { edgeTo } from '../../../client/views/edgeArrow.ts';
import type { TableView } from '../../../engine/table/index.ts';
import { firstLanding } from '../../../levels/index.ts';
import { drawingOf } from '../../support/descentDrawn.ts';
import { viewOf } from '../../support/flightView.ts';

const SPREAD = { x: 2, height: 1.5, vx: 0.1, vy: 0.1, angle: 0.01 };
const MAP = { firstX: -200, spacing: 10, heights: Array.from({ length: 41 }, () => 0), sigma: 0.2 };

function inPencil(view: TableView): TableView {
  return { ...view, drawnIn: 'pencil', map: MAP, spread: SPREAD };
}

/** Draws one view after the other and gives the markup of the last. */
function drawn(...views: readonly TableView[]): string {
  return drawnOn({ width: 1280, height: 720 }, views).markup;
}

function drawnOn(window: { readonly width: number; readonly height: number }, views: readonly TableView[]): SvgPen {
  let view = views[0]!;
  const drawing = drawingOf({ view: () => view });
  const camera = new SectionCamera();
  camera.size = { ...camera.size, ...window };
  views.forEach((next, index) => {
    view = next;
    for (let frame = 0; frame < 10; frame += 1) drawing.advance(1000 * index + 100 * frame, 0.016);
  });
  const pen = new SvgPen(1, 'test');
  for (const draw of drawing.layers) draw({ pen, camera, time: 0, still: true });
  return pen;
}

/** Which words of a drawing lie over others, as wide as the pen takes them to be. */
function wordsOver(pen: SvgPen): readonly string[] {
  const boxes = [
    ...pen.markup.matchAll(/<text x="([-\d.]+)" y="([-\d.]+)" font-size="([\d.]+)" text-anchor="(\w+)"[^>]*>([^<]*)/g),
  ].map(([, x, y, size, anchor = 'start', words = '']) => {
    const width = pen.widthOf(words, { size: Number(size) });
    const left = Number(x) - { start: 0, middle: width / 2, end: width }[anchor]!;
    return {
      words,
      left,
      right: left + width,
      top: Number(y) - 0.78 * Number(size),
      bottom: Number(y) + 0.26 * Number(size),
    };
  });
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
      .map((b) => `${a.words} over ${b.words}`),
  );
}

describe('a pen in pencil', () => {
  it('draws a full line of ink thinner, dashed and in pencil, and leaves words as they are', () => {
    const pen = new SvgPen(1, 'test');
    const pencil = new PencilPen(pen);
    pencil.moveTo(0, 0);
    pencil.lineTo(9, 0);
    pencil.paint({ stroke: 'ink', width: 'outline' });
    pencil.text('words', 0, 0, { size: 12 });
    expect(pen.markup).toContain('stroke="var(--pencil)" stroke-width="1.4"');
    expect(pen.markup).toContain('stroke-dasharray="4 3"');
    expect(pen.markup).toContain('fill="var(--ink)">words');
  });

  it('fills nothing where it draws bare outlines', () => {
    const pen = new SvgPen(1, 'test');
    const pencil = new PencilPen(pen, { bare: true });
    pencil.moveTo(0, 0);
    pencil.lineTo(9, 0);
    pencil.paint({ fill: 'card', stroke: 'ink' });
    expect(pen.markup).toContain('fill="none"');
  });
});

describe('a descent in pencil', () => {
  const flying = inPencil(viewOf({ vx: 1 }));

  it('is drawn in ink and without a hatch where what is seen is true', () => {
    const markup = drawn(viewOf({ vx: 1 }));
    expect(markup).toContain('stroke="var(--ink)" stroke-width="2.8"');
    expect(markup).not.toContain('believed');
    expect(markup).not.toContain('±');
  });

  it('has no full line of ink of the lander and the ground, and says so', () => {
    const markup = drawn(flying);
    expect(markup).not.toContain('stroke="var(--ink)" stroke-width="2.8"');
    expect(markup).toContain(BELIEF.hatch);
    expect(markup).toContain('map ±\u202f0.4\u202fm');
    expect(markup).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('says how far off the height may be: two standard deviations', () => {
    expect(figuresOf(flying, 'right').height).toBe('30.0 ± 3.0\u202fm');
    expect(figuresOf(viewOf({}), 'right').height).toBe('30.0\u202fm');
  });

  it('lies under the truth at rest, with how far off it was', () => {
    const rest = { ...viewOf({ tick: 700, x: 3, y: 2, height: 0, vy: 0 }), stage: 'resolved' as const };
    const markup = drawn(inPencil(viewOf({ tick: 690, x: 5, y: 6, height: 4, vy: 0 })), rest);
    expect(markup).toContain('believed at the end: 2.0\u202fm right, 4.0\u202fm higher');
    expect(markup).toContain('>true</text>');
    expect(markup).toContain('stroke="var(--ink)" stroke-width="2.8"');
    expect(drawn(rest)).not.toContain('believed');
  });

  it.each([
    [390, 330],
    [390, 240],
    [320, 220],
  ])('at rest has no words over others on a sheet of %d by %d', (width, height) => {
    const at = { tick: 660, x: 3, vx: 0.2, descentRate: 1, angle: 0, rate: 0, slope: 0.02, mass: 2000 };
    const touchdown = { ...at, firstFoot: 'both' } as const;
    const rest = { ...viewOf({ tick: 700, x: 3, y: 2, height: 0, vy: 0, touchdown }), stage: 'resolved' as const };
    for (const right of [-12, -5, -2, -0.6, 0, 0.3, 1.5, 4, 9])
      for (const up of [-1, 0, 0.4, 2, 6]) {
        const believed = inPencil(viewOf({ tick: 690, x: 3 + right, y: 2 + up, height: up, vy: 0 }));
        expect({ right, up, over: wordsOver(drawnOn({ width, height }, [believed, rest])) }).toEqual({
          right,
          up,
          over: [],
        });
      }
  });

  it('is pointed at from the edge of the sheet, with its words there, where it lies beyond', () => {
    const rest = { ...viewOf({ tick: 700, x: 3, y: 2, height: 0, vy: 0 }), stage: 'resolved' as const };
    const markup = drawn(inPencil(viewOf({ tick: 690, x: 3, y: -28, height: 4, vy: 0 })), rest);
    const [, y] = /y="([-\d.]+)"[^>]*>believed at the end: 30\.0\u202fm lower</u.exec(markup) ?? [];
    expect(Number(y)).toBeGreaterThan(600);
    expect(Number(y)).toBeLessThan(720);
  });

  it('has its arrow at the nearest edge of the free sheet, and none where it can be seen', () => {
    const camera = new SectionCamera();
    camera.size = { width: 1280, height: 720, covered: { left: 200, top: 0, right: 300, bottom: 100 } };
    const sheet = { pen: new SvgPen(1, 'test'), camera };
    expect(edgeTo(sheet, { x: 600, y: 600 })).toBeUndefined();
    expect(edgeTo(sheet, { x: 600, y: 2000 })).toEqual({ tip: { x: 600, y: 606 }, tail: { x: 600, y: 572 } });
    expect(edgeTo(sheet, { x: -500, y: 300 })).toEqual({ tip: { x: 214, y: 300 }, tail: { x: 248, y: 300 } });
  });

  it('is forgotten when another descent begins', () => {
    const rest = { ...viewOf({ tick: 700, x: 3, y: 2, height: 0 }), stage: 'resolved' as const };
    expect(drawn(flying, rest, viewOf({ tick: 0 }))).not.toContain('believed');
  });
});

describe('how far off a belief was, in words', () => {
  it.each([
    [0.02, -0.03, 'believed at the end: just there'],
    [-0.4, 0, 'believed at the end: 0.4\u202fm left'],
    [0, -1.2, 'believed at the end: 1.2\u202fm lower'],
  ])('of %d m right and %d m up', (right, up, words) => {
    expect(BELIEF.lander(right, up, distance)).toBe(words);
  });
});

/** A table at which no drill is played. */
const NO_DRILL = { drillText: () => Promise.resolve(refuse({ code: 'table/no-drill', reason: '' } as const)) };

describe('the plan of a view', () => {
  it('is laid out anew once the true seed is told, and once only', () => {
    const read = createPlanReader(NO_DRILL);
    const { title, landerId, siteId, worldId, choice } = firstLanding(1);
    const planOf = (seed: number) => ({ title, landerId, siteId, worldId, seed, choice: { ...choice, seed } });
    const before = read(planOf(0));
    const after = read(planOf(7));
    expect(after.seed).toBe(7);
    expect(after.setup.terrain.heights).not.toEqual(before.setup.terrain.heights);
    expect(read(planOf(7))).toBe(after);
  });
});

describe('the surprise in words', () => {
  const belief = { vx: 0.5, descentRate: 1, angle: 0, height: 0.1 };

  it.each([
    [{ ...belief, utilisation: 0.2 }, 0.65, /nearer to tipping than the crew believed, at 65.% .* and not 20.%/],
    [{ ...belief, utilisation: 0.65 }, 0.2, /farther from tipping than the crew believed, at 20.% .* and not 65.%/],
    [{ ...belief, utilisation: 0.2 }, 0.22, /^It touched down at 22.% .* about as was believed/],
    [belief, undefined, /where the crew believed the ground to be/],
    [{ ...belief, height: 56.7, utilisation: 0.2 }, 0.65, /believed it still 56.7.m up/],
    [{ ...belief, height: -1.2 }, undefined, /down long since, and 1.2.m lower than it was/],
  ])('of %j against a true share of %s', (believed, utilisation, words) => {
    expect(surpriseWords(believed, utilisation === undefined ? {} : { utilisation })).toMatch(words);
  });
});
