import { STANDARD_GRAVITY } from './constants.ts';

/**
 * Worlds with a solid surface to land on, and their gravity.
 *
 *   g = GM / R²                                        law of gravitation, spherical body
 *
 * GM  standard gravitational parameter of the body [m³/s²]      R  mean radius [m]
 *
 * Rotation, oblateness and height above the mean radius are left out; together they change g by less than 1 % on the
 * Moon, by up to 1 % on Mars, and by several percent on small or fast-spinning bodies (Ceres, Vesta, Enceladus).
 */
export interface World {
  /** Lower-case identifier, such as 'moon'. */
  readonly id: string;
  readonly name: string;
  /** Surface gravity [m/s²]. */
  readonly gravity: number;
  readonly basis: 'GM over mean radius squared' | 'standard value';
  /** Of GM and of the radius, or of the value itself; says when it is quoted from memory. */
  readonly source: string;
  /** GM [m³/s²]; absent for a standard value. */
  readonly gravitationalParameter?: number;
  /** [m]; absent for a standard value. */
  readonly meanRadius?: number;
}

// Short forms of [CGPM1901], [Konopliv2014], [Konopliv2018], [Russell2012], [Park2016], [Jacobson2009], [Brozovic2015]
// and of the keys below. All were quoted from memory: the publications were not at hand.
const PLANETS = 'GM: Park et al. 2021'; // [Park2021]
const JUPITER = 'GM: Jacobson, ephemeris JUP365'; // [JUP365]
const SATURN = 'GM: Jacobson 2022'; // [Jacobson2022]
const RADIUS = 'R: Archinal et al. 2018'; // [Archinal2018]

/** In the order in which pickers and tables list them: the three of the examples first, then from the Sun outwards. */
export const WORLDS: readonly World[] = [
  fromMass('moon', 'Moon', 4.902800118e12, 1737.4e3, [PLANETS, RADIUS]),
  fromMass('mars', 'Mars', 4.2828375816e13, 3389.5e3, [`${PLANETS}, Mars system`, RADIUS]),
  {
    id: 'earth',
    name: 'Earth',
    gravity: STANDARD_GRAVITY,
    basis: 'standard value',
    source: '3rd General Conference on Weights and Measures, 1901; exact by definition',
  },
  fromMass('mercury', 'Mercury', 2.2031868551e13, 2439.4e3, [PLANETS, RADIUS]),
  fromMass('venus', 'Venus', 3.24858592e14, 6051.8e3, [PLANETS, RADIUS]),
  fromMass('vesta', 'Vesta', 1.7288245e10, 262.7e3, ['GM: Konopliv et al. 2014', 'R: Russell et al. 2012']),
  fromMass('ceres', 'Ceres', 6.262736e10, 469.7e3, ['GM: Konopliv et al. 2018', 'R: Park et al. 2016']),
  fromMass('io', 'Io', 5.9599155e12, 1821.49e3, [JUPITER, RADIUS]),
  fromMass('europa', 'Europa', 3.2027121e12, 1560.8e3, [JUPITER, RADIUS]),
  fromMass('ganymede', 'Ganymede', 9.8878328e12, 2631.2e3, [JUPITER, RADIUS]),
  fromMass('callisto', 'Callisto', 7.1792834e12, 2410.3e3, [JUPITER, RADIUS]),
  fromMass('enceladus', 'Enceladus', 7.210367e9, 252.1e3, [SATURN, RADIUS]),
  fromMass('titan', 'Titan', 8.9781371e12, 2575.0e3, [SATURN, RADIUS]),
  fromMass('triton', 'Triton', 1.42849546e12, 1352.6e3, ['GM: Jacobson 2009, updated as NEP097', RADIUS]),
  fromMass('pluto', 'Pluto', 8.696e11, 1188.3e3, ['GM: Brozovic et al. 2015', RADIUS]),
];

/** The world with this identifier or name, in any letter case; undefined when there is none. */
export function findWorld(idOrName: string): World | undefined {
  const wanted = idOrName.trim().toLowerCase();
  return WORLDS.find((world) => world.id === wanted || world.name.toLowerCase() === wanted);
}

function fromMass(
  id: string,
  name: string,
  gravitationalParameter: number,
  meanRadius: number,
  sources: readonly string[],
): World {
  return {
    id,
    name,
    gravity: gravitationalParameter / (meanRadius * meanRadius),
    basis: 'GM over mean radius squared',
    source: `${sources.join('; ')}; from memory`,
    gravitationalParameter,
    meanRadius,
  };
}
