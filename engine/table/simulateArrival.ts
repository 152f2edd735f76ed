/**
 * The arrival of a played descent in the simulation in six degrees of freedom: free to move in every direction, where
 * the played world keeps it in the section. Same ground, same state, tanks drained alike, engine and thrusters off.
 */
import { legConditionsAt } from '../faults/legConditions.ts';
import { soilOf } from '../ground/terrain.ts';
import { drainTanks } from '../lander/drainTanks.ts';
import { fromAxisAngle, multiply, rotateBack } from '../math/quaternion.ts';
import { anglesOf } from '../touchdown/attitude.ts';
import { simulateTouchdown } from '../touchdown/simulateTouchdown.ts';
import type { TouchdownCase, TouchdownResult } from '../touchdown/touchdownCase.ts';
import type { DescentSetup, TouchdownState } from '../world/descent.ts';
import { layOutSection } from '../world/layOutSection.ts';

/** How that ends; undefined for an arrival beyond what the simulation takes, such as one faster than 100 m/s. */
export function simulateArrival(setup: DescentSetup, touchdown: TouchdownState): TouchdownResult | undefined {
  const simulated = simulateTouchdown(arrivalCase(setup, touchdown));
  return simulated.ok ? simulated.value : undefined;
}

/**
 * The lander stands as in the played world, the edge to the right that it had turned there.
 *
 * Section to world: right is +x, up is +z, so an angle counter-clockwise in the section turns about -y and leans the nose
 * toward -x.
 */
export function arrivalCase(setup: DescentSetup, touchdown: TouchdownState): TouchdownCase {
  const { azimuth } = layOutSection(setup.lander, setup.propellant, touchdown.facing);
  const { terrain, gravity } = setup;
  const { vx, descentRate, angle, rate, x } = touchdown;
  const turned = fromAxisAngle([0, 0, 1], -azimuth);
  const attitude = multiply(fromAxisAngle([0, -1, 0], angle), turned);
  return {
    lander: drainTanks(setup.lander, touchdown.mass),
    legs: legConditionsAt(setup.faults ?? [], touchdown.tick),
    gravity,
    ground: { shape: { kind: 'profile', terrain }, friction: terrain.friction, ...soilOf(terrain) },
    state: {
      horizontalSpeed: vx,
      travelAzimuth: 0,
      descentRate,
      ...anglesOf(attitude),
      rates: rotateBack(attitude, [0, -rate, 0]),
      position: [x, 0],
    },
  };
}
