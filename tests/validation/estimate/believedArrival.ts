import { pilot, STEADY } from '../../../engine/descent/index.ts';
import {
  arrivalOdds,
  createEstimate,
  drawMap,
  estimateView,
  feetOf,
  firstGuess,
  ORBITAL_SURVEY,
  START_SIGMA,
  stepEstimate,
  trueFigures,
  type EstimateView,
  type SideLimit,
} from '../../../engine/estimate/index.ts';
import type { Terrain } from '../../../engine/ground/index.ts';
import { nextUniform, seedRandom } from '../../../engine/math/random.ts';
import { createReadings, createSuite, readSensors } from '../../../engine/sensors/index.ts';
import { createDescent, readDescent, stepDescent, TICK_DT } from '../../../engine/world/index.ts';
import { findLimits, firstLanding } from '../../../levels/index.ts';
import { evenGround } from '../../support/dropLander.ts';
import { interpolateLimit } from '../../../engine/table/interpolateLimit.ts';

const { setup } = firstLanding(1);
const LIMITS = findLimits('trivet', 'moon')!;

/** Of the ground: that for which the limits are made [-]. */
const FRICTION = 1.25;
/** A height from which the radar is still in lock and the altimeter has time to settle [m]. */
const START_HEIGHT = 18;
const PROPELLANT = 90;

/** At the start, and by and large at contact [kg]: what is burned on the way moves the limit by less than 0.01 m/s. */
export const MASS = massAtStart();

/**
 * How far the interpolated limit is off [m/s]: root mean square over 60 contacts such as these descents end in, against a direct search
 * (`writeCalibration.ts` prints it anew).
 */
export const LIMIT_SIGMA = 0.03;
/** How far the attitude may still turn between shut-down and contact, by standard deviation [rad]: the thrusters hold it upright to a tenth of a degree. */
const TURN_SIGMA = (0.1 * Math.PI) / 180;

/** Of Trivet [m]. */
const HALF_STANCE = Math.max(...setup.lander.legs.map(({ footpad }) => Math.abs(footpad[0])));

export interface BelievedArrival {
  /** P(stay upright) by what was believed when the engine was shut down for the final drop [-]. */
  readonly odds: number;
  readonly stood: boolean;
}

/**
 * One descent of Trivet over an even slope of unknown size, flown by what the estimate believes toward a drift near the tip limit; undefined when it came down before
 * the engine was shut down. The seed decides all.
 */
export function flyToArrival(seed: number): BelievedArrival | undefined {
  const random = seedRandom(seed, 77);
  const slope = ((nextUniform(random) - 0.5) * 12 * Math.PI) / 180;
  const side = nextUniform(random) < 0.5 ? -1 : 1;
  // about where Trivet tips, and drawn without a look at the slope: odds are odds only of what is not known otherwise
  const drift = side * (1.8 + 1.4 * nextUniform(random));
  const terrain = evenGround(slope, FRICTION);
  const { lander, gravity } = setup;
  const start = { x: 0, y: START_HEIGHT, angle: 0, vx: drift, vy: -1.5, rate: 0 };
  const descent = createDescent({ lander, gravity, terrain, start, propellant: PROPELLANT });
  const crew = boardCrew(seed, readDescent(descent), terrain);
  const craft = { engine: lander.engine, gravity };
  let odds: number | undefined;
  while (descent.outcome === undefined) {
    const truth = readDescent(descent);
    const view = crew.look();
    const input = pilot({ ...STEADY, drift }, craft, { ...truth, ...view, height: view.clearance });
    stepDescent(descent, input);
    if (odds !== undefined) continue;
    if (readDescent(descent).touchdown !== undefined) return undefined;
    if (input.thrustPercent === 0 && view.clearance < STEADY.cutHeight) odds = oddsOf(view, crew.mapRiseSigma);
    else crew.step(readDescent(descent));
  }
  return odds === undefined ? undefined : { odds, stood: !descent.outcome.startsWith('tipped') };
}

function boardCrew(seed: number, first: ReturnType<typeof readDescent>, terrain: Terrain) {
  const { gravity } = setup;
  const legs = first.legs.length;
  const map = drawMap(terrain, seed, ORBITAL_SURVEY);
  const suite = createSuite({ seed, gravity, terrain, legs, probeLength: 0, propellant: PROPELLANT });
  const readings = createReadings(legs);
  const estimate = createEstimate({
    gravity,
    map,
    feet: feetOf(first),
    start: firstGuess(trueFigures(first, terrain), START_SIGMA, seed),
    startSigma: START_SIGMA,
  });
  readSensors(suite, first, [], readings);
  return {
    // of a rise between two posts, each off by itself
    mapRiseSigma: (Math.SQRT2 * ORBITAL_SURVEY.sigma) / ORBITAL_SURVEY.postSpacing,
    look: (): EstimateView => estimateView(estimate, readings, {}),
    step(truth: typeof first): void {
      readSensors(suite, truth, [], readings);
      stepEstimate(estimate, readings, {});
    },
  };
}

/** By what is believed at shut-down: a fall from there, upright in the end, on the map's slope. */
function oddsOf(view: EstimateView, riseSigma: number): number {
  const angle = view.angle / 2;
  const { descentRate, perMeter } = predictContact(view);
  // the height of the foot that comes first is off by that of the center, and by the slope to the foot
  const heightSigma = Math.sqrt(view.sigma.height ** 2 + (HALF_STANCE * riseSigma) ** 2);
  const at = { descentRate, angle, riseSigma, rateSigma: perMeter * heightSigma };
  return arrivalOdds({
    vx: view.vx,
    vxSigma: view.sigma.vx,
    angleSigma: Math.sqrt(view.sigma.angle ** 2 + TURN_SIGMA ** 2),
    covariance: view.driftWithAngle,
    right: sideLimit({ ...at, fall: -view.slope }, 1),
    left: sideLimit({ ...at, fall: view.slope }, -1),
  });
}

/** Descent rate at contact, and how it grows with the height fallen from [m/s], [1/s]: while thrust dies away in its lag, over ground that comes nearer with the drift. */
function predictContact({ vx, vy, slope, clearance }: EstimateView): { descentRate: number; perMeter: number } {
  const { gravity, lander } = setup;
  const { lag } = lander.engine;
  const rateAfter = (fall: number): number => {
    let [height, up] = [fall, vy];
    for (let time = 0; height > 0; time += TICK_DT) {
      // it carried the weight until now
      up -= gravity * (1 - Math.exp(-time / lag)) * TICK_DT;
      height += (up - vx * Math.tan(slope)) * TICK_DT;
    }
    return -up;
  };
  const step = 0.1;
  return {
    descentRate: rateAfter(clearance),
    perMeter: (rateAfter(clearance + step) - rateAfter(Math.max(0.01, clearance - step))) / (2 * step),
  };
}

interface ExpectedContact {
  readonly fall: number;
  readonly descentRate: number;
  readonly angle: number;
  readonly riseSigma: number;
  readonly rateSigma: number;
}

/** `travel` is +1 to the right: leaning with it is turning clockwise. */
function sideLimit({ fall, descentRate, angle, riseSigma, rateSigma }: ExpectedContact, travel: 1 | -1): SideLimit {
  const limit = (slope: number, turned: number, rate: number): number =>
    interpolateLimit(LIMITS, { slope, descentRate: rate, lean: -travel * turned, mass: MASS });
  const step = Math.PI / 180;
  const perRadian = (limit(fall, angle + step, descentRate) - limit(fall, angle - step, descentRate)) / (2 * step);
  const perFall = (limit(fall + step, angle, descentRate) - limit(fall - step, angle, descentRate)) / (2 * step);
  const perRate = (limit(fall, angle, descentRate + 0.1) - limit(fall, angle, descentRate - 0.1)) / 0.2;
  const sigma = Math.sqrt(LIMIT_SIGMA ** 2 + (perFall * riseSigma) ** 2 + (perRate * rateSigma) ** 2);
  return { speed: limit(fall, angle, descentRate), sigma, perRadian };
}

function massAtStart(): number {
  const start = { ...setup.start, x: 0, y: 1000 };
  return readDescent(createDescent({ ...setup, start, propellant: PROPELLANT })).mass;
}
