import { landerStance } from '../../../engine/statics/index.ts';
import {
  criticalAzimuths,
  HIGHEST_FRICTION,
  hasTipped,
  leastTipLimit,
  prepareTouchdown,
  runTouchdown,
  tipLimit,
  type TipLimit,
  type TouchdownCase,
  type TouchdownConditions,
  type TouchdownKernel,
} from '../../../engine/touchdown/index.ts';

/** A stated limit that the simulation contradicts. Azimuth of travel in the frame of the lander [rad], speeds in m/s. */
export interface Contradiction {
  readonly arrival: string;
  readonly azimuth: number;
  readonly limit: number;
  readonly tolerance: number;
  readonly speed: number;
  /** Of one that stands above its limit: after so many tolerances it tips; undefined beyond FARTHEST of them. */
  readonly tipsAfter?: number;
}

/** How far above a limit at which it stands is looked on [tolerances]. */
const FARTHEST = 100;

/** What the simulation says just below and just above stated tip limits, yaw by yaw. */
interface LimitCounts {
  arrivals: number;
  yaws: number;
  /** Yaws that have a limit above 0, that tip at any speed, and that tip at none up to the last one looked at. */
  limits: number;
  zeros: number;
  nones: number;
  /** Tips at its limit less the tolerance; stands at its limit and the tolerance; stands at the speed named as tipping. */
  readonly tipsBelow: Contradiction[];
  readonly standsAbove: Contradiction[];
  readonly standsWhereTipping: Contradiction[];
  /** Tips at the least limit over directions less the tolerance, at a yaw sampled; stands just above it toward its own azimuth. */
  readonly tipsBelowLeast: Contradiction[];
  readonly standsAboveLeast: Contradiction[];
  /** Limits at yaws sampled that lie below the least one by more than the tolerance; `speed` is the lower limit. */
  readonly belowLeast: Contradiction[];
}

export function noCounts(): LimitCounts {
  return {
    arrivals: 0,
    yaws: 0,
    limits: 0,
    zeros: 0,
    nones: 0,
    tipsBelow: [],
    standsAbove: [],
    standsWhereTipping: [],
    tipsBelowLeast: [],
    standsAboveLeast: [],
    belowLeast: [],
  };
}

/** Holds the stated limits of one arrival, its lander turned to each of so many even azimuths and square to each edge, against the simulation. */
export function countLimits(counts: LimitCounts, arrival: string, touchdown: TouchdownCase, even: number): void {
  const { lander, ...conditions } = touchdown;
  const prepared = prepareTouchdown(lander);
  if (!prepared.ok) throw new Error(JSON.stringify(prepared.error));
  const kernel = prepared.value;
  const { travelAzimuth = 0 } = conditions.state;
  const toward = (azimuth: number): TouchdownConditions => ({
    ...conditions,
    state: { ...conditions.state, travelAzimuth, yaw: travelAzimuth - azimuth },
  });
  const missing = (conditions.legs ?? []).flatMap(({ kind, leg }) => (kind === 'missing' ? [leg] : []));
  const least = leastTipLimit(kernel, criticalAzimuths(lander, missing), toward);
  counts.arrivals += 1;
  for (const azimuth of sampledAzimuths(touchdown, missing, even)) {
    const at = { kernel, conditions: toward(azimuth), arrival, azimuth };
    const own = countOne(counts, at);
    if (least.speed === undefined || least.speed === 0) continue;
    const [below, , contradiction] = sides(at, least);
    if (tips(at, below)) counts.tipsBelowLeast.push(contradiction(below));
    if (own < least.speed - least.tolerance) counts.belowLeast.push(contradiction(own));
  }
  if (least.speed === undefined || least.tipAzimuth === undefined) return;
  const at = { kernel, conditions: toward(least.tipAzimuth), arrival, azimuth: least.tipAzimuth };
  const [, above, contradiction] = sides(at, least);
  if (!tips(at, above)) counts.standsAboveLeast.push(contradiction(above));
}

interface OneYaw {
  readonly kernel: TouchdownKernel;
  readonly conditions: TouchdownConditions;
  readonly arrival: string;
  readonly azimuth: number;
}

/** Counts the limit of one yaw and returns it; Infinity where there is none. */
function countOne(counts: LimitCounts, at: OneYaw): number {
  const found = tipLimit(at.kernel, at.conditions);
  counts.yaws += 1;
  if (found.speed === undefined || found.tipsAt === undefined) {
    counts.nones += 1;
    return Infinity;
  }
  const [below, above, contradiction] = sides(at, found);
  if (found.speed === 0) counts.zeros += 1;
  else {
    counts.limits += 1;
    if (tips(at, below)) counts.tipsBelow.push(contradiction(below));
  }
  if (!tips(at, above)) counts.standsAbove.push({ ...contradiction(above), ...tipsAfter(at, found) });
  if (!tips(at, found.tipsAt)) counts.standsWhereTipping.push(contradiction(found.tipsAt));
  return found.speed;
}

function sides(
  { arrival, azimuth }: OneYaw,
  { speed = 0, tolerance }: TipLimit,
): readonly [below: number, above: number, (speed: number) => Contradiction] {
  const contradiction = (at: number): Contradiction => ({ arrival, azimuth, limit: speed, tolerance, speed: at });
  return [Math.max(0, speed - tolerance), speed + tolerance, contradiction];
}

function tipsAfter(at: OneYaw, { speed = 0, tolerance }: TipLimit): { readonly tipsAfter?: number } {
  for (let after = 2; after <= FARTHEST; after++) if (tips(at, speed + after * tolerance)) return { tipsAfter: after };
  return {};
}

/** At the friction of the ground or at the highest plausible one. */
function tips({ kernel, conditions }: OneYaw, horizontalSpeed: number): boolean {
  const { ground, state } = conditions;
  return [ground.friction, Math.max(ground.friction, HIGHEST_FRICTION)].some((friction) =>
    hasTipped(
      runTouchdown(
        kernel,
        { ...conditions, ground: { ...ground, friction }, state: { ...state, horizontalSpeed } },
        { only: 'tipping' },
      ),
    ),
  );
}

function sampledAzimuths({ lander }: TouchdownCase, missing: readonly number[], even: number): readonly number[] {
  const stance = landerStance(lander, { missing });
  const edges = stance.kind === 'stands' ? stance.edges.map(({ normal }) => normal) : [];
  return [...Array.from({ length: even }, (_, i) => (2 * Math.PI * i) / even), ...edges];
}
