/** The figures by which one way of landing a body is held against another. */
import type { Lander } from '../lander/lander.ts';
import { inertiaAlong, massProperties } from '../lander/index.ts';
import { tripLimitByAzimuth } from '../pivot/tripLimitByAzimuth.ts';
import { lateralMode, liquidShift } from '../slosh/index.ts';
import { landerStance, leastStaticTilt, type Standing } from '../statics/index.ts';
import { sloshAcross, sloshAlong } from './lyingSlosh.ts';
import { shiftAlong } from './lyingTank.ts';
import { gearLoad, type GearLoad } from './gearLoad.ts';
import type { ThinTube } from './thinTube.ts';

/** Where and how both are to land. */
export interface ComparedLanding {
  /** [m/s²] */
  readonly gravity: number;
  /** Fall of the ground in the direction of travel, whatever that is [rad]. Default 0. */
  readonly slope?: number;
  /** [m/s]. Default: sliding along the ground, no closing speed. */
  readonly descentRate?: number;
  /** The body as a tube; default bodyTube of the lander. */
  readonly tube?: ThinTube;
}

export interface LanderAssessment {
  readonly id: string;
  readonly name: string;
  readonly legs: number;
  /** [kg] */
  readonly mass: number;
  /** Of the center of mass over the footpad plane [m]. */
  readonly centerHeight: number;
  /** Undefined where it does not stand on level ground. */
  readonly standing: StandingFigures | undefined;
  /** Lowest hull point over the footpad plane [m]. */
  readonly clearance: number;
  readonly liquid: LiquidFigures;
  /** Undefined without a long enough body or without stations to lie on. */
  readonly gear: GearLoad;
}

export interface StandingFigures {
  /** Foot point of the center of mass to the nearest tip edge [m]. */
  readonly leastHalfStance: number;
  /** About the center of mass, along that edge [kg·m²]. */
  readonly inertia: number;
  /** About that edge itself [kg·m²]: m (b² + h²) more. */
  readonly edgeInertia: number;
  /** Least static tilt [rad] and its azimuth [rad]. */
  readonly staticTilt: number;
  readonly azimuth: number;
  /** Least horizontal trip limits [m/s]; undefined where the slope overturns it, or energy alone does. */
  readonly plastic: number | undefined;
  readonly lossless: number | undefined;
}

interface LiquidFigures {
  /** Move of the lander's center of mass at REFERENCE_TILT, toward the worse of the two directions [m]. */
  readonly centerShift: number;
  /** Slowest first mode of any tank [rad/s]; undefined without liquid that can swing. */
  readonly slowestMode: number | undefined;
}

/** Tilt at which liquid shifts are compared [rad]. Common practice, no source. */
const REFERENCE_TILT = Math.PI / 36;

export function assessLander(lander: Lander, landing: ComparedLanding): LanderAssessment {
  const bulk = massProperties(lander);
  const stance = landerStance(lander);
  return {
    id: lander.id,
    name: lander.name,
    legs: lander.legs.length,
    mass: bulk.mass,
    centerHeight: bulk.center[2],
    standing: stance.kind === 'stands' ? standingFigures(lander, stance, landing) : undefined,
    clearance: Math.min(...lander.hull.map((point) => point[2])),
    liquid: liquidFigures(lander, bulk.mass, landing.gravity),
    gear: gearLoad(lander, landing.gravity, landing.tube),
  };
}

/** Steps of azimuth beside the edge normals; the least limit lies at a normal. */
const AZIMUTHS = 72;

function standingFigures(lander: Lander, stance: Standing, landing: ComparedLanding): StandingFigures {
  const { gravity, slope = 0, descentRate } = landing;
  const bulk = massProperties(lander);
  const { tilt, azimuth, edge } = leastStaticTilt(stance);
  // the legs crush and take up the descent, so no foot is first
  const condition = {
    gravity,
    slope,
    firstContact: 'together',
    ...(descentRate !== undefined && { descentRate }),
  } as const;
  const { least } = tripLimitByAzimuth(stance, bulk, condition, AZIMUTHS);
  const inertia = inertiaAlong(bulk.inertia, edge.axis);
  return {
    leastHalfStance: edge.distance,
    inertia,
    edgeInertia: inertia + bulk.mass * (edge.distance * edge.distance + edge.height * edge.height),
    staticTilt: tilt,
    azimuth,
    plastic: least.kind === 'limit' ? least.plastic.horizontal : undefined,
    lossless: least.kind === 'limit' ? least.lossless?.horizontal : undefined,
  };
}

function liquidFigures(lander: Lander, mass: number, gravity: number): LiquidFigures {
  let across = 0;
  let along = 0;
  const modes: number[] = [];
  for (const tank of lander.tanks) {
    const liquid = tank.density * tank.fill * Math.PI * tank.radius * tank.radius * tank.length;
    const x = (liquid * liquidShift(tank, REFERENCE_TILT).x) / mass;
    across += x;
    if (tank.orientation === 'upright') {
      along += x;
      if (tank.fill > 0)
        modes.push(lateralMode({ radius: tank.radius, depth: tank.fill * tank.length }, gravity).frequency);
    } else {
      along += (liquid * shiftAlong(tank, tank.fill, REFERENCE_TILT).shift) / mass;
      if (tank.fill > 0 && tank.fill < 1) {
        modes.push(sloshAlong(tank, tank.fill, gravity).frequency);
        const mode = sloshAcross(tank, tank.fill, gravity);
        if (mode !== undefined) modes.push(mode.frequency);
      }
    }
  }
  return {
    centerShift: Math.max(across, along),
    slowestMode: modes.length === 0 ? undefined : Math.min(...modes),
  };
}
