/** Vectors in space, as read-only triples. No function changes what it is given. */
export type Vec3 = readonly [x: number, y: number, z: number];

export function add3(a: Vec3, b: Vec3): Vec3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function subtract3(a: Vec3, b: Vec3): Vec3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function scale3(a: Vec3, factor: number): Vec3 {
  return [a[0] * factor, a[1] * factor, a[2] * factor];
}

export function dot3(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** Right-handed: x × y = z. */
export function cross3(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function lengthSquared3(a: Vec3): number {
  return dot3(a, a);
}

/** Length; right to the last bits for components of magnitude 1e-150 to 1e150. */
export function length3(a: Vec3): number {
  return Math.sqrt(dot3(a, a));
}

/** The unit vector along a, or undefined when a has no direction. */
export function direction3(a: Vec3): Vec3 | undefined {
  const length = length3(a);
  return length > 0 ? scale3(a, 1 / length) : undefined;
}
