/** A lander that lies on rows of legs, as a beam at touchdown and at rest. */
import { assert } from '../assert.ts';
import { beamExtremes, type BeamExtremes, type BeamLoad } from './beam.ts';
import { onSupports } from './continuousBeam.ts';
import { lineTotals, type LineMass } from './lineMass.ts';

/** Upward push of the legs at one station of the beam. */
export interface StationForce {
  /** [m] */
  readonly at: number;
  /** [N] */
  readonly force: number;
}

/**
 * Beam in flight, pushed by legs at some stations: legs that crush push with a known force, so no support is unknown, and
 * whatever they do not balance accelerates the beam, whose own inertia is then the load (d'Alembert, "inertia relief").
 *
 *   a = Σ F / m,   α = Σ F (y − y_c) / I,   load per mass  −(a + α (y − y_c))          rigid body, Newton and Euler
 *
 * m, y_c, I  mass [kg], center [m] and inertia [kg·m²] of the line of mass. Gravity does not enter: it accelerates every
 * piece alike.
 */
export function pushedBeam(masses: readonly LineMass[], pushes: readonly StationForce[]): readonly BeamLoad[] {
  const { mass, center, inertia } = lineTotals(masses);
  assert(mass > 0 && inertia > 0, 'a beam has mass along a length');
  let force = 0;
  let moment = 0;
  for (const push of pushes) {
    force += push.force;
    moment += push.force * (push.at - center);
  }
  const perMass = (y: number): number => -(force / mass + (moment / inertia) * (y - center));
  return [
    ...pushes.map(({ at, force: push }): BeamLoad => ({ kind: 'point', at, force: push })),
    ...masses.map((piece) => massLoad(piece, perMass)),
  ];
}

/** Beam that rests on rigid stations under a steady acceleration, such as gravity [m/s²]. */
export function restingBeam(
  masses: readonly LineMass[],
  stations: readonly number[],
  acceleration: number,
): readonly BeamLoad[] {
  return onSupports(
    masses.map((piece) => massLoad(piece, () => -acceleration)),
    stations,
  );
}

interface BeamCase extends BeamExtremes {
  readonly name: string;
  /** Sum of the pushes over the mass [m/s²]; of the beam at rest, gravity. */
  readonly acceleration: number;
}

/**
 * The cases a lying lander is to be held against: every station crushing at once; each end station alone (it touches first);
 * only the two end stations (a hollow under the middle ones); the middle ones alone (a rise), where there are any; and at rest.
 */
export function touchdownCases(
  masses: readonly LineMass[],
  stations: readonly StationForce[],
  gravity: number,
): readonly BeamCase[] {
  assert(stations.length >= 2, 'a lying lander has at least two stations of legs');
  const sorted = stations.toSorted((a, b) => a.at - b.at);
  const last = sorted.length - 1;
  const pick = (wanted: (index: number) => boolean): readonly StationForce[] => sorted.filter((_, i) => wanted(i));
  const cases: readonly { readonly name: string; readonly pushes: readonly StationForce[] }[] = [
    { name: 'all stations', pushes: sorted },
    { name: 'first station alone', pushes: pick((i) => i === 0) },
    { name: 'last station alone', pushes: pick((i) => i === last) },
    { name: 'ends only', pushes: sorted.length > 2 ? pick((i) => i === 0 || i === last) : [] },
    { name: 'middle only', pushes: pick((i) => i > 0 && i < last) },
  ];
  const { mass } = lineTotals(masses);
  const crushing = cases
    .filter(({ pushes }) => pushes.length > 0)
    .map(({ name, pushes }) => ({
      name,
      acceleration: pushes.reduce((sum, { force }) => sum + force, 0) / mass,
      ...beamExtremes(pushedBeam(masses, pushes)),
    }));
  const places = sorted.map(({ at }) => at);
  return [
    ...crushing,
    { name: 'at rest', acceleration: gravity, ...beamExtremes(restingBeam(masses, places, gravity)) },
  ];
}

function massLoad({ from, to, mass }: LineMass, perMass: (y: number) => number): BeamLoad {
  if (to === from) return { kind: 'point', at: from, force: mass * perMass(from) };
  const perLength = mass / (to - from);
  return { kind: 'line', from, to, atFrom: perLength * perMass(from), atTo: perLength * perMass(to) };
}
