import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { enlargementAt } from '../../../client/camera/enlargement.ts';
import { Follower, frameSubject, type Subject } from '../../../client/camera/follow.ts';
import { SectionCamera } from '../../../client/camera/sectionCamera.ts';
import { rungsUpTo } from '../../../client/views/heightLadder.ts';
import { type Figure, figureOf } from '../../../client/views/lander/figure.ts';
import { firstLanding, LANDERS } from '../../../levels/index.ts';
import { drawingOf } from '../../support/descentDrawn.ts';
import { viewOf } from '../../support/flightView.ts';

const { setup } = firstLanding(1);
const FLAT = { ...setup.terrain, firstX: -200, spacing: 400, heights: [0, 0] };
/** The highest start [m]. */
const HIGHEST = 220;

/** A sheet with cards on both sides, from that of a phone to that of a hall. */
const sheets = fc
  .record({
    width: fc.integer({ min: 300, max: 2000 }),
    height: fc.integer({ min: 240, max: 1300 }),
    sides: fc.double({ min: 0, max: 0.25, noNaN: true }),
    unit: fc.constantFrom(1, 1.5, 2),
  })
  .map(({ width, height, sides, unit }) => {
    const camera = new SectionCamera();
    const covered = { left: sides * width, right: sides * width, top: 0, bottom: 0 };
    camera.size = { width: width * unit, height: height * unit, covered };
    return { camera, unit };
  });
const landers = fc.constantFrom(...LANDERS.map(figureOf));
const heights = fc.double({ min: 0, max: HIGHEST, noNaN: true });

/** What has to be in the picture of a lander whose feet are so high [m]. */
function subjectAt(figure: Figure, height: number): Subject {
  const view = viewOf({ height, y: height + figure.centerHeight, x: 3 });
  const drawing = drawingOf({ view: () => view, terrain: () => FLAT, figure });
  const subject = drawing.advance(0, 0.016);
  if (subject === undefined) throw new Error('nothing is drawn of a view that is there');
  return subject;
}

/** How fast pilots let a lander sink from so high [m/s]. */
function sinkRate(height: number): number {
  return Math.min(4.5, 0.8 + 0.09 * height);
}

describe('the picture over a fall', () => {
  it('comes nearer all the way down, section and lander both, and has them on the sheet', () => {
    fc.assert(
      fc.property(sheets, landers, heights, heights, ({ camera, unit }, lander, a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        const scales = [high, low].map((height) => {
          const subject = subjectAt(lander, height);
          camera.framing = frameSubject(subject, camera, unit);
          expect(camera.sheetY(subject.y + subject.reach)).toBeGreaterThan(0);
          expect(camera.sheetY(0)).toBeLessThan(camera.size.height);
          expect(camera.sheetX(3)).toBeCloseTo(camera.size.width / 2, 6);
          return { section: camera.framing.scale, lander: camera.framing.scale * enlargementAt(height) };
        });
        const [above, below] = scales;
        expect(below!.section).toBeGreaterThanOrEqual(above!.section * (1 - 1e-9));
        expect(below!.lander).toBeGreaterThanOrEqual(above!.lander * (1 - 1e-9));
      }),
    );
  });

  it('has no step: a thousandth of the height changes the scale by no more than that', () => {
    fc.assert(
      fc.property(sheets, landers, heights, ({ camera, unit }, lander, height) => {
        const [before, after] = [height, 0.999 * height].map(
          (at) => frameSubject(subjectAt(lander, at), camera, unit).scale,
        );
        expect(after! / before!).toBeLessThanOrEqual(1.0011);
      }),
    );
  });

  it('is followed without falling behind: of a lander that is flown down the picture is never a twentieth too near or too far', () => {
    fc.assert(
      fc.property(
        sheets,
        landers,
        fc.double({ min: 0.6, max: 1.3, noNaN: true }),
        fc.double({ min: 5, max: 90, noNaN: true }),
        ({ camera, unit }, lander, haste, height) => {
          const follower = new Follower(camera);
          for (let at = height; at > 0; at -= (haste * sinkRate(at)) / 30) {
            const subject = subjectAt(lander, at);
            follower.step(subject, 1 / 30, unit);
            const off = camera.framing.scale / frameSubject(subject, camera, unit).scale;
            expect(Math.abs(off - 1)).toBeLessThan(1 / 20);
          }
        },
      ),
      { numRuns: 15 },
    );
  });

  it('draws a lander larger about its feet: they stay where they are', () => {
    fc.assert(
      fc.property(heights, fc.double({ min: -50, max: 50, noNaN: true }), (height, x) => {
        const camera = new SectionCamera();
        camera.size = { ...camera.size, width: 1280, height: 720 };
        camera.framing = { x: 1, y: 20, scale: 7 };
        const nearer = camera.enlarged(enlargementAt(height), x, height);
        expect(nearer.sheetX(x)).toBeCloseTo(camera.sheetX(x), 6);
        expect(nearer.sheetY(height)).toBeCloseTo(camera.sheetY(height), 6);
        expect(nearer.sheetX(x + 1) - nearer.sheetX(x)).toBeCloseTo(7 * enlargementAt(height), 6);
      }),
    );
  });
});

describe('the ladder of heights', () => {
  const scales = fc.double({ min: 0.6, max: 300, noNaN: true });

  it('has rungs at even heights from the ground up, the nearest of which are told apart', () => {
    fc.assert(
      fc.property(scales, (perUnit) => {
        const seen = rungsUpTo(700 / perUnit, perUnit).filter(({ strength }) => strength > 0);
        expect(seen.length).toBeGreaterThan(3);
        const apart = seen.slice(1).map(({ at }, i) => at - seen[i]!.at);
        for (const one of apart) expect(one).toBeCloseTo(apart[0]!, 9);
        expect(apart[0]! * perUnit).toBeGreaterThan(5);
      }),
    );
  });

  it('has figures far enough apart to be read, and always some', () => {
    fc.assert(
      fc.property(scales, (perUnit) => {
        const figured = rungsUpTo(700 / perUnit, perUnit).filter(({ hasFigure }) => hasFigure);
        expect(figured.length).toBeGreaterThan(0);
        figured.slice(1).forEach(({ at }, i) => expect((at - figured[i]!.at) * perUnit).toBeGreaterThanOrEqual(46));
      }),
    );
  });

  it('lets rungs come and go softly: a hundredth nearer changes none by more than a tenth', () => {
    fc.assert(
      fc.property(scales, (perUnit) => {
        const before = new Map(rungsUpTo(700 / perUnit, perUnit).map(({ at, strength }) => [at, strength]));
        for (const { at, strength } of rungsUpTo(690 / perUnit, 1.01 * perUnit))
          expect(Math.abs(strength - (before.get(at) ?? 0))).toBeLessThan(0.1);
      }),
    );
  });
});
