import type { EstimateView, SourceState } from '../estimate/index.ts';
import { propellantPerImpulse } from '../descent/thrust.ts';
import type { DescentSetup, DescentState } from '../world/descent.ts';
import type { Instruments } from './instruments.ts';
import type { SideLimits } from './liveMargin.ts';

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
  /** Thrust that is felt, share of the maximum, by the inertial unit [-]; absent where it says nothing. */
  readonly felt?: number;
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
  readonly setup: DescentSetup;
  readonly flight: DescentState;
  readonly instruments: Instruments | undefined;
  readonly believed: EstimateView | undefined;
}

export function readPropellant({ setup, flight, instruments, believed }: Known, burned: number): PropellantReadings {
  const { lander, gravity, propellant } = setup;
  const { engine } = lander;
  const reckoned = Math.max(0, propellant - burned);
  const source = sourceOf(instruments, believed, 'propellantGauge');
  const gauge = source === undefined ? flight.propellant : source.values[0];
  const lesser = gauge === undefined ? reckoned : Math.min(gauge, reckoned);
  const perSecond = flight.mass * gravity * propellantPerImpulse(engine);
  const felt = instruments === undefined ? flight.thrust / engine.maxThrust : feltThrust(instruments, believed, flight);
  return {
    ...(gauge !== undefined && { gauge }),
    gaugeState: source?.state ?? 'valid',
    ...(source?.age !== undefined && { gaugeAge: source.age }),
    reckoned,
    seconds: lesser / perSecond,
    ...(felt !== undefined && { felt }),
  };
}

/** The push along the body that the inertial unit feels, of full thrust [-]. */
function feltThrust(
  instruments: Instruments,
  believed: EstimateView | undefined,
  { mass }: DescentState,
): number | undefined {
  const along = sourceOf(instruments, believed, 'inertialUnit')?.values[1];
  return along === undefined ? undefined : Math.max(0, along * mass) / instruments.setup.lander.engine.maxThrust;
}

export function readSite({ flight, instruments, believed }: Known, sides: SideLimits | undefined): SiteReadings {
  const source = sourceOf(instruments, believed, 'legIndications');
  const locked = source === undefined ? flight.legs.map(() => true) : source.values.map((value) => value > 0);
  return {
    locked,
    legsState: source?.state ?? 'valid',
    ...(source?.age !== undefined && { legsAge: source.age }),
    ...(sides?.left !== undefined && { limitLeft: sides.left }),
    ...(sides?.right !== undefined && { limitRight: sides.right }),
    ...(sides !== undefined && {
      slope: sides.contact.slope,
      slopeLeast: sides.contact.slopes[0],
      slopeMost: sides.contact.slopes[1],
    }),
  };
}

/** State, age and values of a source; undefined without instruments. No values before its first report. */
function sourceOf(
  instruments: Instruments | undefined,
  believed: EstimateView | undefined,
  source: 'propellantGauge' | 'legIndications' | 'inertialUnit',
): { readonly state: SourceState; readonly age: number | undefined; readonly values: readonly number[] } | undefined {
  if (instruments === undefined || believed === undefined) return undefined;
  const reading = instruments.readings[source];
  const { state, age } = believed.sources[source];
  return { state, age, values: reading.arrivedTick < 0 ? [] : [...reading.values] };
}
