import { groundHeight } from '../ground/terrain.ts';
import { cos, sin } from '../math/trig.ts';
import { ALTIMETER } from '../sensors/altimeter.ts';
import { reportSigma } from '../sensors/sensorSpec.ts';
import type { Estimate } from './estimate.ts';
import type { Expectation } from './expectation.ts';
import { broadRise, mapRise, mapVariance } from './mapGround.ts';
import { ANGLE, BEAM, HEIGHT, STATES, X } from './state.ts';

/** The foot of the beam moves the less the flatter the map: this often it is looked up again. Errors shrink by rise times tangent of the lean each time. */
const LOOKS = 3;

/**
 * Range along the body axis to the ground, of which the map tells how much lower or higher it is where the beam meets it than straight below.
 *
 *   r·cosθ = h + m(x) − m(x + r·sinθ)
 *   dr·(cosθ + s·sinθ) = dh + (r·sinθ − s·r·cosθ)·dθ            differential of it
 *
 * m  height of the map [m]      s  its rise where the beam meets it [-]
 * That difference of heights is off by what the map's error, and the place where it is read, change from here to there, and stays off as long as
 * the lander leans: it is a state of its own, BEAM, in standard deviations. The place x itself is not corrected: slopes of the map are as uncertain
 * as they are steep, and a filter that finds its place by them believes itself too much.
 */
export function expectAltimeter({ past, covariance, setup }: Estimate, at: number, into: Expectation): boolean {
  const { map } = setup;
  const x = past[at + X]!;
  const angle = past[at + ANGLE]!;
  if (Math.abs(angle) > ALTIMETER.mostTilt) return false;
  const cosine = cos(angle);
  const sine = sin(angle);
  const level = past[at + HEIGHT]! + groundHeight(map.terrain, x);
  let range = past[at + HEIGHT]! / cosine;
  for (let look = 0; look < LOOKS; look++) range = (level - groundHeight(map.terrain, x + range * sine)) / cosine;
  const rise = mapRise(map, x + range * sine);
  const scale = 1 / (cosine + rise * sine);
  // who is lost by so much reads two places of other rises
  const bend = broadRise(map, x + range * sine) - broadRise(map, x);
  const off = Math.sqrt(mapVariance(map, range * sine) + bend * bend * covariance[X * STATES + X]!);
  into.value = range + off * scale * past[at + BEAM]!;
  into.row.fill(0);
  into.row[HEIGHT] = scale;
  into.row[ANGLE] = range * (sine - rise * cosine) * scale;
  into.row[BEAM] = off * scale;
  const sigma = reportSigma(ALTIMETER.error, range);
  into.variance = sigma * sigma;
  into.blamed = HEIGHT;
  return true;
}
