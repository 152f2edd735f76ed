import { assert } from '../assert.ts';
import { tankLiquid, type Tank } from '../lander/index.ts';
import { lyingShift } from './lyingShift.ts';
import { uprightShift } from './uprightShift.ts';

/** Move of a center of mass in the x-z plane of the body [m]. */
interface CenterShift {
  readonly x: number;
  readonly z: number;
}

/**
 * Move of the liquid's center in one tank when effective gravity leaves the body's z axis by a tilt toward +x [rad],
 * |tilt| < π/2. The body's center of mass taken with level tanks moves by the mass-weighted mean of these.
 */
export function liquidShift(tank: Tank, tilt: number): CenterShift {
  if (tank.fill === 0) return { x: 0, z: 0 };
  if (tank.orientation === 'upright') {
    const { radius, length, fill } = tank;
    const { lateral, axial } = uprightShift({ radius, length, depth: fill * length }, tilt);
    return { x: lateral, z: axial };
  }
  const below = tank.bottomHeight + tank.radius - tankLiquid(tank).center[2];
  const { lateral, rise } = lyingShift(below, tilt);
  return { x: lateral, z: rise };
}

/**
 * Move of the center of mass of a whole body with liquid in its tanks, against the same body with level tanks.
 *
 *   Δ = Σ m_i Δ_i / m                                   definition of the center of mass
 *
 * m_i  mass of a tank's liquid [kg]    Δ_i  its liquidShift [m]    m  mass of the whole body, liquid included [kg]
 */
export function centerShift(tanks: readonly Tank[], bodyMass: number, tilt: number): CenterShift {
  assert(bodyMass > 0 && bodyMass < Infinity, 'the mass of the body is above 0');
  let [x, z] = [0, 0];
  for (const tank of tanks) {
    const { mass } = tankLiquid(tank);
    const shift = liquidShift(tank, tilt);
    x += mass * shift.x;
    z += mass * shift.z;
  }
  return { x: x / bodyMass, z: z / bodyMass };
}
