import { describe, expect, it } from 'vitest';
import { Follower, frameSubject } from '../../../client/camera/follow.ts';
import { SectionCamera } from '../../../client/camera/sectionCamera.ts';

const REACH = 1.6;

function camera(width: number, height: number, left = 0, right = 0): SectionCamera {
  const made = new SectionCamera();
  made.size = { width, height, covered: { left, right, top: 0, bottom: 0 } };
  return made;
}

const SHEETS = [
  { name: 'a wide window with cards on both sides', made: () => camera(1256, 696, 228, 296) },
  { name: 'a phone held upright', made: () => camera(372, 440) },
];

describe.each(SHEETS)('the picture on $name', ({ made }) => {
  it.each([0, 2, 8, 16])('holds the lander %d m up and the ground below it', (height) => {
    const sheet = made();
    const y = height + 1.5;
    sheet.framing = frameSubject({ x: 30, y, reach: REACH, groundY: 0 }, sheet, 1);
    expect(sheet.sheetY(y + REACH)).toBeGreaterThan(0);
    expect(sheet.sheetY(0)).toBeLessThan(sheet.size.height);
    expect(sheet.sheetY(0)).toBeGreaterThan(sheet.sheetY(y));
    const middle = (sheet.size.covered.left + sheet.size.width - sheet.size.covered.right) / 2;
    expect(sheet.sheetX(30)).toBeCloseTo(middle, 6);
  });

  it('comes nearer as the lander comes down, and never farther', () => {
    const sheet = made();
    let before = 0;
    for (let height = 20; height >= 0; height -= 0.5) {
      const { scale } = frameSubject({ x: 0, y: height + 1.5, reach: REACH, groundY: 0 }, sheet, 1);
      expect(scale).toBeGreaterThanOrEqual(before);
      before = scale;
    }
    expect(before).toBeGreaterThan(0);
  });
});

describe('meters and pixels', () => {
  it('are each other’s inverse', () => {
    const sheet = camera(1256, 696, 228, 296);
    sheet.framing = { x: 12, y: 3, scale: 41 };
    expect(sheet.sectionX(sheet.sheetX(-7.25))).toBeCloseTo(-7.25, 9);
    expect(sheet.sectionY(sheet.sheetY(2.5))).toBeCloseTo(2.5, 9);
  });
});

describe('the follower', () => {
  it('cuts to a new descent and then moves without overshooting', () => {
    const sheet = camera(1000, 700);
    const follower = new Follower(sheet);
    follower.step({ x: 0, y: 20, reach: REACH, groundY: 0 }, 1 / 60, 1);
    const far = sheet.framing.scale;
    const goal = frameSubject({ x: 0, y: 5, reach: REACH, groundY: 0 }, sheet, 1).scale;
    let before = far;
    for (let frame = 0; frame < 240; frame += 1) {
      follower.step({ x: 0, y: 5, reach: REACH, groundY: 0 }, 1 / 60, 1);
      expect(sheet.framing.scale).toBeGreaterThanOrEqual(before - 1e-9);
      expect(sheet.framing.scale).toBeLessThanOrEqual(goal * (1 + 1e-6));
      before = sheet.framing.scale;
    }
    expect(goal).toBeGreaterThan(far);
    expect(before / goal).toBeCloseTo(1, 3);
  });
});
