import { LYING_COSINE } from './constants.ts';
import { energyHeight, liftOverEdge } from './edgeBarrier.ts';
import { footprintCorners, MARGIN, OUTWARD, plumbMargin } from './footprint.ts';
import type { TouchdownKernel } from './kernel.ts';
import { FOOT_SIZE, FOUND_HULL_CONTACTS, FOOT_LEG, FOOT_LEVEL, FOUND_SLIPPED } from './layout.ts';
import type { RunCourse } from './runCourse.ts';
import { cannotTip, isAtRest, isQuiet, onlyRocks } from './settling.ts';
import type { StartedRun } from './startTouchdown.ts';
import { isTipping, uprightness } from './tipping.ts';
import type { TouchdownConditions } from './touchdownCase.ts';

/** One look at the run: margin, clearance, and whether the lander has tipped or come to rest. Reasons in README.md, "Outcome". */
export function judge(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  started: StartedRun,
  course: RunCourse,
): void {
  const { found } = kernel;
  const answer = course.margin;
  dropFolded(kernel);
  plumbMargin(kernel, started.gravity, answer);
  const margin = answer[MARGIN]!;
  course.clearance = Math.min(course.clearance, course.gap);
  if (course.firstContact !== undefined) {
    if (margin < course.leastMargin && !course.marginIsFinal) {
      course.leastMargin = margin;
      course.leastMarginStep = course.step;
    }
    if (margin > 0) course.wentOver = undefined;
    else course.wentOver ??= [answer[OUTWARD]!, answer[OUTWARD + 1]!, answer[OUTWARD + 2]!];
    const rests = isAtRest(kernel, started, course);
    const lies = rests && margin <= 0 && found[FOUND_HULL_CONTACTS]! > 0;
    if (course.tipDirection === undefined && (lies || isTipping(kernel, conditions, started, course))) tip(course);
    if (!course.staysUp && course.tipDirection === undefined) course.staysUp = cannotTip(kernel, started, margin);
    course.quiet = isQuiet(kernel, started, course, answer);
    course.onlyRocks = onlyRocks(kernel, started, course);
    course.atRest = rests && (margin > 0 || lies);
    // simulated on to rest, a lander is what it has come to
    if (course.atRest && margin > 0) course.tipDirection = undefined;
  }
  course.lastMargin = margin;
  found[FOUND_SLIPPED] = 0;
}

/** At the end of its time, a lander that lies far over on its hull, too slow to come back, has tipped although it still slides. */
export function judgeEnd(kernel: TouchdownKernel, started: StartedRun, course: RunCourse): void {
  if (course.tipDirection !== undefined || !(course.margin[MARGIN]! <= 0)) return;
  const farOver = uprightness(kernel) < LYING_COSINE * started.gravity;
  const slow = energyHeight(kernel, started.gravity) < liftOverEdge(kernel, started.gravity);
  if (farOver && slow && kernel.found[FOUND_HULL_CONTACTS]! > 0) tip(course);
}

/** Named for the edge over which the body went last: while it waits for a verdict it may roll on over others. */
function tip(course: RunCourse): void {
  const { margin, wentOver } = course;
  course.tipDirection = wentOver ?? [margin[OUTWARD]!, margin[OUTWARD + 1]!, margin[OUTWARD + 2]!];
}

/** A leg that has folded away no longer counts in the footprint. */
function dropFolded(kernel: TouchdownKernel): void {
  const { feet, feetEnd, lander } = kernel;
  if (!hasFolded(kernel)) return;
  const offsets: number[] = [];
  for (let o = 0; o < feetEnd; o += FOOT_SIZE) if (feet[o + FOOT_LEVEL]! > -Infinity) offsets.push(o);
  if (offsets.length === 0) return;
  const legs = offsets.map((o) => feet[o + FOOT_LEG]!);
  kernel.footprint = footprintCorners(lander, legs).map((leg) => offsets[legs.indexOf(leg)]!);
}

/** Looked at all the time, and hardly ever true: nothing is allocated for it. */
function hasFolded({ feet, footprint }: TouchdownKernel): boolean {
  for (let i = 0; i < footprint.length; i++) if (feet[footprint[i]! + FOOT_LEVEL] === -Infinity) return true;
  return false;
}
