import { massProperties } from '../lander/index.ts';
import { atan2, toDegrees, toRadians } from '../math/index.ts';
import { tripLimitToward } from '../pivot/index.ts';
import { landerStance, leastStaticTilt, staticTilt } from '../statics/index.ts';
import { simulatedArrivals, type LeastTipFields, type TipFields } from './arrivals.ts';
import { arrivalQuestion, type StudyCase } from './studyCase.ts';

/** What needs no simulation, toward one azimuth of the lander. */
interface RigidRow {
  readonly azimuthDeg: number;
  /** Tilt of the ground at which it falls that way [deg]. */
  readonly tiltDeg: number;
  /** Closed form, feet together on rigid legs, horizontal [m/s]; undefined: it falls without moving. */
  readonly plastic: number | undefined;
}

export type RigidRound =
  | {
      readonly stands: true;
      readonly rows: readonly RigidRow[];
      readonly least: {
        readonly tiltDeg: number;
        readonly azimuthDeg: number;
        readonly legs: readonly [number, number];
      };
      readonly mass: number;
      readonly centerHeight: number;
      /** Foot point of the center of mass to the nearest tip edge [m]. */
      readonly halfStance: number;
    }
  | { readonly stands: false; readonly reason: string };

/** Static tilt and closed form all round, at once. */
export function rigidRound(asked: StudyCase, stepDeg: number): RigidRound {
  const { lander, gravity, slopeDeg, descentRate, missing } = asked;
  const stance = landerStance(lander, { missing });
  if (stance.kind === 'cannotStand') return { stands: false, reason: stance.reason };
  const bulk = massProperties(lander);
  const condition = { gravity, slope: toRadians(slopeDeg), rate: 0, firstContact: 'together', descentRate } as const;
  const { tilt, azimuth, edge } = leastStaticTilt(stance);
  return {
    stands: true,
    rows: Array.from({ length: 360 / stepDeg }, (_, i) => {
      const toward = toRadians(i * stepDeg);
      const limit = tripLimitToward(stance, bulk, condition, toward);
      const plastic = limit.kind === 'limit' ? limit.plastic.horizontal : undefined;
      return { azimuthDeg: i * stepDeg, tiltDeg: toDegrees(staticTilt(stance, toward)), plastic };
    }),
    least: {
      tiltDeg: toDegrees(tilt),
      azimuthDeg: (toDegrees(azimuth) + 360) % 360,
      legs: [edge.from + 1, edge.to + 1],
    },
    mass: bulk.mass,
    centerHeight: bulk.center[2],
    halfStance: edge.distance,
  };
}

/** Azimuths of the simulated round, in the order in which they are looked at: every 45 deg first, then 15, then 5. */
const ROUNDS_DEG = [45, 15, 5] as const;

export interface LimitsSoFar {
  /** In the order found. */
  readonly rows: readonly (TipFields & { readonly azimuthDeg: number })[];
  /** Over every edge and foot, once it is known. */
  readonly least: LeastTipFields | undefined;
  /** Of the round that is whole [deg]; undefined before the first is. */
  readonly wholeDeg: number | undefined;
  readonly isDone: boolean;
}

/** The simulated tip limit all round, the least of it after the first round. One step is one azimuth. A string: why it cannot be simulated. */
export function* limitsRound(asked: StudyCase): Generator<LimitsSoFar | string> {
  const arrivals = simulatedArrivals(arrivalQuestion(asked));
  if (typeof arrivals === 'string') {
    yield arrivals;
    return;
  }
  const rows: LimitsSoFar['rows'][number][] = [];
  const known = new Set<number>();
  let least: LeastTipFields | undefined;
  let wholeDeg: number | undefined;
  for (const stepDeg of ROUNDS_DEG) {
    for (let azimuthDeg = 0; azimuthDeg < 360; azimuthDeg += stepDeg) {
      if (known.has(azimuthDeg)) continue;
      known.add(azimuthDeg);
      rows.push({ azimuthDeg, ...arrivals.toward(azimuthDeg) });
      yield { rows: [...rows], least, wholeDeg, isDone: false };
    }
    wholeDeg = stepDeg;
    least ??= arrivals.least();
    yield { rows: [...rows], least, wholeDeg, isDone: stepDeg === ROUNDS_DEG.at(-1) };
  }
}

/** The least tip limit of a case alone, or why it cannot be simulated. */
export function leastLimit(asked: StudyCase): LeastTipFields | string {
  const arrivals = simulatedArrivals(arrivalQuestion(asked));
  return typeof arrivals === 'string' ? arrivals : arrivals.least();
}

/** Where the feet stand, seen from the center of mass: azimuths of the lander [deg]. */
export function feetRound({
  lander,
  missing,
}: Pick<StudyCase, 'lander' | 'missing'>): readonly { readonly azimuthDeg: number; readonly missing: boolean }[] {
  const { center } = massProperties(lander);
  return lander.legs.map(({ footpad: [x, y] }, leg) => ({
    azimuthDeg: toDegrees(atan2(y - center[1], x - center[0])),
    missing: missing.includes(leg),
  }));
}
