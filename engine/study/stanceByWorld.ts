import { massProperties } from '../lander/index.ts';
import { pivotBodyOver, requiredStance, tripLimit, type PivotBody, type RequiredStance } from '../pivot/index.ts';
import { landerStance, leastStaticTilt } from '../statics/index.ts';
import { findWorld, type World } from '../worlds.ts';
import { toRadians } from '../math/index.ts';
import type { StudyCase } from './studyCase.ts';

/** The half stance that a speed asks for on one world. */
export interface StanceRow {
  readonly world: string;
  readonly name: string;
  readonly gravity: number;
  /** Plastic pivot [m]; null when no stance that could be built will do. */
  readonly halfStance: number | null;
  readonly ratioToEarth: number | null;
  /** 'standing': the slope alone asks for as much. */
  readonly governedBy: 'trip' | 'standing' | null;
  /** Lossless bound [m]. */
  readonly halfStanceLossless: number | null;
  readonly ratioToEarthLossless: number | null;
  /** Tip limit of the lander as it is, simulated [m/s]; null: it tips at no speed looked at. Absent for plain geometry. */
  readonly tip?: number | null;
}

interface StanceQuestion {
  readonly body: PivotBody;
  readonly speed: number;
  readonly slopeDeg: number;
  readonly worlds: readonly World[];
}

export function stanceByWorld({ body, speed, slopeDeg, worlds }: StanceQuestion): readonly StanceRow[] {
  const { mass, centerHeight, inertia } = body;
  const requiredOn = ({ gravity }: World): ReturnType<typeof requiredStance> =>
    requiredStance({ mass, centerHeight, inertia }, { speed, gravity, slope: toRadians(slopeDeg) });
  const onEarth = requiredOn(earth());
  return worlds.map((world): StanceRow => {
    const { plastic, lossless } = requiredOn(world);
    return {
      world: world.id,
      name: world.name,
      gravity: world.gravity,
      halfStance: widthOf(plastic),
      ratioToEarth: ratio(plastic, onEarth.plastic),
      governedBy: plastic.kind === 'stance' ? plastic.governedBy : null,
      halfStanceLossless: widthOf(lossless),
      ratioToEarthLossless: ratio(lossless, onEarth.lossless),
    };
  });
}

function widthOf(required: RequiredStance): number | null {
  return required.kind === 'stance' ? required.halfStance : null;
}

function ratio(here: RequiredStance, onEarth: RequiredStance): number | null {
  return here.kind === 'stance' && onEarth.kind === 'stance' ? here.halfStance / onEarth.halfStance : null;
}

export function earth(): World {
  const world = findWorld('earth');
  if (world === undefined) throw new Error('Earth is listed');
  return world;
}

/** The half stance that a lander needs on each world for what it bears on Earth. */
export interface StanceStudy {
  /** Over the edge nearest to the center of mass. */
  readonly body: PivotBody;
  /** Its own plastic limit on Earth on this slope; where it has none, the speed of the arrival. Along the ground [m/s]. */
  readonly speed: number;
  readonly rows: readonly StanceRow[];
}

/** Undefined where it does not stand. */
export function stanceStudy(asked: StudyCase, worlds: readonly World[]): StanceStudy | undefined {
  const { lander, missing, slopeDeg } = asked;
  const stance = landerStance(lander, { missing });
  if (stance.kind === 'cannotStand') return undefined;
  const body = pivotBodyOver(leastStaticTilt(stance).edge, stance, massProperties(lander));
  const onEarth = tripLimit(body, { gravity: earth().gravity, slope: toRadians(slopeDeg) });
  const speed = onEarth.kind === 'limit' ? onEarth.plastic.alongGround : Math.abs(asked.horizontalSpeed);
  return { body, speed, rows: stanceByWorld({ body, speed, slopeDeg, worlds }) };
}
