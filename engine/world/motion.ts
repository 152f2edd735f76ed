/** A rigid body in the section, moving: the center of mass and the attitude. Changed in place by the step. */
export interface Motion {
  /** Center of mass [m]. */
  x: number;
  y: number;
  /** Counter-clockwise from upright [rad]. */
  angle: number;
  /** [m/s] */
  vx: number;
  vy: number;
  /** [rad/s] */
  rate: number;
}

/** What the lander weighs and where, now. Changed in place as propellant burns. */
export interface Bulk {
  /** [kg] */
  mass: number;
  /** Of the center of mass above the footpad plane [m]. */
  centerHeight: number;
  /** About the center of mass, across the section [kg·m²]. */
  inertia: number;
}

export function copyMotion(from: Motion, to: Motion): void {
  to.x = from.x;
  to.y = from.y;
  to.angle = from.angle;
  to.vx = from.vx;
  to.vy = from.vy;
  to.rate = from.rate;
}

/** True when every number of it is finite. */
export function isFiniteMotion(motion: Motion): boolean {
  const { x, y, angle, vx, vy, rate } = motion;
  return Number.isFinite(x + y + angle + vx + vy + rate);
}
