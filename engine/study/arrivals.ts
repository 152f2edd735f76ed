import { massProperties, type Lander } from '../lander/index.ts';
import { atan2, cos, sin, toAzimuthDeg, toRadians } from '../math/index.ts';
import { formatProblem, type FieldProblem } from '../result.ts';
import { landerStance } from '../statics/index.ts';
import {
  checkTouchdown,
  criticalAzimuths,
  leastTipLimit,
  prepareTouchdown,
  runTouchdown,
  tipLimit,
  type FirstLimit,
  type LegCondition,
  type TipLimit,
  type TouchdownConditions,
  type TouchdownKernel,
  type TouchdownResult,
} from '../touchdown/index.ts';

/** Friction under footpads and hull where nothing is said [-]. Common practice for rock and dry soil, no source. */
export const DEFAULT_FRICTION = 0.8;

/** Descent rate where none is given [m/s]. */
export const ASSUMED_DESCENT = 1;

/** Horizontal speed of an arrival where none is given [m/s]. */
export const ASSUMED_SPEED = 0.6;

/** An upright arrival of a lander, but for the direction and speed of its travel. */
export interface ArrivalQuestion {
  readonly lander: Lander;
  readonly gravity: number;
  /** + downhill in the direction of travel, or toward the azimuth of the fall where one is given [deg]. */
  readonly slopeDeg?: number | undefined;
  readonly fallAzimuthDeg?: number | undefined;
  readonly descentRate?: number | undefined;
  /** Toward the direction of travel [deg/s]. */
  readonly rate?: number | undefined;
  readonly friction?: number | undefined;
  /** Indices of legs that are gone. */
  readonly missing?: readonly number[] | undefined;
}

/** The tip limit of one direction of travel by simulation; speeds horizontal [m/s]. */
export interface TipFields {
  /** It stands at this speed and tips within `tipTolerance` above; 0: tips at any speed; null: at none up to `tipUpTo`. */
  readonly tip: number | null;
  readonly tipTolerance: number;
  readonly tipUpTo: number;
  /** Friction at which it tips first [-]. */
  readonly tipFriction: number;
  /** Least speed at which a leg is used up or a load limit passed, up to the tip limit; 0: even without drift. */
  readonly gear: number | null;
  readonly firstLimit: FirstLimit;
}

/** The least over all critical azimuths of travel. */
export interface LeastTipFields extends TipFields {
  readonly tipAzimuthDeg: number | null;
  /** Legs ahead in that direction, counted from 1: two at the ends of an edge square to it, one where it runs along a foot, else none. */
  readonly tipLegs: readonly number[];
  readonly gearAzimuthDeg: number | null;
  /** A speed above the limit at which it stands again, where one was seen. */
  readonly standsAgainAt: number | null;
}

/** Simulated arrivals of one lander, made ready once. */
export interface Arrivals {
  readonly toward: (azimuthDeg: number) => TipFields;
  readonly least: () => LeastTipFields;
  /** One touchdown toward an azimuth at a speed and a friction. */
  readonly land: (azimuthDeg: number, speed: number, friction: number) => TouchdownResult;
}

/** The arrivals asked about, or in words why they cannot be simulated. */
export function simulatedArrivals(question: ArrivalQuestion): Arrivals | string {
  const { lander, missing = [] } = question;
  const prepared = prepareTouchdown(lander);
  if (!prepared.ok) return whyNot(prepared.error);
  const problems = checkTouchdown(lander, arrival(question, 0));
  if (problems.length > 0) return whyNot(problems);
  const kernel = prepared.value;
  return {
    toward: (azimuthDeg) => fieldsOf(tipLimit(kernel, arrival(question, azimuthDeg))),
    least: () => leastOver(kernel, question, azimuthsFor(lander, missing, question.fallAzimuthDeg)),
    land: (azimuthDeg, speed, friction) => {
      const { ground, state, ...rest } = arrival(question, azimuthDeg);
      const moving = { ...state, horizontalSpeed: speed };
      return runTouchdown(kernel, { ...rest, ground: { ...ground, friction }, state: moving });
    },
  };
}

function leastOver(kernel: TouchdownKernel, question: ArrivalQuestion, azimuths: readonly number[]): LeastTipFields {
  const toward = (azimuth: number): TouchdownConditions => arrival(question, toAzimuthDeg(azimuth));
  const least = leastTipLimit(kernel, azimuths.map(toRadians), toward);
  const { tipAzimuth, gearAzimuth } = least;
  const tipAzimuthDeg = tipAzimuth === undefined ? null : toAzimuthDeg(tipAzimuth);
  return {
    ...fieldsOf(least),
    tipAzimuthDeg,
    tipLegs: tipAzimuthDeg === null ? [] : legsAhead(question, tipAzimuthDeg),
    gearAzimuthDeg: gearAzimuth === undefined ? null : toAzimuthDeg(gearAzimuth),
    standsAgainAt:
      tipAzimuth === undefined ? null : (tipLimit(kernel, toward(tipAzimuth), { strips: true }).standsAgainAt ?? null),
  };
}

function fieldsOf({ speed, tolerance, upTo, friction, gearSpeed, first }: TipLimit): TipFields {
  return {
    tip: speed ?? null,
    tipTolerance: tolerance,
    tipUpTo: upTo,
    tipFriction: friction,
    gear: gearSpeed ?? null,
    firstLimit: first,
  };
}

/** Every edge and every foot, and where the ground falls a way of its own along and against that too [deg]. */
function azimuthsFor(
  lander: Lander,
  missing: readonly number[],
  fallAzimuthDeg: number | undefined,
): readonly number[] {
  const own = criticalAzimuths(lander, missing).map(toAzimuthDeg);
  if (fallAzimuthDeg === undefined) return own;
  const along = [0, 90, 180, 270].map((turn) => (((fallAzimuthDeg + turn) % 360) + 360) % 360);
  return [...new Set([...own, ...along])].toSorted((a, b) => a - b);
}

/** Travel toward an azimuth of the lander: it runs along +x, and lander and fall line are turned. */
function arrival(question: ArrivalQuestion, azimuthDeg: number): TouchdownConditions {
  const { gravity, slopeDeg = 0, fallAzimuthDeg, descentRate = ASSUMED_DESCENT, rate = 0, missing = [] } = question;
  const fallDeg = (fallAzimuthDeg === undefined ? 0 : fallAzimuthDeg - azimuthDeg) + (slopeDeg < 0 ? 180 : 0);
  const yaw = toRadians(-azimuthDeg);
  // about the level axis to the left of travel, as the turned lander sees it
  const toward = toRadians(rate);
  const rates = [toward * sin(yaw), toward * cos(yaw), 0] as const;
  return {
    gravity,
    ground: {
      shape: { kind: 'plane', slope: toRadians(Math.abs(slopeDeg)), fallAzimuth: toRadians(fallDeg) },
      friction: question.friction ?? DEFAULT_FRICTION,
    },
    state: { horizontalSpeed: 0, descentRate, travelAzimuth: 0, yaw, rates },
    legs: missing.map((leg): LegCondition => ({ leg, kind: 'missing' })),
  };
}

/** Azimuths nearer than this are one [deg]. */
const SAME_DEG = 0.1;

function legsAhead({ lander, missing = [] }: ArrivalQuestion, azimuthDeg: number): readonly number[] {
  const isNear = (azimuth: number): boolean => {
    const apart = Math.abs(toAzimuthDeg(azimuth) - azimuthDeg);
    return Math.min(apart, 360 - apart) < SAME_DEG;
  };
  const stance = landerStance(lander, { missing });
  const edge = stance.kind === 'stands' ? stance.edges.find(({ normal }) => isNear(normal)) : undefined;
  if (edge !== undefined) return [edge.from + 1, edge.to + 1];
  const { center } = massProperties(lander);
  const foot = lander.legs.findIndex(
    ({ footpad: [x, y] }, index) => !missing.includes(index) && isNear(atan2(y - center[1], x - center[0])),
  );
  return foot < 0 ? [] : [foot + 1];
}

function whyNot(problems: readonly FieldProblem[]): string {
  return problems.map(formatProblem).join('; ');
}
