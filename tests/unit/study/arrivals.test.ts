import { describe, expect, it } from 'vitest';
import { simulatedArrivals, type ArrivalQuestion } from '../../../engine/study/arrivals.ts';
import { prepareTouchdown, runTouchdown } from '../../../engine/touchdown/index.ts';
import { toRadians } from '../../../engine/math/index.ts';
import { MOON, plane } from '../../support/touchDown.ts';
import { plainLander } from '../../support/plainLander.ts';

const [FRICTION, DESCENT, SPEED] = [0.8, 1.2, 0.6];

function landed(question: Partial<ArrivalQuestion>, azimuthDeg: number): readonly number[] {
  const arrivals = simulatedArrivals({
    lander: plainLander(),
    gravity: MOON,
    friction: FRICTION,
    descentRate: DESCENT,
    ...question,
  });
  if (typeof arrivals === 'string') throw new Error(arrivals);
  return arrivals.land(azimuthDeg, SPEED, FRICTION).strokes;
}

/** The lander as it is, traveling along +x, over ground that falls toward an azimuth. */
function onPlane(slopeDeg: number, fallDeg: number): readonly number[] {
  const prepared = prepareTouchdown(plainLander());
  if (!prepared.ok) throw new Error(JSON.stringify(prepared.error));
  const state = { horizontalSpeed: SPEED, descentRate: DESCENT, travelAzimuth: 0 };
  const ground = plane(FRICTION, toRadians(slopeDeg), toRadians(fallDeg));
  return runTouchdown(prepared.value, { gravity: MOON, ground, state }).strokes;
}

describe('an arrival', () => {
  it.each([
    { asked: { slopeDeg: 6 }, slope: 6, fall: 0 },
    { asked: { slopeDeg: -6 }, slope: 6, fall: 180 },
    { asked: { slopeDeg: 6, fallAzimuthDeg: 70 }, slope: 6, fall: 70 },
    { asked: { slopeDeg: -6, fallAzimuthDeg: 70 }, slope: 6, fall: 250 },
  ])('goes along the fall of the ground where nothing else is said, else as it is said: $asked', (given) => {
    landed(given.asked, 0).forEach((stroke, leg) =>
      expect(stroke).toBeCloseTo(onPlane(given.slope, given.fall)[leg]!, 9),
    );
  });

  it('turns lander and ground together: toward the next side of a square one it is the same with the legs one on', () => {
    const [ahead, aside] = [landed({ slopeDeg: 6 }, 0), landed({ slopeDeg: 6 }, 90)];
    aside.forEach((stroke, leg) => expect(stroke).toBeCloseTo(ahead[(leg + 3) % 4]!, 9));
  });
});
