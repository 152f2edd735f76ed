/**
 * Importing this module puts the engine's own sine, cosine and atan2 in the place of the platform's, for the whole
 * process or page. It exists for the rigid-body library, which takes Math.sin, Math.cos and Math.atan2 at the moment it
 * is loaded: this must be the first import of engine/world/planckWorld.ts, and nothing else needs it.
 *
 * Other code of the page then calls these too, so they answer every number: an angle beyond MAX_ANGLE is first reduced
 * with the exact remainder of the double 2π (same bits everywhere, wrong by up to |angle| × 4e-17 rad, which the world
 * never reaches), and what is not finite goes to the platform, whose answer is NaN or a multiple of π/4.
 */
import { atan2, cos, MAX_ANGLE, sin } from './trig.ts';

const platformAtan2 = Math.atan2;

Math.sin = (angle: number): number => {
  const reduced = Math.abs(angle) < MAX_ANGLE ? angle : angle % (2 * Math.PI);
  return Number.isNaN(reduced) ? NaN : sin(reduced);
};

Math.cos = (angle: number): number => {
  const reduced = Math.abs(angle) < MAX_ANGLE ? angle : angle % (2 * Math.PI);
  return Number.isNaN(reduced) ? NaN : cos(reduced);
};

Math.atan2 = (y: number, x: number): number =>
  Number.isFinite(y) && Number.isFinite(x) ? atan2(y, x) : platformAtan2(y, x);
