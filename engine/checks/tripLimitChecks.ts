import { assert } from '../assert.ts';
import { atan } from '../math/index.ts';
import { tripLimit, type ContactCondition, type PivotBody } from '../pivot/index.ts';
import type { OutsideCheck } from './outsideCheck.ts';
import { AT_MOST, EQUALS_PRINTED } from './tolerances.ts';

/** The body of the example: 1.5 m from foot point to edge, center of mass 2 m up, I/m = 1.5 m². */
const EXAMPLE: PivotBody = { mass: 1000, halfStance: 1.5, centerHeight: 2, inertia: 1500 };
/** A passenger vehicle seen from behind: track 1.55 m. */
const VEHICLE: PivotBody = { mass: 1800, halfStance: 1.55 / 2, centerHeight: 0.7, inertia: 700 };
/** A solid block 4 m tall and 4 m wide: as wide as a lander of that height comes. I/m = (4² + 4²)/12 m². */
const FOUR_METERS_TALL: PivotBody = { mass: 1000, halfStance: 2, centerHeight: 2, inertia: 32_000 / 12 };

const ROLLOVER = 'NHTSA rollover rulemaking, which names the measure [NHTSA2001]';
const SAME_PHYSICS = 'The Physics Teacher 58(1), A69, 2020 [TPT2020]: the same physics';
const KEPT_MOMENTUM =
  'angular momentum about the foot that catches, then energy; worked out in engine/pivot/edgePivot.ts';

export const TRIP_LIMIT_CHECKS: readonly OutsideCheck[] = [
  {
    name: 'static stability factor, half track over height',
    source: ROLLOVER,
    kind: 'form',
    seen: 'no',
    expected: '1.107143',
    unit: '-',
    ...EQUALS_PRINTED,
    note: 'track 1.55 m, height 0.70 m; the engine calls it the critical friction',
    compute: (gravityOf) => levelLimit(VEHICLE, gravityOf('earth')).criticalFriction,
  },
  {
    name: 'static stability factor as a tilt',
    source: ROLLOVER,
    kind: 'form',
    seen: 'no',
    expected: '47.9108',
    unit: 'deg',
    ...EQUALS_PRINTED,
    compute: (gravityOf) => degrees(atan(levelLimit(VEHICLE, gravityOf('earth')).criticalFriction)),
  },
  {
    name: 'critical sliding velocity of a road vehicle',
    source: ROLLOVER,
    kind: 'form',
    seen: 'no',
    expected: '4.515691',
    unit: 'm/s',
    ...EQUALS_PRINTED,
    note: '1800 kg, 700 kg m^2 about the center of mass; Earth',
    compute: (gravityOf) => levelLimit(VEHICLE, gravityOf('earth')).plastic.alongGround,
  },
  level('earth', 'Earth', '4.3589'),
  level('mars', 'Mars', '2.6875'),
  level('moon', 'Moon', '1.7740'),
  downhill('moon', 'Moon', 5, '1.5401'),
  downhill('moon', 'Moon', 8, '1.3984'),
  downhill('moon', 'Moon', 12, '1.2080'),
  downhill('earth', 'Earth', 5, '3.7844'),
  downhill('earth', 'Earth', 8, '3.4361'),
  downhill('earth', 'Earth', 12, '2.9682'),
  {
    name: 'tip speed of a lander some 4 m tall, Moon: a few m/s at most',
    source: 'common practice, no source',
    kind: 'trend',
    seen: 'no',
    expected: '3',
    unit: 'm/s',
    ...AT_MOST,
    note: '"a few" is read as 3; a block 4 m tall and 4 m wide, as wide as they come',
    compute: (gravityOf) => levelLimit(FOUR_METERS_TALL, gravityOf('moon')).plastic.alongGround,
  },
];

export const GRAVITY_SCALING_CHECKS: readonly OutsideCheck[] = [
  {
    name: 'gravity scaling of speed, Earth over Moon',
    source: 'Froude similarity: speeds go with the square root of gravity',
    kind: 'derived',
    seen: 'yes',
    expected: '2.457186',
    unit: '-',
    ...EQUALS_PRINTED,
    compute: (gravityOf) =>
      levelLimit(EXAMPLE, gravityOf('earth')).plastic.alongGround /
      levelLimit(EXAMPLE, gravityOf('moon')).plastic.alongGround,
  },
  {
    name: 'gravity scaling of force, Earth over Moon',
    source: 'weight is mass times gravity',
    kind: 'derived',
    seen: 'yes',
    expected: '6.037764',
    unit: '-',
    ...EQUALS_PRINTED,
    compute: (gravityOf) => gravityOf('earth') / gravityOf('moon'),
  },
  {
    name: 'gravity scaling of static tilt, Earth over Moon',
    source: 'weight has no arm about the edge when the center of mass stands above it, whatever the weight',
    kind: 'derived',
    seen: 'yes',
    expected: '1.000000',
    unit: '-',
    ...EQUALS_PRINTED,
    compute: (gravityOf) => fallingTilt(gravityOf('earth')) / fallingTilt(gravityOf('moon')),
  },
];

function level(worldId: string, world: string, expected: string): OutsideCheck {
  return {
    name: `trip limit on level ground, ${world}`,
    source: SAME_PHYSICS,
    kind: 'form',
    seen: 'no',
    expected,
    unit: 'm/s',
    ...EQUALS_PRINTED,
    note: 'half stance 1.5 m, height 2 m, I/m 1.5 m^2',
    compute: (gravityOf) => levelLimit(EXAMPLE, gravityOf(worldId)).plastic.alongGround,
  };
}

function downhill(worldId: string, world: string, slopeDeg: number, expected: string): OutsideCheck {
  return {
    name: `trip limit ${slopeDeg} deg downhill, ${world}`,
    source: KEPT_MOMENTUM,
    kind: 'derived',
    seen: 'yes',
    expected,
    unit: 'm/s',
    ...EQUALS_PRINTED,
    note: 'the same body; speed along the ground',
    compute: (gravityOf) => {
      const condition = { gravity: gravityOf(worldId), slope: (slopeDeg * Math.PI) / 180 };
      return limitOf(EXAMPLE, condition).plastic.alongGround;
    },
  };
}

function levelLimit(body: PivotBody, gravity: number): ReturnType<typeof limitOf> {
  return limitOf(body, { gravity, slope: 0 });
}

function limitOf(
  body: PivotBody,
  condition: ContactCondition,
): Extract<ReturnType<typeof tripLimit>, { readonly kind: 'limit' }> {
  const limit = tripLimit(body, condition);
  assert(limit.kind === 'limit', 'the bodies of the checks stand');
  return limit;
}

/** Tilt of the ground at which the example falls without moving, as the trip limit reports it on ground too steep. */
function fallingTilt(gravity: number): number {
  const limit = tripLimit(EXAMPLE, { gravity, slope: 1 });
  assert(limit.kind === 'cannotStand', 'nothing stands at 1 rad with this stance');
  return limit.staticTilt;
}

function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}
