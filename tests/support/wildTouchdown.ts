import type { BodyPoint } from '../../engine/lander/lander.ts';
import { nextUniform, type RandomState } from '../../engine/math/random.ts';
import type { Soil } from '../../engine/ground/index.ts';
import type { LegCondition, TouchdownCase } from '../../engine/touchdown/index.ts';
import { ringLander } from './ringLander.ts';

const DEGREE = Math.PI / 180;

/**
 * A lander that nobody would build and an arrival that nobody would fly, to look for verdicts that do not last: low-slung and tall bodies on 3 to 8
 * legs, the mass off center, soft gear, slopes to 25 deg, soils, rocks, missing legs. The same state of `random` draws the same.
 */
export function drawWildTouchdown(random: RandomState): TouchdownCase {
  const between = (low: number, high: number): number => low + (high - low) * nextUniform(random);
  const pick = <Value>(values: readonly Value[]): Value => values[Math.floor(between(0, values.length))]!;
  const chance = (share: number): boolean => nextUniform(random) < share;
  const ratio = (low: number, high: number): number => low * (high / low) ** nextUniform(random);

  const mass = ratio(300, 30_000);
  const radius = between(0.8, 4);
  const legCount = 3 + Math.floor(between(0, 6));
  const centerHeight = radius * ratio(0.3, 3);
  const gravity = pick([1.62422, 1.62422, 3.72787, 9.80665]);
  // the inner radius of the footprint holds the center of mass
  const inner = radius * Math.cos(Math.PI / legCount);
  const off = between(0, 0.5) * inner;
  const toward = between(0, 2 * Math.PI);
  // a box of hull points around the center of mass, from nearly on the ground to well above it, wide or narrow
  const bottom = centerHeight * between(0.05, 0.8);
  const top = centerHeight * between(1.1, 2.2);
  const wide = radius * between(0.3, 1.3);
  const gyration = between(0.3, 0.7) * Math.max(wide, (top - bottom) / 2);
  const across = mass * gyration * gyration;
  const sides = pick([4, 6, 8]);
  const hull: BodyPoint[] = [];
  const hullTurn = between(0, Math.PI);
  for (let i = 0; i < sides; i++) {
    const azimuth = hullTurn + (2 * Math.PI * i) / sides;
    for (const z of [bottom, top]) hull.push([wide * Math.cos(azimuth), wide * Math.sin(azimuth), z]);
  }
  // legs together bear from 1.5 to 25 times the weight
  const crushForce = (mass * gravity * ratio(1.5, 25)) / legCount;
  const stroke = between(0.05, 0.25) * radius;
  const stiffness = crushForce / (stroke * between(0.02, 0.3));
  const hipHeight = Math.max(bottom, 1.5 * stroke) + between(0, 0.5) * radius;
  const lander = ringLander({
    mass,
    inertia: [across, across * between(0.7, 1.3), across * between(0.5, 1.4)],
    centerHeight,
    center: [off * Math.cos(toward), off * Math.sin(toward), centerHeight],
    legCount,
    radius,
    firstAzimuth: between(0, 2 * Math.PI),
    crushForce,
    stroke,
    stiffness,
    bottomedStiffness: stiffness * between(1, 6),
    hipInset: between(0, 0.7) * radius,
    hipHeight,
    hull,
    ...(chance(0.5)
      ? {}
      : { secondary: { force: crushForce * between(0.3, 1), stroke: stroke * between(0.3, 1), stiffness } }),
  });
  const soils: readonly Soil[] = [
    { kind: 'rigid' },
    { kind: 'rigid' },
    { kind: 'bearing', stiffness: 3 * stiffness, strength: (mass * gravity * between(0.5, 8)) / (0.2 * legCount) },
    { kind: 'bekker', cohesive: 1400, frictional: 820_000, exponent: 1.1, stiffness: 3 * stiffness },
  ];
  const legs: LegCondition[] = [];
  const isMissing = chance(0.1);
  const isSoft = !isMissing && chance(0.1);
  const isLoose = !isMissing && !isSoft && chance(0.05);
  const leg = isMissing || isSoft || isLoose ? Math.floor(between(0, legCount)) : 0;
  if (isMissing) legs.push({ leg, kind: 'missing' });
  if (isSoft) legs.push({ leg, kind: 'soft', factor: between(0.2, 0.9) });
  if (isLoose) legs.push({ leg, kind: 'not latched' });
  const froude = Math.sqrt(gravity * radius);
  const slope = between(0, 25) * DEGREE * pick([0, 1, 1]);
  return {
    lander,
    gravity,
    ground: {
      shape: { kind: 'plane', slope, fallAzimuth: between(0, 2 * Math.PI) },
      friction: between(0.1, 1.3),
      soil: pick(soils),
      underPad: chance(0.2) ? [{ leg: 0, height: between(-0.2, 0.2) * radius }] : [],
    },
    legs,
    state: {
      horizontalSpeed: froude * between(0, 1.6),
      descentRate: froude * between(0.1, 1.6),
      travelAzimuth: between(0, 2 * Math.PI),
      yaw: between(0, 2 * Math.PI),
      pitch: between(-15, 15) * DEGREE,
      roll: between(-15, 15) * DEGREE,
      rates: [between(-0.2, 0.2), between(-0.2, 0.2), between(-0.2, 0.2)],
    },
  };
}
