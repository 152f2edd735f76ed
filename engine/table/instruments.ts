import {
  createEstimate,
  drawMap,
  estimateView,
  firstGuess,
  ORBITAL_SURVEY,
  START_SIGMA,
  stepEstimate,
  trueFigures,
  type Estimate,
  type EstimateView,
  type FootOffset,
  type Judgments,
  type MapGround,
} from '../estimate/index.ts';
import type { Fault } from '../faults/index.ts';
import { hashValue } from '../math/hashValue.ts';
import { cos, sin } from '../math/trig.ts';
import { createReadings, createSuite, readSensors, type Readings, type SensorSuite } from '../sensors/index.ts';
import type { ControlInput, DescentSetup, DescentState, LegState, Phase } from '../world/descent.ts';
import { TICK_DT, TICK_RATE } from '../world/constants.ts';
import { APPROACH_ENDS, FINAL_DROP_BELOW } from '../world/thresholds.ts';
import { createBelievedFacing, followOrder, viewFacing, type BelievedFacing } from './believedFacing.ts';
import type { InstrumentPlan } from './tableTypes.ts';

/**
 * What a crew knows a descent by: sensors that measure it, a map, and an estimate that is made of both. Whatever the crew is shown before the lander
 * is at rest comes from here.
 */
export interface Instruments {
  readonly setup: DescentSetup;
  readonly suite: SensorSuite;
  readonly readings: Readings;
  readonly map: MapGround;
  readonly estimate: Estimate;
  /** As the crew knows them to stand. */
  feet: readonly FootOffset[];
  readonly facing: BelievedFacing;
  /** What is wrong with the sensors now. */
  faults: readonly Fault[];
  /** Of the lander without its usable propellant [kg]. */
  readonly dryMass: number;
  /** Since a contact probe first touched [tick], and by how much it is believed to have come down since [m]; 0 before. */
  touchedFor: number;
  sunk: number;
}

/** A touch is taken for contact after this at the latest: a lander that comes down at all has gone down the length of its probes [tick]. */
const TOUCHED_TO_DOWN = 3 * TICK_RATE;
/** No probe is so long [m]. */
const TOO_HIGH_TO_TOUCH = 2;

/** Instruments at the start of a descent, with the first reading taken. `seed` draws noise, biases, the errors of map and start. */
export function createInstruments(
  { seed, surveyed }: InstrumentPlan,
  setup: DescentSetup,
  first: DescentState,
): Instruments {
  const { lander, gravity, terrain, propellant } = setup;
  const legs = lander.legs.length;
  const suite = createSuite({ seed, gravity, terrain, legs, probeLength: lander.probeLength, propellant });
  const map = drawMap(surveyed ?? terrain, seed, ORBITAL_SURVEY);
  const facing = createBelievedFacing(setup, first);
  const { feet } = facing;
  const start = firstGuess(trueFigures(first, terrain), START_SIGMA, seed);
  const estimate = createEstimate({ gravity, map, feet, start, startSigma: START_SIGMA });
  const readings = createReadings(legs);
  const faults = setup.faults ?? [];
  readSensors(suite, first, faults, readings);
  return {
    setup,
    suite,
    readings,
    map,
    estimate,
    feet,
    facing,
    faults,
    dryMass: first.mass - first.propellant,
    touchedFor: 0,
    sunk: 0,
  };
}

/** One tick: what the sensors say of the truth, and what is believed of it. `ordered` is by how many edges the lander is to turn. */
export function stepInstruments(
  instruments: Instruments,
  truth: DescentState,
  judgments: Judgments,
  ordered = 0,
): EstimateView {
  followFacing(instruments, ordered);
  const { suite, faults, readings, estimate } = instruments;
  readSensors(suite, truth, faults, readings);
  stepEstimate(estimate, readings, judgments);
  const believed = viewInstruments(instruments, judgments);
  followTouch(instruments, believed);
  return believed;
}

/** Whatever has touched turns no more. */
function followFacing(instruments: Instruments, ordered: number): void {
  if (instruments.touchedFor > 0) return;
  const feet = followOrder(instruments.facing, ordered);
  if (feet === undefined) return;
  instruments.feet = feet;
  instruments.estimate.setup = { ...instruments.estimate.setup, feet };
}

/** Counts from the first touch on. A touch high up that goes away again was none. */
function followTouch(instruments: Instruments, { clearance, vy }: EstimateView): void {
  const { readings, setup } = instruments;
  const touches = readings.contactProbes.values.some((value) => value > 0);
  if (!touches && instruments.touchedFor === 0) return;
  if (!touches && clearance > TOO_HIGH_TO_TOUCH) {
    instruments.touchedFor = 0;
    instruments.sunk = 0;
    return;
  }
  instruments.touchedFor += 1;
  if (instruments.sunk < setup.lander.probeLength) instruments.sunk += Math.max(0, -vy) * TICK_DT;
}

export function viewInstruments({ estimate, readings }: Instruments, judgments: Judgments): EstimateView {
  return estimateView(estimate, readings, judgments);
}

/** Of everything that decides the next tick of belief. */
export function hashInstruments({ suite, readings, estimate, facing, touchedFor, sunk }: Instruments): string {
  const { mean, covariance, past, rate, tracks } = estimate;
  return hashValue({
    suite,
    readings,
    mean: [...mean],
    covariance: [...covariance],
    past: [...past],
    rate,
    tracks,
    heading: facing.heading,
    touchedFor,
    sunk,
  });
}

/**
 * The descent as it is believed, in the shape in which a true one is read: place, motion and height from the estimate, propellant from its gauge, thrust as it
 * was commanded, contact by the probes, legs as built. Nothing in it is true but what the instruments say.
 */
export function believedState(instruments: Instruments, view: EstimateView, commanded: ControlInput): DescentState {
  const { readings, setup, dryMass } = instruments;
  const { tick, x, y, vx, vy, angle, rate, slope, clearance } = view;
  const facing = viewFacing(instruments.facing);
  const { arrivedTick, values } = readings.propellantGauge;
  // what was loaded is known before the gauge first says so
  const propellant = arrivedTick < 0 ? setup.propellant : Math.max(0, values[0] ?? 0);
  return {
    tick,
    phase: believedPhase(instruments, clearance, commanded),
    x,
    y,
    vx,
    vy,
    angle,
    rate,
    thrust: (commanded.thrustPercent / 100) * setup.lander.engine.maxThrust,
    propellant,
    mass: dryMass + propellant,
    height: clearance,
    slope,
    legs: instruments.feet.map((foot, leg) => believedLeg(instruments, view, foot, leg)),
    commanded,
    ...(facing && { facing }),
    contacts: [],
  };
}

/** A touch is taken for contact at once when the height that is believed must be wrong, else once the probe's length has been gone down. */
function believedPhase(
  { touchedFor, sunk, setup }: Instruments,
  clearance: number,
  { thrustPercent }: ControlInput,
): Phase {
  const isDown = sunk >= setup.lander.probeLength || touchedFor >= TOUCHED_TO_DOWN || clearance > TOO_HIGH_TO_TOUCH;
  if (touchedFor > 0 && isDown) return 'contact';
  if (thrustPercent === 0 && clearance < FINAL_DROP_BELOW) return 'final drop';
  return clearance > APPROACH_ENDS ? 'approach' : 'terminal descent';
}

function believedLeg(
  { readings }: Instruments,
  { x, y, angle }: EstimateView,
  { across, along, aside }: FootOffset,
  leg: number,
): LegState {
  return {
    footX: x + across * cos(angle) - along * sin(angle),
    footY: y + across * sin(angle) + along * cos(angle),
    footZ: aside,
    inContact: (readings.contactProbes.values[leg] ?? 0) > 0,
    stroke: 0,
    strokeUsed: 0,
    usedUp: false,
    load: 0,
  };
}
