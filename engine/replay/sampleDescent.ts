import type { EstimateView, Judgment, SourceState } from '../estimate/index.ts';
import type { Source } from '../sensors/index.ts';
import { forEachSource, type Readings } from '../sensors/reading.ts';
import {
  marginNow,
  viewAt,
  type LeadReadings,
  type PropellantReadings,
  type SiteReadings,
  type SourceReading,
  type Table,
} from '../table/index.ts';
import { TICK_RATE, type DescentState } from '../world/index.ts';

/** One moment of a descent, logged apart: what was true, what was sensed, what was believed, and what was shown. SI units, angles in radians. */
export interface Sample {
  readonly line: 'sample';
  /** Of the table. */
  readonly tick: number;
  /** From the start of the descent [s]. */
  readonly after: number;
  readonly truth: Motion & { readonly thrust: number; readonly propellant: number; readonly utilisation?: number };
  /** Of each source the values of its channels, as it said them; absent without instruments. */
  readonly sensed?: Readonly<Record<Source, Sensed>>;
  /** Absent without instruments. */
  readonly believed?: Motion & { readonly sigma: EstimateView['sigma']; readonly utilisation?: number };
  /** Of what everybody reads, and of what single seats read. */
  readonly shown: Shown;
}

interface Motion {
  /** Across, and of the center of mass over the datum [m]; of the lowest foot over the ground [m]. */
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly vx: number;
  readonly vy: number;
  readonly angle: number;
}

interface Sensed {
  readonly values: readonly number[];
  readonly isValid: boolean;
  readonly state?: SourceState;
  readonly judgment?: Judgment;
}

interface Shown {
  readonly all: Pick<Motion, 'height' | 'vx' | 'vy' | 'angle'> & { readonly tipLimit?: number };
  readonly lead?: LeadReadings;
  readonly sensors?: readonly SourceReading[];
  readonly propellant?: PropellantReadings;
  readonly site?: SiteReadings;
}

/** What there is to log of this moment. */
export function sampleTable(table: Table): Sample {
  const { state, run } = table;
  const { flight, instruments, believed, gauge } = run;
  const { thrust, propellant } = flight;
  return {
    line: 'sample',
    tick: state.tick,
    after: flight.tick / TICK_RATE,
    truth: { ...motionOf(flight), thrust, propellant, ...utilisation(gauge(flight).predicted) },
    ...(instruments && { sensed: sensedOf(instruments.readings, believed) }),
    ...(believed && {
      believed: {
        ...motionOf({ ...believed, height: believed.clearance }),
        sigma: believed.sigma,
        ...utilisation(marginNow(run).predicted),
      },
    }),
    shown: shownOf(table),
  };
}

function motionOf({ x, y, height, vx, vy, angle }: Pick<DescentState, keyof Motion>): Motion {
  return { x, y, height, vx, vy, angle };
}

/** Of the contact that is coming; none where no speed at all is allowed. */
function utilisation(predicted: { readonly utilisation: number } | undefined): { readonly utilisation?: number } {
  return predicted === undefined || !Number.isFinite(predicted.utilisation)
    ? {}
    : { utilisation: predicted.utilisation };
}

function sensedOf(readings: Readings, believed: EstimateView | undefined): Readonly<Record<Source, Sensed>> {
  return forEachSource((source) => {
    const { values, isValid } = readings[source];
    const checked = believed?.sources[source];
    return {
      values: [...values],
      isValid,
      ...(checked && { state: checked.state, judgment: checked.judgment }),
    };
  });
}

function shownOf(table: Table): Shown {
  const { flight, margin, leadReadings } = viewAt(table, 'lead');
  const { height, vx, vy, angle } = flight;
  const { sources } = viewAt(table, 'sensors');
  const { propellantReadings } = viewAt(table, 'propellant');
  const { siteReadings } = viewAt(table, 'site');
  return {
    all: { height, vx, vy, angle, ...(margin.predicted && { tipLimit: margin.predicted.limit }) },
    ...(leadReadings && { lead: leadReadings }),
    ...(sources && { sensors: sources }),
    ...(propellantReadings && { propellant: propellantReadings }),
    ...(siteReadings && { site: siteReadings }),
  };
}
