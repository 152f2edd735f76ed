import { describe, expect, it } from 'vitest';
import {
  createDescent,
  readDescent,
  stepDescent,
  type ControlInput,
  type DescentState,
} from '../../../engine/world/index.ts';
import { findLander } from '../../../levels/index.ts';
import { dropLander, evenGround, MOON, rollingGround } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

const TRIVET = findLander('trivet') ?? plainLander();

/** The same in the mirror: left for right. */
function mirrored(state: DescentState) {
  const { x, y, vx, vy, angle, rate, legs, height, slope } = state;
  const strokes = legs.map(({ stroke }) => stroke).toReversed();
  return { x: -x, y, vx: -vx, vy, angle: -angle, rate: -rate, height, slope: -slope, strokes };
}

function plain(state: DescentState) {
  const { x, y, vx, vy, angle, rate, legs, height, slope } = state;
  return { x, y, vx, vy, angle, rate, height, slope, strokes: legs.map(({ stroke }) => stroke) };
}

function movedBack<Place extends { readonly x: number }>(place: Place, shift: number): Place {
  return { ...place, x: place.x - shift };
}

/**
 * Flies, turns and lands on rolling ground, and from a start, that are shifted to the right [m]; the center of mass sinks as the tanks drain.
 * A reading every second, moved back again.
 */
function flyFrom(shift: number): readonly DescentState[] {
  const terrain = rollingGround(shift);
  const start = { x: shift, y: 30, angle: 0.02, vx: 1, vy: -3, rate: 0.1 };
  const descent = createDescent({ lander: TRIVET, gravity: MOON, terrain, start, propellant: 100 });
  return Array.from({ length: 15 }, (_, second) => {
    const input: ControlInput = { thrustPercent: 30, tiltDeg: second % 2 === 0 ? -4 : 4 };
    for (let i = 0; i < 60; i++) stepDescent(descent, input);
    const state = readDescent(descent);
    return {
      ...movedBack(state, shift),
      legs: state.legs.map((leg) => ({ ...leg, footX: leg.footX - shift })),
      contacts: state.contacts.map((contact) => movedBack(contact, shift)),
      ...(state.touchdown && { touchdown: movedBack(state.touchdown, shift) }),
    };
  });
}

function isAlike(value: unknown, other: unknown): boolean {
  return typeof value === 'number' && typeof other === 'number' ? Math.abs(value - other) < 5e-7 : value === other;
}

/** Every number of a reading, by its place in it; what is no number is left as it is. */
function leavesOf(value: unknown, place = ''): readonly (readonly [place: string, value: unknown])[] {
  if (typeof value !== 'object' || value === null) return [[place, value]];
  return Object.entries(value).flatMap(([name, part]) => leavesOf(part, `${place}.${name}`));
}

describe('the played world', () => {
  it.each([
    { vx: 1, descentRate: 1.5, angle: 0.05, rate: -0.1, slope: 0.08 },
    { vx: 2.5, descentRate: 0.5, angle: 0, rate: 0, slope: -0.05 },
  ])('[PL14] does the same in the mirror: $vx m/s across', ({ vx, descentRate, angle, rate, slope }) => {
    const right = dropLander({ lander: TRIVET, terrain: evenGround(slope), vx, descentRate, angle, rate });
    const left = dropLander({
      lander: TRIVET,
      terrain: evenGround(-slope),
      vx: -vx,
      descentRate,
      angle: -angle,
      rate: -rate,
    });
    for (let i = 0; i < 180; i++) {
      stepDescent(right, { thrustPercent: 0, tiltDeg: 0 });
      stepDescent(left, { thrustPercent: 0, tiltDeg: 0 });
    }
    const [expected, came] = [plain(readDescent(right)), mirrored(readDescent(left))];
    expect(expected.strokes.some((stroke) => stroke > 0.001)).toBe(true);
    for (const [name, value] of Object.entries(expected)) {
      const other = came[name as keyof typeof came];
      for (const [i, number] of [value].flat().entries())
        expect(Math.abs(number - ([other].flat()[i] ?? Number.NaN)), name).toBeLessThan(1e-8);
    }
  });

  it('[PL14] does the same wherever on the ground it is', () => {
    const [here, there] = [flyFrom(0), flyFrom(64)].map((readings) => leavesOf(readings));
    expect(here!.some(([place]) => place.endsWith('.touchdown.vx'))).toBe(true);
    expect(there!.map(([place]) => place)).toEqual(here!.map(([place]) => place));
    const differ = here!.filter(([, value], i) => !isAlike(value, there![i]![1]));
    expect(differ).toEqual([]);
  });

  it('[PL14] obeys Froude: lengths x k and gravity x s take speeds by the root of k s', () => {
    // all lengths doubled on a third of the gravity; mass kept, forces x s, inertia x k², stiffness x s/k
    const [k, s] = [2, 1 / 3];
    const small = plainLander({ force: 20_000, stroke: 0.6, stiffness: 2e6 });
    const scaled = plainLander({
      centerHeight: 2 * k,
      halfStance: 1.5 * k,
      inertia: 3000 * k * k,
      force: 20_000 * s,
      stroke: 0.6 * k,
      stiffness: (2e6 * s) / k,
      hull: small.hull.map(([x, y, z]) => [x * k, y * k, z * k] as const),
    });
    const large = { ...scaled, legs: scaled.legs.map((leg) => ({ ...leg, footpadDiameter: 0.4 * k })) };
    const speed = Math.sqrt(k * s);
    const terrain = evenGround(-0.05, 5);
    const a = dropLander({ lander: small, terrain, vx: 1.5, descentRate: 1 });
    const b = dropLander({ lander: large, terrain, gravity: MOON * s, vx: 1.5 * speed, descentRate: speed });
    // times stretch by √(k/s), so the larger one is seen through coarser glasses: compare what is left at rest
    for (const descent of [a, b])
      while (descent.outcome === undefined) stepDescent(descent, { thrustPercent: 0, tiltDeg: 0 });
    expect(b.outcome).toBe(a.outcome);
    const [strokeA, strokeB] = [a, b].map((descent) => readDescent(descent).legs[2]?.stroke ?? 0);
    expect(strokeA).toBeGreaterThan(0.005);
    expect((strokeB ?? 0) / k / (strokeA ?? 1)).toBeCloseTo(1, 1);
  });
});
