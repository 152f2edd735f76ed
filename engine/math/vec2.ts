/** Vectors in the section plane, as read-only pairs: x right, y up. No function changes what it is given. */
export type Vec2 = readonly [x: number, y: number];

export function add2(a: Vec2, b: Vec2): Vec2 {
  return [a[0] + b[0], a[1] + b[1]];
}

export function subtract2(a: Vec2, b: Vec2): Vec2 {
  return [a[0] - b[0], a[1] - b[1]];
}

export function scale2(a: Vec2, factor: number): Vec2 {
  return [a[0] * factor, a[1] * factor];
}

export function dot2(a: Vec2, b: Vec2): number {
  return a[0] * b[0] + a[1] * b[1];
}

/** Out-of-plane component of a × b: positive when b lies counter-clockwise of a. */
export function cross2(a: Vec2, b: Vec2): number {
  return a[0] * b[1] - a[1] * b[0];
}

/** A quarter turn counter-clockwise. */
export function perpendicular2(a: Vec2): Vec2 {
  return [-a[1], a[0]];
}

/** Turned counter-clockwise by the angle whose cosine and sine are given, so that one pair serves many vectors. */
export function rotate2(a: Vec2, cosine: number, sine: number): Vec2 {
  return [a[0] * cosine - a[1] * sine, a[0] * sine + a[1] * cosine];
}

export function lengthSquared2(a: Vec2): number {
  return dot2(a, a);
}

/** Length; right to the last bits for components of magnitude 1e-150 to 1e150 (hypot2 for more). */
export function length2(a: Vec2): number {
  return Math.sqrt(dot2(a, a));
}
