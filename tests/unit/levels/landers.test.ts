import { describe, expect, it } from 'vitest';
import { massProperties, type Lander } from '../../../engine/lander/index.ts';
import { tripLimitByAzimuth } from '../../../engine/pivot/index.ts';
import { landerStance, leastStaticTilt } from '../../../engine/statics/index.ts';
import { findWorld } from '../../../engine/worlds.ts';
import { findLander, LANDERS } from '../../../levels/index.ts';

const moon = findWorld('moon')?.gravity ?? 0;
const earth = findWorld('earth')?.gravity ?? 0;

function heightOf(lander: Lander): number {
  return Math.max(...lander.hull.map((point) => point[2]));
}

function widthOf(lander: Lander, axis: 0 | 1): number {
  const feet = lander.legs.map((leg) => leg.footpad[axis]);
  return Math.max(...feet) - Math.min(...feet);
}

/** Least level trip limit on the Moon [m/s]. */
function tripLimitOf(lander: Lander): number {
  const stance = landerStance(lander);
  if (stance.kind !== 'stands') throw new Error(stance.reason);
  const { least } = tripLimitByAzimuth(stance, massProperties(lander), { gravity: moon, slope: 0 });
  if (least.kind !== 'limit') throw new Error('it stands on level ground');
  return least.plastic.horizontal;
}

/** Energy that all legs take by crushing, less what gravity adds on the way down, as a speed of descent [m/s]. */
function bottomingSpeed(lander: Lander, gravity: number): number {
  const { mass } = massProperties(lander);
  let [work, stroke] = [0, 0];
  for (const leg of lander.legs) {
    for (const stage of leg.stages) {
      work += stage.force * stage.stroke;
      stroke += stage.stroke / lander.legs.length;
    }
  }
  return Math.sqrt((2 * (work - mass * gravity * stroke)) / mass);
}

function lander(id: string): Lander {
  const found = findLander(id);
  if (found === undefined) throw new Error(id);
  return found;
}

describe('the example landers', () => {
  it('[LA15] are three, found by id', () => {
    expect(LANDERS.map(({ id }) => id)).toEqual(['trivet', 'steeple', 'bolster']);
    expect(findLander('bolster')?.name).toBe('Bolster');
    expect(findLander('gantry')).toBeUndefined();
  });

  it('[LA15] Trivet is squat, on four legs, and trips at some two meters per second', () => {
    const trivet = lander('trivet');
    expect(trivet.legs).toHaveLength(4);
    expect(massProperties(trivet).mass).toBeGreaterThan(1900);
    expect(massProperties(trivet).mass).toBeLessThan(2100);
    expect(heightOf(trivet)).toBeCloseTo(3.1, 1);
    expect(widthOf(trivet, 0) / 2).toBeGreaterThan(1.5);
    expect(widthOf(trivet, 0) / 2).toBeLessThan(1.8);
    expect(tripLimitOf(trivet)).toBeGreaterThan(1.8);
    expect(tripLimitOf(trivet)).toBeLessThan(2.3);
  });

  it('[LA15] Steeple is tall, on six legs, with stacked tanks, and falls at a lesser tilt than Trivet', () => {
    const steeple = lander('steeple');
    expect(steeple.legs).toHaveLength(6);
    expect(massProperties(steeple).mass).toBeGreaterThan(11_000);
    expect(massProperties(steeple).mass).toBeLessThan(13_000);
    expect(heightOf(steeple)).toBeGreaterThan(10);
    const [lower, upper] = steeple.tanks;
    expect(upper?.bottomHeight).toBeGreaterThan((lower?.bottomHeight ?? 0) + (lower?.length ?? 0));
    const tilts = [steeple, lander('trivet')].map((each) => {
      const stance = landerStance(each);
      return stance.kind === 'stands' ? leastStaticTilt(stance).tilt : Number.NaN;
    });
    expect(tilts[0]).toBeLessThan(tilts[1] ?? 0);
  });

  it('[LA15] Bolster lies on two rows of three legs, longer along y than across', () => {
    const bolster = lander('bolster');
    expect(bolster.legs.map((leg) => leg.footpad[0]).toSorted((a, b) => a - b)).toEqual([
      -1.9, -1.9, -1.9, 1.9, 1.9, 1.9,
    ]);
    expect(widthOf(bolster, 1)).toBeGreaterThan(1.5 * widthOf(bolster, 0));
    expect(bolster.tanks.every((tank) => tank.orientation === 'lying')).toBe(true);
    expect(tripLimitOf(bolster)).toBeGreaterThan(tripLimitOf(lander('trivet')));
  });

  it.each(LANDERS.map((each) => [each.id, each] as const))(
    '[LA15] %s is stopped by its legs from 3 m/s on the Moon and bottoms before 5 m/s',
    (_, each) => {
      expect(bottomingSpeed(each, moon)).toBeGreaterThan(3);
      expect(bottomingSpeed(each, moon)).toBeLessThan(5);
    },
  );

  it.each(LANDERS.map((each) => [each.id, each] as const))(
    '[LA15] %s stands on Earth, as it lands, without crushing a leg',
    (_, each) => {
      const force = each.legs.reduce((sum, leg) => {
        const [first] = leg.stages;
        const [x, y, z] = leg.hip.map((value, axis) => value - (leg.footpad[axis] ?? 0)) as [number, number, number];
        // the vertical part of a crush force along the leg
        return sum + ((first?.force ?? 0) * z) / Math.sqrt(x * x + y * y + z * z);
      }, 0);
      expect(force / (massProperties(each).mass * earth)).toBeGreaterThan(1.1);
    },
  );

  it.each(LANDERS.map((each) => [each.id, each] as const))('[LA15] %s can hover on the Moon and on Mars', (_, each) => {
    const { mass } = massProperties(each);
    const mars = findWorld('mars')?.gravity ?? 0;
    expect(each.engine.maxThrust / (mass * mars)).toBeGreaterThan(1.1);
    expect(each.engine.minThrust / (mass * moon)).toBeLessThan(0.5);
  });

  it.each(LANDERS.map((each) => [each.id, each] as const))(
    '[LA15] %s keeps its hull off the ground when every crush stage is used up',
    (_, each) => {
      const lowest = Math.min(...each.hull.map((point) => point[2]));
      const stroke = each.legs[0]?.stages.reduce((sum, stage) => sum + stage.stroke, 0) ?? 0;
      expect(lowest).toBeGreaterThan(stroke);
    },
  );
});
