/** A body that turns aside by an angle and back, smoothly, again and again, while it hovers on a push along its own axis. */
export interface TurningBody {
  /** Half of the angle by which it turns [rad], and how fast the turning goes round [rad/s]. */
  readonly size: number;
  readonly pace: number;
}

/** Attitude [rad], its rate [rad/s] and how that changes [rad/s²], counter-clockwise. */
export function attitudeAt({ size, pace }: TurningBody, time: number) {
  return {
    angle: size * (1 - Math.cos(pace * time)),
    rate: size * pace * Math.sin(pace * time),
    change: size * pace * pace * Math.cos(pace * time),
  };
}
