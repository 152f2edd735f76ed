import { describe, expect, it } from 'vitest';
import { SectionCamera } from '../../../client/camera/sectionCamera.ts';
import { SvgPen } from '../../../client/ink/svgPen.ts';
import { readingText } from '../../../client/panels/readings.ts';
import { figuresOf } from '../../../client/scenes/figures.ts';
import { drawProtractor } from '../../../client/views/protractor.ts';
import type { TableView } from '../../../engine/table/index.ts';
import { drawingOf } from '../../support/descentDrawn.ts';
import { viewOf } from '../../support/flightView.ts';

function drawnBy(source: { readonly view: () => TableView; readonly figures: () => TableView }) {
  const drawing = drawingOf(source);
  const camera = new SectionCamera();
  camera.size = { ...camera.size, width: 1280, height: 720 };
  return (nowMs: number): string => {
    drawing.advance(nowMs, 0.016);
    const pen = new SvgPen(1, 'test');
    for (const draw of drawing.layers) draw({ pen, camera, time: 0, still: true });
    return pen.markup;
  };
}

/** Turned by this much about its center of mass, 2 m over its feet [rad]. */
function turned(angle: number): TableView {
  const foot = (side: 1 | -1) => ({
    footX: side * 2.4 * Math.cos(angle) + 2 * Math.sin(angle),
    footY: 2 + side * 2.4 * Math.sin(angle) - 2 * Math.cos(angle),
    footZ: 0,
    usedUp: false,
    inContact: false,
    stroke: 0,
    strokeUsed: 0,
    load: 0,
  });
  return viewOf({ y: 2, angle, vx: 1, legs: [foot(-1), foot(1)] });
}

/** Whether the protractor on a foot at 0 fills a wedge when the center of mass stands there [m]. */
function filled(centerX: number): boolean {
  const pen = new SvgPen(1, 'test');
  const reading = { foot: { x: 0, y: 0 }, center: { x: centerX, y: 2 }, side: 'right', words: '', alpha: 1 } as const;
  drawProtractor({ pen, camera: new SectionCamera(), time: 0, still: true }, reading);
  return pen.markup.includes('fill="var(--blue)"');
}

describe('a lander that turns over', () => {
  it('has no angle left to fall once it is past its balance', () => {
    expect(figuresOf(turned(-0.2), 'right').tilt).toMatch(/^\d+° to fall$/);
    expect(figuresOf(turned(-0.95), 'right').tilt).toBe('past its balance');
  });

  it('has no wedge filled between the upright and its line once that is past the upright', () => {
    expect(filled(-0.1)).toBe(true);
    expect(filled(0.1)).toBe(false);
  });
});

describe('the figures of one moment', () => {
  it('are the same on the drawing and on the card', () => {
    const view = viewOf({ height: 12.34, y: 12.34 });
    expect(figuresOf(view, 'right').height).toBe(readingText('height', view, { maxThrust: 1, burnPerImpulse: 1 }));
  });

  it('stay on the drawing for as long as they stay on the card, whatever the lander does meanwhile', () => {
    const shown = viewOf({ tick: 600, height: 30, y: 30 });
    const views = [600, 603, 606, 609].map((tick, i) => viewOf({ tick, height: 30 - i, y: 30 - i }));
    let [now = shown] = views;
    let figures = shown;
    const draw = drawnBy({ view: () => now, figures: () => figures });
    for (const [i, view] of views.entries()) {
      now = view;
      expect(draw(50 * i)).toMatch(/>30\.0.m</);
    }
    figures = now;
    const markup = draw(200);
    expect(markup).toMatch(/>27\.0.m</);
    expect(markup).not.toMatch(/>30\.0.m</);
  });
});
