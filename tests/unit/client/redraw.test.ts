import { describe, expect, it } from 'vitest';
import { Redraw } from '../../../client/scenes/redraw.ts';
import type { TableView } from '../../../engine/table/index.ts';
import { drawingOf } from '../../support/descentDrawn.ts';
import { viewOf } from '../../support/flightView.ts';

/** What the picture of the last of these views depends on, each shown for a second. */
function pictureOf(...views: readonly TableView[]): string {
  let view = views[0]!;
  const drawing = drawingOf({ view: () => view, still: () => false });
  views.forEach((next, second) => {
    view = next;
    for (let frame = 0; frame < 60; frame += 1) drawing.advance(1000 * second + (1000 / 60) * frame, 1 / 60);
  });
  return drawing.picture;
}

const LEG = { footX: 1, footY: 28, footZ: 0, inContact: false, stroke: 0, strokeUsed: 0, usedUp: false, load: 0 };

/** Its height known to so many meters. */
function believed(height: number): TableView {
  const map = { firstX: -200, spacing: 400, heights: [0, 0], sigma: 0.2 };
  return { ...viewOf({}), drawnIn: 'pencil', map, spread: { x: 1, height, vx: 0.1, vy: 0.1, angle: 0.01 } };
}

describe('a picture', () => {
  it('is drawn where it has changed, and once a second where it has not', () => {
    const redraw = new Redraw();
    const due = [0, 1, 2, 3, 59, 61, 62].map((frame) => redraw.isDue(frame < 3 ? 'one' : 'other', frame / 60));
    expect(due).toEqual([true, false, false, true, false, false, false]);
    expect(redraw.isDue('other', 64 / 60)).toBe(true);
  });

  it('is the same on hold, though every view that comes is a new one', () => {
    expect(pictureOf(viewOf({}), viewOf({}), viewOf({}))).toBe(pictureOf(viewOf({}), viewOf({})));
  });

  it.each<[string, TableView]>([
    ['the lander moves', viewOf({ x: 0.01 })],
    ['it leans', viewOf({ angle: 0.001 })],
    ['a leg gives', viewOf({ legs: [{ ...LEG, stroke: 0.01 }] })],
    ['thrust is set', viewOf({ thrust: 10 })],
    ['another thrust is ordered', viewOf({}, { thrustPercent: 50 })],
    ['the margin is another', viewOf({}, { margin: { limit: 1.2 } })],
    ['a spot is marked', { ...viewOf({}), site: { ground: 'as mapped', spot: { meters: 3, approach: 'either way' } } }],
    ['it is at rest', { ...viewOf({}), stage: 'resolved' }],
    ['it is believed', believed(1)],
  ])('is another one where %s', (_, view) => {
    expect(pictureOf(view)).not.toBe(pictureOf(viewOf({})));
  });

  it('is another one where the same is known less well', () => {
    expect(pictureOf(believed(2))).not.toBe(pictureOf(believed(1)));
  });
});
