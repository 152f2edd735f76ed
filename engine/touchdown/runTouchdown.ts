import { advance } from './advance.ts';
import { bringToRest } from './bringToRest.ts';
import { setHoldMoment } from './attitudeHold.ts';
import {
  DEFAULT_HOLD_BANDWIDTH,
  DEFAULT_MAX_STEPS,
  HULL_WATCH_SHARE,
  MAX_FLIGHT_TURN,
  STEPS_PER_LOOK,
} from './constants.ts';
import { MARGIN_SIZE } from './footprint.ts';
import { judge, judgeEnd } from './judge.ts';
import type { TouchdownKernel } from './kernel.ts';
import {
  FOUND_CONTACTS,
  FOUND_HIGHEST_UN,
  RUN_HOLD_X,
  FOUND_HULL_CONTACTS,
  RUN_HULL_ON,
  RUN_STEP,
  RUN_THRUST,
  RUN_THRUST_DECAY,
  BODY_VX,
} from './layout.ts';
import { closeLedger, openLedger, thrustPower, updateLedger } from './ledger.ts';
import { freeTime, hullGap, turningRate } from './lookAround.ts';
import { leanOf, readResult, readSample } from './readResult.ts';
import type { RunCourse } from './runCourse.ts';
import { keepsItsGear } from './settling.ts';
import { startTouchdown, type StartedRun } from './startTouchdown.ts';
import type { TouchdownConditions, TouchdownOptions, TouchdownResult, TouchdownSample } from './touchdownCase.ts';

/**
 * One touchdown. The conditions are taken as checked (`checkTouchdown`); what is out of range gives nonsense, not an error. The same
 * kernel, conditions and options give the same bits. Not reentrant: the kernel's arrays are the memory of the run.
 */
export function runTouchdown(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  options: TouchdownOptions = {},
): TouchdownResult {
  const started = startTouchdown(kernel, conditions, options);
  kernel.run[RUN_THRUST] = started.thrust;
  advance(kernel, 0);
  const course: RunCourse = {
    step: 0,
    computed: 0,
    outOfSteps: false,
    firstContact: kernel.found[FOUND_CONTACTS]! > 0 ? 0 : undefined,
    atRest: false,
    staysUp: false,
    quiet: false,
    onlyRocks: false,
    tipDirection: undefined,
    wentOver: undefined,
    margin: new Float64Array(MARGIN_SIZE),
    lastMargin: Infinity,
    leastMargin: Infinity,
    leastMarginStep: 0,
    marginIsFinal: false,
    restLooks: 0,
    quietSince: 0,
    quietSlide: 0,
    unchangedSince: 0,
    changed: 0,
    unchangedSlide: 0,
    gap: hullGap(kernel),
    clearance: Infinity,
    ledger: options.ledger === true ? openLedger(kernel) : undefined,
  };
  const every = options.historyEvery ?? 0;
  const history: TouchdownSample[] = [];
  if (every > 0) history.push(readSample(kernel, started, course));
  const maxSteps = options.maxSteps ?? DEFAULT_MAX_STEPS;
  while (course.step < started.stepLimit && course.computed < maxSteps) {
    const before = course.step;
    if (!fly(kernel, started, course)) stepOn(kernel, conditions, started, course, every);
    if (every > 0 && Math.floor(course.step / every) > Math.floor(before / every)) {
      history.push(readSample(kernel, started, course));
    }
    if (course.step % STEPS_PER_LOOK !== 0) continue;
    judge(kernel, conditions, started, course);
    course.marginIsFinal = options.only !== undefined && course.staysUp;
    if (course.atRest || (options.stopWhenDecided !== false && isDecided(kernel, conditions, started, course, options)))
      break;
  }
  course.outOfSteps = course.computed >= maxSteps;
  judgeEnd(kernel, started, course);
  const result = readResult(kernel, conditions, started, course);
  const ledger = course.ledger === undefined ? {} : { ledger: closeLedger(course.ledger, kernel) };
  const kept = every > 0 ? { history, ...ledger } : ledger;
  if (!movesOn(result, course, options)) return { ...result, ...kept };
  const steps = course.computed + bringToRest(kernel, started, course);
  return { ...result, ...leanOf(kernel, started, course), steps, ...kept };
}

/** True when a lander that stays up was left before it had come to rest, and its tilt at rest is wanted. */
function movesOn(
  { outcome }: TouchdownResult,
  { atRest }: RunCourse,
  { only, stopWhenDecided }: TouchdownOptions,
): boolean {
  return (
    !atRest && only === undefined && stopWhenDecided !== false && (outcome === 'upright' || outcome === 'overloaded')
  );
}

function isDecided(
  kernel: TouchdownKernel,
  { loadLimits }: TouchdownConditions,
  { gravity }: StartedRun,
  course: RunCourse,
  { only }: TouchdownOptions,
): boolean {
  if (course.tipDirection !== undefined || course.quiet || course.onlyRocks) return true;
  if (only === undefined || !course.staysUp) return false;
  return only === 'tipping' || (loadLimits === undefined && keepsItsGear(kernel, gravity));
}

/**
 * Free flight in one step: exact for the center of mass, and the turn in one splitting step of at most MAX_FLIGHT_TURN. Ends a whole number of looks
 * before anything can touch. False when there is no such flight.
 */
function fly(kernel: TouchdownKernel, started: StartedRun, course: RunCourse): boolean {
  const { run, found } = kernel;
  if (course.step % STEPS_PER_LOOK !== 0 || found[FOUND_CONTACTS]! > 0 || found[FOUND_HULL_CONTACTS]! > 0) return false;
  if (run[RUN_THRUST]! > 0 || run[RUN_HOLD_X] !== 0 || run[RUN_HOLD_X + 1] !== 0 || run[RUN_HOLD_X + 2] !== 0)
    return false;
  const rate = turningRate(kernel);
  const gap = Math.min(-found[FOUND_HIGHEST_UN]!, course.gap);
  const time = Math.min(freeTime(kernel, gap, rate), MAX_FLIGHT_TURN / rate);
  const left = started.stepLimit - course.step;
  const looks = Math.floor(Math.min(time / started.step, left) / STEPS_PER_LOOK);
  if (looks < 1) return false;
  const steps = looks * STEPS_PER_LOOK;
  run[RUN_STEP] = steps * started.step;
  run[RUN_HULL_ON] = 0;
  advance(kernel, 1);
  run[RUN_STEP] = started.step;
  course.step += steps;
  course.computed++;
  course.gap = hullGap(kernel);
  if (course.ledger !== undefined) updateLedger(course.ledger, kernel, 0);
  return true;
}

/** A batch of steps up to the next look, or less where something is to happen in between. */
function stepOn(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  started: StartedRun,
  course: RunCourse,
  every: number,
): void {
  const { run, found } = kernel;
  if (course.step % STEPS_PER_LOOK === 0) setHold(kernel, conditions, started, course);
  let count = Math.min(STEPS_PER_LOOK - (course.step % STEPS_PER_LOOK), started.stepLimit - course.step);
  if (every > 0) count = Math.min(count, every - (course.step % every));
  const waitsForContact = course.firstContact === undefined;
  const cutoff = waitsForContact ? Infinity : course.firstContact! + started.cutoffSteps;
  if (waitsForContact || course.ledger !== undefined) count = 1;
  if (run[RUN_THRUST]! > 0) {
    run[RUN_THRUST_DECAY] = course.step >= cutoff ? started.decay : 1;
    if (course.step < cutoff) count = Math.min(count, cutoff - course.step);
  }
  watchHull(kernel, started, course);
  const power = course.ledger === undefined ? 0 : thrustPower(kernel);
  advance(kernel, count);
  course.step += count;
  course.computed += count;
  if (waitsForContact && (found[FOUND_CONTACTS]! > 0 || found[FOUND_HULL_CONTACTS]! > 0))
    course.firstContact = course.step;
  if (course.ledger !== undefined) {
    updateLedger(course.ledger, kernel, ((power + thrustPower(kernel)) * started.step) / 2);
  }
  if (course.step % STEPS_PER_LOOK === 0 || waitsForContact) course.gap = hullGap(kernel);
}

/** Thrusters act from the start until their time after first contact is over. */
function setHold(
  kernel: TouchdownKernel,
  conditions: TouchdownConditions,
  started: StartedRun,
  course: RunCourse,
): void {
  const { hold } = conditions;
  if (hold === undefined) return;
  const ends = course.firstContact === undefined ? Infinity : course.firstContact + hold.duration / started.step;
  if (course.step < ends) setHoldMoment(kernel, started.gravity, hold.bandwidth ?? DEFAULT_HOLD_BANDWIDTH);
  else kernel.run.fill(0, RUN_HOLD_X, RUN_HOLD_X + 3);
}

/** Lets hull points touch in the coming batch if they could get there, with room for what an impact adds to the speed. */
function watchHull(kernel: TouchdownKernel, started: StartedRun, course: RunCourse): void {
  const { body, run, found, reach } = kernel;
  const vx = body[BODY_VX]!;
  const vy = body[BODY_VX + 1]!;
  const vz = body[BODY_VX + 2]!;
  const speed = Math.sqrt(vx * vx + vy * vy + vz * vz) + turningRate(kernel) * reach;
  const near = 2 * speed * STEPS_PER_LOOK * started.step + HULL_WATCH_SHARE * started.scale;
  run[RUN_HULL_ON] = course.gap < near ? 1 : 0;
  if (course.gap >= near) found[FOUND_HULL_CONTACTS] = 0;
}
