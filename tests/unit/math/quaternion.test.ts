import { describe, expect, it } from 'vitest';
import {
  conjugate,
  fromAxisAngle,
  fromRotationVector,
  integrate,
  multiply,
  normalize,
  rotate,
  rotateBack,
  UPRIGHT,
  type Quaternion,
} from '../../../engine/math/quaternion.ts';
import { nextNormal, seedRandom } from '../../../engine/math/random.ts';
import { direction3, dot3, length3, scale3, subtract3, type Vec3 } from '../../../engine/math/vec3.ts';

const X: Vec3 = [1, 0, 0];
const Y: Vec3 = [0, 1, 0];
const Z: Vec3 = [0, 0, 1];

/** Largest difference of the components. */
function gap(a: readonly number[], b: readonly number[]): number {
  return Math.max(...a.map((value, i) => Math.abs(value - (b[i] ?? NaN))));
}

/** Rodrigues' formula: v cos θ + (k × v) sin θ + k (k·v)(1 − cos θ), with the platform's sine and cosine. */
function rodrigues(v: Vec3, k: Vec3, angle: number): Vec3 {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const along = (v[0] * k[0] + v[1] * k[1] + v[2] * k[2]) * (1 - c);
  return [
    v[0] * c + (k[1] * v[2] - k[2] * v[1]) * s + k[0] * along,
    v[1] * c + (k[2] * v[0] - k[0] * v[2]) * s + k[1] * along,
    v[2] * c + (k[0] * v[1] - k[1] * v[0]) * s + k[2] * along,
  ];
}

const random = seedRandom(31);
const draw = (): Vec3 => [nextNormal(random), nextNormal(random), nextNormal(random)];
const SAMPLES = Array.from({ length: 200 }, () => ({
  axis: direction3(draw()) ?? X,
  angle: 2 * nextNormal(random),
  vector: draw(),
}));

describe('unit quaternions', () => {
  it('[MA8] turn right-handed, from the body frame to the world frame', () => {
    expect(gap(rotate(fromAxisAngle(Z, Math.PI / 2), X), Y)).toBeLessThan(1e-15);
    expect(gap(rotate(fromAxisAngle(X, Math.PI / 2), Y), Z)).toBeLessThan(1e-15);
    expect(gap(rotate(fromAxisAngle(Y, Math.PI / 2), Z), X)).toBeLessThan(1e-15);
    expect(gap(rotateBack(fromAxisAngle(Z, Math.PI / 2), Y), X)).toBeLessThan(1e-15);
    expect(rotate(UPRIGHT, [1, 2, 3])).toEqual([1, 2, 3]);
  });

  it('[MA8] agree with the rotation formula of Rodrigues', () => {
    for (const { axis, angle, vector } of SAMPLES)
      expect(gap(rotate(fromAxisAngle(axis, angle), vector), rodrigues(vector, axis, angle))).toBeLessThan(2e-14);
  });

  it('[MA8] multiply by the rules i² = j² = k² = ijk = −1', () => {
    const [i, j, k]: readonly Quaternion[] = [
      [0, 1, 0, 0],
      [0, 0, 1, 0],
      [0, 0, 0, 1],
    ];
    if (i === undefined || j === undefined || k === undefined) throw new Error('three units');
    expect(multiply(i, j)).toEqual([0, 0, 0, 1]);
    for (const product of [multiply(i, i), multiply(j, j), multiply(k, k), multiply(multiply(i, j), k)])
      expect(product.map((part) => part + 0)).toEqual([-1, 0, 0, 0]);
  });

  it('[MA8] compose: the right factor turns first', () => {
    const [a, b] = [fromAxisAngle(X, 0.7), fromAxisAngle(Y, -1.3)];
    expect(gap(rotate(multiply(a, b), [1, 2, 3]), rotate(a, rotate(b, [1, 2, 3])))).toBeLessThan(1e-14);
    expect(gap(multiply(a, conjugate(a)), UPRIGHT)).toBeLessThan(1e-15);
  });

  it('[MA8] keep lengths and angles', () => {
    for (const { axis, angle, vector } of SAMPLES) {
      const turned = rotate(fromAxisAngle(axis, angle), vector);
      expect(Math.abs(length3(turned) / length3(vector) - 1)).toBeLessThan(8 * Number.EPSILON);
      expect(Math.abs(dot3(turned, axis) - dot3(vector, axis))).toBeLessThan(1e-14);
    }
  });

  it('[MA8] come from a rotation vector as from axis and angle, down to no turn at all', () => {
    for (const { axis, angle } of SAMPLES)
      expect(gap(fromRotationVector(scale3(axis, angle)), fromAxisAngle(axis, angle))).toBeLessThan(1e-15);
    // on both sides of the switch to the series
    for (const angle of [4.8e-4, 4.9e-4, 1e-8, 1e-300])
      expect(gap(fromRotationVector([0, angle, 0]), fromAxisAngle(Y, angle))).toBeLessThan(1e-19);
    expect(fromRotationVector([0, 0, 0])).toEqual([1, 0, 0, 0]);
  });

  it('[MA8] integrate a constant rate exactly, in one step or in a thousand', () => {
    const start = fromAxisAngle(X, 0.4);
    const rate: Vec3 = [0.3, -1.1, 0.8];
    const whole = integrate(start, rate, 2);
    const axis = direction3(rate) ?? X;
    for (const v of [X, Y, Z])
      expect(gap(rotate(whole, v), rodrigues(rotate(start, v), axis, 2 * length3(rate)))).toBeLessThan(4e-15);
    let stepped = start;
    for (let i = 0; i < 1000; i++) stepped = integrate(stepped, rate, 0.002);
    expect(gap(stepped, whole)).toBeLessThan(1e-13);
  });

  it('[MA8] stay of unit length over a million steps', () => {
    let q: Quaternion = UPRIGHT;
    for (let i = 0; i < 1_000_000; i++) q = integrate(q, [0.1, 0.2, -0.3], 0.01);
    expect(Math.abs(q[0] * q[0] + q[1] * q[1] + q[2] * q[2] + q[3] * q[3] - 1)).toBeLessThan(4 * Number.EPSILON);
  });

  it('[MA8] are scaled to unit length, if they have one', () => {
    expect(normalize([0, 3, 0, 4])).toEqual([0, 0.6, 0, 0.8]);
    expect(normalize([0, 0, 0, 0])).toBeUndefined();
    const q = normalize([1, 2, 3, 4]);
    expect(q && Math.abs(length3(subtract3(rotate(q, X), rotate(conjugate(conjugate(q)), X))))).toBe(0);
  });
});
