import { nextUniform, seedRandom } from '../../engine/math/random.ts';
import type { TouchdownCase } from '../../engine/touchdown/index.ts';
import { ringLander } from './ringLander.ts';
import { plane } from './touchDown.ts';

/** A lander on 3 to 8 legs between squat and tall, and how it arrives on a plane; the same seed draws the same. */
export function drawRingArrival(seed: number): TouchdownCase {
  const random = seedRandom(seed);
  const between = (low: number, high: number): number => low + (high - low) * nextUniform(random);
  const mass = between(500, 8000);
  const radius = between(1.5, 5);
  const height = radius * between(0.4, 2);
  const inertia = mass * height * height * between(0.1, 0.4);
  const gravity = [1.62422, 3.72787, 9.80665][Math.floor(between(0, 3))]!;
  const lander = ringLander({
    mass,
    inertia: [inertia, inertia, inertia * between(0.4, 1)],
    centerHeight: height,
    legCount: Math.floor(between(3, 9)),
    radius,
    firstAzimuth: between(0, 6),
    crushForce: mass * gravity * between(0.8, 3),
    stroke: between(0.3, 1),
    stiffness: mass * 300,
    bottomedStiffness: mass * 600,
    hipInset: between(0, 0.4) * radius,
    secondary: { force: mass * gravity, stroke: 0.4, stiffness: mass * 300 },
    hull: [
      [0.5 * radius, 0, height],
      [-0.5 * radius, 0, height],
      [0, 0.5 * radius, height],
      [0, -0.5 * radius, height],
      [0, 0, 1.8 * height],
    ],
  });
  const froude = Math.sqrt(gravity * radius);
  return {
    lander,
    gravity,
    ground: plane(between(0.3, 1.1), between(0, 0.2), between(0, 6)),
    state: {
      horizontalSpeed: 1,
      descentRate: froude * between(0.2, 0.8),
      travelAzimuth: between(0, 6),
      yaw: between(0, 6),
      pitch: between(-0.1, 0.1),
      roll: between(-0.1, 0.1),
      rates: [between(-0.05, 0.05), between(-0.05, 0.05), between(-0.05, 0.05)],
    },
  };
}
