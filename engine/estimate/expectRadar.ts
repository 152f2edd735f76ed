import { cos, sin } from '../math/trig.ts';
import { reportSigma } from '../sensors/sensorSpec.ts';
import { VELOCITY_RADAR } from '../sensors/velocityRadar.ts';
import type { Estimate } from './estimate.ts';
import type { Expectation } from './expectation.ts';
import { ANGLE, VX, VY } from './state.ts';

/**
 * Velocity across and along the body.
 *
 *   u = vx·cosθ + vy·sinθ,  w = vy·cosθ − vx·sinθ           du/dθ = w,  dw/dθ = −u
 */
export function expectRadar({ past }: Estimate, at: number, into: Expectation, channel: number): boolean {
  const vx = past[at + VX]!;
  const vy = past[at + VY]!;
  const cosine = cos(past[at + ANGLE]!);
  const sine = sin(past[at + ANGLE]!);
  const across = vx * cosine + vy * sine;
  const along = vy * cosine - vx * sine;
  into.row.fill(0);
  if (channel === 0) {
    into.value = across;
    into.row[VX] = cosine;
    into.row[VY] = sine;
    into.row[ANGLE] = along;
    into.blamed = VX;
  } else {
    into.value = along;
    into.row[VX] = -sine;
    into.row[VY] = cosine;
    into.row[ANGLE] = -across;
    into.blamed = VY;
  }
  const sigma = reportSigma(VELOCITY_RADAR.error, into.value);
  into.variance = sigma * sigma;
  return true;
}
