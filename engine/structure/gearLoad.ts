/** What crushing legs do to the body that they carry, taken as a thin tube. */
import type { Lander, Leg } from '../lander/lander.ts';
import { massProperties } from '../lander/index.ts';
import { hullExtent } from './layOnSide.ts';
import { lastForce, massOfLegs } from './legMass.ts';
import { lineMass } from './lineMass.ts';
import { tubeUse, type ThinTube, type TubeUse } from './thinTube.ts';
import { touchdownCases, type StationForce } from './touchdownBeam.ts';

export interface GearLoad {
  readonly tube: ThinTube;
  /** Worst first, by the larger of the two utilizations. */
  readonly cases: readonly GearCase[];
  /** Of all legs together [kg]: parts that say so, else a share of the whole. */
  readonly legMass: number;
}

export interface GearCase extends TubeUse {
  readonly name: string;
  /** Push of the legs over the mass [m/s²]. */
  readonly acceleration: number;
  /** Largest, with its sign [N·m], and the section where it acts, along the body [m]. */
  readonly moment: number;
  readonly momentAt: number;
  /** Largest, with its sign [N]. */
  readonly shear: number;
  /** Largest, along the body [N]. */
  readonly compression: number;
}

/**
 * Wall, modulus and strength where the caller says nothing: an aluminum alloy in a wall of a 500th of the radius, at least
 * 2 mm. Ours, for a first comparison: the published datum is the alloy's modulus alone.
 */
const DEFAULT_TUBE = { wallShare: 1 / 500, leastWall: 0.002, modulus: 70e9, strength: 200e6 } as const;

/** The hull of a lander as a tube about its long axis. */
export function bodyTube(lander: Lander): ThinTube {
  const radius = isLying(lander) ? lyingRadius(lander) : hullExtent(lander).radius;
  const { wallShare, leastWall, modulus, strength } = DEFAULT_TUBE;
  return { radius, wall: Math.max(leastWall, radius * wallShare), modulus, strength };
}

/**
 * Loads of the body while every leg, or one station or leg alone, crushes with the force of its last stage.
 *
 * Lying: a beam along y that is pushed at the stations of its legs (touchdownBeam.ts). Upright: the tube is compressed by all
 * legs together, or compressed and bent by one leg alone with the arm of its footpad, without relief by the body's own
 * inertia, which is on the cautious side.
 */
export function gearLoad(lander: Lander, gravity: number, tube: ThinTube = bodyTube(lander)): GearLoad {
  const cases = isLying(lander) ? lyingCases(lander, gravity, tube) : uprightCases(lander, gravity, tube);
  const { mass } = massProperties(lander);
  return { tube, cases: cases.toSorted((a, b) => worstUse(b) - worstUse(a)), legMass: massOfLegs(lander, mass) };
}

export function worstUse({ yieldUse, bucklingUse }: TubeUse): number {
  return Math.max(yieldUse, bucklingUse);
}

/** A lander is taken to lie when its hull is longer along y than it is high. */
export function isLying(lander: Lander): boolean {
  const extent = (axis: 1 | 2): number => {
    const places = lander.hull.map((point) => point[axis]);
    return Math.max(...places) - Math.min(...places);
  };
  return extent(1) > extent(2);
}

function lyingCases(lander: Lander, gravity: number, tube: ThinTube): readonly GearCase[] {
  return touchdownCases(lineMass(lander, 'y'), stationForces(lander.legs), gravity).map(
    ({ name, acceleration, moment, shear }) => {
      const load = { moment: moment.value, shear: shear.value, compression: 0 };
      return { name, acceleration, momentAt: moment.at, ...load, ...tubeUse(tube, load) };
    },
  );
}

function uprightCases(lander: Lander, gravity: number, tube: ThinTube): readonly GearCase[] {
  const { mass } = massProperties(lander);
  const total = lander.legs.reduce((sum, leg) => sum + lastForce(leg), 0);
  const arms = lander.legs.map(
    (leg) => lastForce(leg) * Math.sqrt(leg.footpad[0] * leg.footpad[0] + leg.footpad[1] * leg.footpad[1]),
  );
  const single = Math.max(...lander.legs.map(lastForce));
  const base = Math.min(...lander.hull.map((point) => point[2]));
  return [
    { name: 'all legs', compression: total, moment: 0 },
    { name: 'one leg alone', compression: single, moment: Math.max(...arms) },
    { name: 'at rest', compression: mass * gravity, moment: 0 },
  ].map(({ name, compression, moment }) => {
    const load = { moment, shear: 0, compression };
    return { name, acceleration: compression / mass, momentAt: base, ...load, ...tubeUse(tube, load) };
  });
}

/** Feet at one place along the body make one station. */
function stationForces(legs: readonly Leg[]): readonly StationForce[] {
  const stations = new Map<number, number>();
  for (const leg of legs) stations.set(leg.footpad[1], (stations.get(leg.footpad[1]) ?? 0) + lastForce(leg));
  return [...stations].map(([at, force]) => ({ at, force }));
}

/** Half the smaller of height and breadth of a lying hull: nozzles and mounts stand out of the tube. */
function lyingRadius(lander: Lander): number {
  const reach = (axis: 0 | 2): number => {
    const places = lander.hull.map((point) => point[axis]);
    return (Math.max(...places) - Math.min(...places)) / 2;
  };
  return Math.min(reach(0), reach(2));
}
