import { multiply, type Quaternion } from '../math/quaternion.ts';
import { acos, atan2 } from '../math/trig.ts';
import { dot3, type Vec3 } from '../math/vec3.ts';
import { quaternionOf } from './attitude.ts';
import { MARGIN, plumbMargin } from './footprint.ts';
import { toWorld } from './groundFrame.ts';
import type { TouchdownKernel } from './kernel.ts';
import {
  RUN_AXIS_X,
  FOOT_BOTTOMED,
  FOOT_SIZE,
  RUN_INVERSE_IX,
  FOOT_LATERAL,
  FOOT_LATERAL_END,
  FOOT_LEG,
  FOOT_LOAD,
  BODY_LX,
  FOUND_PEAK_ACCELERATION,
  FOOT_PEAK_LOAD,
  BODY_PX,
  BODY_QW,
  BODY_R11,
  FOOT_SINKAGE,
  FOOT_SLIDE,
  FOOT_STROKE,
  FOUND_UNSETTLED,
  BODY_VX,
} from './layout.ts';
import type { RunCourse } from './runCourse.ts';
import type { StartedRun } from './startTouchdown.ts';
import type {
  TouchdownConditions,
  TouchdownLimit,
  TouchdownOutcome,
  TouchdownResult,
  TouchdownSample,
} from './touchdownCase.ts';

const DEGREES_PER_RADIAN = 180 / Math.PI;

/** A tip that goes neither up nor down the slope to this share counts as downhill [-]. */
const ACROSS_SHARE = 1e-9;

/** The answer of a finished run. */
export function readResult(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  started: StartedRun,
  course: RunCourse,
): TouchdownResult {
  const { found, lander } = kernel;
  const peakAcceleration = Math.sqrt(found[FOUND_PEAK_ACCELERATION]!);
  const peakLoads = perLeg(kernel, FOOT_PEAK_LOAD);
  const strokes = perLeg(kernel, FOOT_STROKE);
  const limitsHit = hitLimits(kernel, conditions, course, started, peakLoads, peakAcceleration);
  return {
    outcome: outcomeOf(course, limitsHit),
    stillRocking: course.tipDirection === undefined && course.staysUp && !course.atRest && !course.quiet,
    outOfSteps: course.outOfSteps,
    limitsHit,
    leastMargin: { value: course.leastMargin, time: course.leastMarginStep * started.step },
    strokes,
    // a leg that is not latched folds over more than its stages
    strokesUsed: strokes.map((stroke, leg) => Math.min(1, stroke / totalStroke(lander.legs[leg]!.stages))),
    lateralUsed: lateralUsed(kernel),
    peakLoads,
    sinkages: perLeg(kernel, FOOT_SINKAGE),
    peakAcceleration,
    clearance: course.clearance,
    slide: Math.max(0, ...perLeg(kernel, FOOT_SLIDE)),
    ...leanOf(kernel, started, course),
    time: course.step * started.step,
    firstContact: (course.firstContact ?? course.step) * started.step,
    steps: course.computed,
    step: started.step,
    unsettledReturns: found[FOUND_UNSETTLED]!,
  };
}

/** How far the long axis leans now, and toward where it leans or has tipped. */
export function leanOf(
  kernel: TouchdownKernel,
  { frame }: StartedRun,
  { tipDirection }: RunCourse,
): Pick<TouchdownResult, 'restTiltDeg' | 'tiltAzimuth'> {
  const { run } = kernel;
  const axis = rotated(kernel, [run[RUN_AXIS_X]!, run[RUN_AXIS_X + 1]!, run[RUN_AXIS_X + 2]!]);
  const axisWorld = toWorld(frame, axis);
  const leaning = toWorld(frame, tipDirection ?? axis);
  return {
    restTiltDeg: acos(Math.max(-1, Math.min(1, axisWorld[2]))) * DEGREES_PER_RADIAN,
    tiltAzimuth: atan2(leaning[1], leaning[0]),
  };
}

function totalStroke(stages: readonly { readonly stroke: number }[]): number {
  return stages.reduce((sum, stage) => sum + stage.stroke, 0);
}

/** One field of the feet, for every leg of the lander in order; 0 for a missing one. */
function perLeg(kernel: TouchdownKernel, field: number): readonly number[] {
  const { feet, feetEnd, lander } = kernel;
  const values = lander.legs.map(() => 0);
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) values[feet[o + FOOT_LEG]!] = feet[o + field]!;
  return values;
}

/** Share of the stroke of each secondary strut that is used up; 0 where there is none. */
function lateralUsed(kernel: TouchdownKernel): readonly number[] {
  const lateral = perLeg(kernel, FOOT_LATERAL);
  const ends = perLeg(kernel, FOOT_LATERAL_END);
  return lateral.map((set, leg) => (set > 0 ? set / ends[leg]! : 0));
}

function outcomeOf(course: RunCourse, limitsHit: readonly TouchdownLimit[]): TouchdownOutcome {
  if (limitsHit.includes('tip downhill')) return 'tipped downhill';
  if (limitsHit.includes('tip uphill')) return 'tipped uphill';
  if (!course.atRest && !course.quiet && !course.staysUp) return 'timed out';
  return limitsHit.includes('crush exhausted') || limitsHit.includes('load') ? 'overloaded' : 'upright';
}

function hitLimits(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  course: RunCourse,
  started: StartedRun,
  peakLoads: readonly number[],
  peakAcceleration: number,
): readonly TouchdownLimit[] {
  const { feet, feetEnd } = kernel;
  const { loadLimits } = conditions;
  const limits: TouchdownLimit[] = [];
  if (course.tipDirection !== undefined) {
    const down = dot3(course.tipDirection, started.downhill) >= -ACROSS_SHARE;
    limits.push(down ? 'tip downhill' : 'tip uphill');
  }
  let exhausted = false;
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) {
    if (feet[o + FOOT_BOTTOMED]! > 0) exhausted = true;
  }
  if (exhausted) limits.push('crush exhausted');
  const legLoad = loadLimits?.legLoad ?? Infinity;
  if (peakLoads.some((load) => load > legLoad) || peakAcceleration > (loadLimits?.acceleration ?? Infinity)) {
    limits.push('load');
  }
  if (course.clearance <= 0) limits.push('clearance');
  return limits;
}

/** A vector of the principal frame, in the ground frame. */
function rotated(kernel: TouchdownKernel, v: Vec3): Vec3 {
  const { body } = kernel;
  const row = (r: number): number => body[r]! * v[0] + body[r + 1]! * v[1] + body[r + 2]! * v[2];
  return [row(BODY_R11), row(BODY_R11 + 3), row(BODY_R11 + 6)];
}

/** The lander now, in the world frame. */
export function readSample(kernel: TouchdownKernel, started: StartedRun, course: RunCourse): TouchdownSample {
  const { body, run, axes } = kernel;
  const { frame } = started;
  plumbMargin(kernel, started.gravity, course.margin);
  const groundToWorld = quaternionOf(frame.x, frame.y, frame.z);
  const principalToBody = quaternionOf(axes[0], axes[1], axes[2]);
  const bodyToPrincipal: Quaternion = [
    principalToBody[0],
    -principalToBody[1],
    -principalToBody[2],
    -principalToBody[3],
  ];
  const attitude: Quaternion = [body[BODY_QW]!, body[BODY_QW + 1]!, body[BODY_QW + 2]!, body[BODY_QW + 3]!];
  const rates: Vec3 = [
    body[BODY_LX]! * run[RUN_INVERSE_IX]!,
    body[BODY_LX + 1]! * run[RUN_INVERSE_IX + 1]!,
    body[BODY_LX + 2]! * run[RUN_INVERSE_IX + 2]!,
  ];
  const inBody = (i: 0 | 1 | 2): number => axes[0][i] * rates[0] + axes[1][i] * rates[1] + axes[2][i] * rates[2];
  return {
    time: course.step * started.step,
    position: toWorld(frame, [body[BODY_PX]!, body[BODY_PX + 1]!, body[BODY_PX + 2]!]),
    velocity: toWorld(frame, [body[BODY_VX]!, body[BODY_VX + 1]!, body[BODY_VX + 2]!]),
    attitude: multiply(multiply(groundToWorld, attitude), bodyToPrincipal),
    rates: [inBody(0), inBody(1), inBody(2)],
    margin: course.margin[MARGIN]!,
    strokes: perLeg(kernel, FOOT_STROKE),
    loads: perLeg(kernel, FOOT_LOAD),
  };
}
