import type { SourceState } from '../estimate/index.ts';
import { propellantPerImpulse } from '../descent/thrust.ts';
import type { DescentState } from '../world/descent.ts';
import type { SideLimits } from './liveMargin.ts';
import { standOdds } from './standOdds.ts';
import type { Run } from './table.ts';
import type { TablePlan } from './tableTypes.ts';
import { readSwing, type SwingReading } from './tankSwing.ts';

/** What one seat reads and no other. By instruments each value comes from its source; without them it is true. */

/** For Propellant. */
export interface PropellantReadings {
  /** Usable, by the gauge [kg]; absent before it first spoke. */
  readonly gauge?: number;
  readonly gaugeState: SourceState;
  /** Since its last sample [s]. */
  readonly gaugeAge?: number;
  /** Usable, by the sum of commanded thrust times time [kg]. */
  readonly reckoned: number;
  /** How long the lesser of the two lasts in a hover [s]. */
  readonly seconds: number;
  /** Thrust that is felt in flight, share of the maximum, by the inertial unit [-]; absent where it says nothing, and on the ground, which pushes too. */
  readonly felt?: number;
  /** The engine burns: a switch on the pressure in its chamber, without a fault in any plan. */
  readonly burns: boolean;
  /** Absent on the ground, where nothing pushes, without a figure of the motion, and in lying tanks. */
  readonly swing?: SwingReading;
}

/** For Site. */
export interface SiteReadings {
  /** Of each leg, in the order of the lander: shown locked. */
  readonly locked: readonly boolean[];
  readonly legsState: SourceState;
  readonly legsAge?: number;
  /** Tip limits at the predicted contact, for travel to either side [m/s]; absent where there is no number. */
  readonly limitLeft?: number;
  readonly limitRight?: number;
  /** Of the ground there, positive where it rises to the right, and its least and most within what the prediction may be off by [rad]. */
  readonly slope?: number;
  readonly slopeLeast?: number;
  readonly slopeMost?: number;
}

/** For Lead. */
export interface LeadReadings {
  /** P(stay upright) if it goes on as it moves now [-]; absent where there is no number. */
  readonly odds?: number;
}

/** By what a seat reads: with instruments what they say, without them the flight as it is. */
interface Known {
  readonly plan: TablePlan;
  readonly run: Run;
  /** The descent as the crew knows it. */
  readonly known: DescentState;
}

export function readPropellant({ plan, run, known }: Known, burned: number): PropellantReadings {
  const { lander, gravity, propellant } = plan.setup;
  const { engine } = lander;
  const reckoned = Math.max(0, propellant - burned);
  const source = sourceOf(run, 'propellantGauge');
  const gauge = source === undefined ? known.propellant : source.values[0];
  const lesser = gauge === undefined ? reckoned : Math.min(gauge, reckoned);
  const perSecond = known.mass * gravity * propellantPerImpulse(engine);
  const swing = readSwing(run);
  const felt = known.phase === 'contact' ? undefined : feltThrust(run, known, engine.maxThrust);
  return {
    ...(gauge !== undefined && { gauge }),
    gaugeState: source?.state ?? 'valid',
    ...(source?.age !== undefined && { gaugeAge: source.age }),
    reckoned,
    seconds: lesser / perSecond,
    ...(felt !== undefined && { felt }),
    burns: run.flight.thrust > 0,
    ...(swing !== undefined && { swing }),
  };
}

/** The push along the body that the inertial unit feels, of full thrust [-]. */
function feltThrust(run: Run, { mass, thrust }: DescentState, maxThrust: number): number | undefined {
  if (run.instruments === undefined) return thrust / maxThrust;
  const along = sourceOf(run, 'inertialUnit')?.values[1];
  return along === undefined ? undefined : Math.max(0, along * mass) / maxThrust;
}

/** The latches of the legs, as they are shown. */
export function readLegs({ run, known }: Omit<Known, 'plan'>): Pick<SiteReadings, 'locked' | 'legsState' | 'legsAge'> {
  const source = sourceOf(run, 'legIndications');
  const locked = source === undefined ? known.legs.map(() => true) : source.values.map((value) => value > 0);
  return {
    locked,
    legsState: source?.state ?? 'valid',
    ...(source?.age !== undefined && { legsAge: source.age }),
  };
}

export function readSite(parts: Known, sides: SideLimits | undefined): SiteReadings {
  return {
    ...readLegs(parts),
    ...(sides?.left !== undefined && { limitLeft: sides.left }),
    ...(sides?.right !== undefined && { limitRight: sides.right }),
    ...(sides !== undefined && {
      slope: sides.contact.slope,
      slopeLeast: sides.contact.slopes[0],
      slopeMost: sides.contact.slopes[1],
    }),
  };
}

/** By instruments alone: without them nothing is unsure but what people will do. */
export function readLead({ plan, run, known }: Known, sides: SideLimits | undefined): LeadReadings {
  const { instruments, believed } = run;
  if (instruments === undefined || believed === undefined) return {};
  if (plan.limits === undefined || sides === undefined) return {};
  const stance = 2 * instruments.feet.reduce((most, { across }) => Math.max(most, Math.abs(across)), 0);
  // each foot on ground that is off by itself
  const riseSigma = (Math.SQRT2 * instruments.map.sigma) / stance;
  const odds = standOdds(plan.limits, believed, known, { contact: sides.contact, riseSigma });
  return odds === undefined ? {} : { odds };
}

/** State, age and values of a source; undefined without instruments. No values before its first report. */
function sourceOf(
  { instruments, believed }: Run,
  source: 'propellantGauge' | 'legIndications' | 'inertialUnit',
): { readonly state: SourceState; readonly age: number | undefined; readonly values: readonly number[] } | undefined {
  if (instruments === undefined || believed === undefined) return undefined;
  const reading = instruments.readings[source];
  const { state, age } = believed.sources[source];
  return { state, age, values: reading.arrivedTick < 0 ? [] : [...reading.values] };
}
