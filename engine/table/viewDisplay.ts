import type { EstimateView, Judgment } from '../estimate/index.ts';
import { SOURCES, type Source } from '../sensors/index.ts';
import type { Reading } from '../sensors/reading.ts';
import type { DescentState } from '../world/descent.ts';
import { flightKnown, marginNow } from './flightKnown.ts';
import type { Instruments } from './instruments.ts';
import { createMemo } from './memo.ts';
import { readLead, readPropellant, readSite, type SiteReadings, type LeadReadings } from './seatReadings.ts';
import type { SideLimits } from './liveMargin.ts';
import type { Run, Table } from './table.ts';
import type { TableState } from './tableState.ts';
import type { Seat } from './tableTypes.ts';
import type { CommonView, MapView, OwnView, SourceReading } from './viewTypes.ts';

type Flight = Pick<CommonView, 'drawnIn' | 'map' | 'spread' | 'rejected' | 'flight' | 'margin'>;
type OwnReadings = Pick<OwnView, 'sources' | 'propellantReadings' | 'siteReadings' | 'leadReadings'>;

/** What stands on the display of these seats now, whether people or stand-ins are at them. */
export function viewDisplay(table: Table, seats: readonly Seat[]): Flight & OwnReadings {
  return { ...viewFlight(table), ...viewOwnReadings(table, seats) };
}

/** The crew knows by instruments what is not at rest yet. */
export function isPencil({ state, run }: Table): boolean {
  return run.instruments !== undefined && state.stage !== 'resolved';
}

const mapOf = createMemo<Instruments, MapView>();
const rejectedOf = createMemo<TableState['judgments'], readonly Source[]>();
const NOTHING_REJECTED: readonly Source[] = [];

/** What everybody sees of the descent. */
export function viewFlight(table: Table): Flight {
  const { run, state } = table;
  const { instruments, believed } = run;
  const margin = marginNow(run);
  if (!isPencil(table) || instruments === undefined || believed === undefined)
    return { drawnIn: 'ink', rejected: NOTHING_REJECTED, flight: run.flight, margin };
  const { judgments } = state;
  return {
    drawnIn: 'pencil',
    map: mapOf(instruments, [], () => {
      const { firstX, spacing, heights } = instruments.map.terrain;
      return { firstX, spacing, heights, sigma: instruments.map.sigma };
    }),
    spread: believed.sigma,
    rejected: rejectedOf(judgments, [], () => SOURCES.filter((source) => judgments[source] === 'rejected')),
    flight: flightKnown(run, state),
    margin,
  };
}

const sidesOf = createMemo<Run, SideLimits | undefined>();
const propellantOf = createMemo<Run, NonNullable<OwnView['propellantReadings']>>();
const leadOf = createMemo<Run, LeadReadings>();
const siteOf = createMemo<Run, SiteReadings>();
const sourcesOf = createMemo<EstimateView, readonly SourceReading[]>();

/** What only these seats read, while a descent runs; the same objects for whoever reads them. */
export function viewOwnReadings(table: Table, seats: readonly Seat[]): OwnReadings {
  const { plan, run, state } = table;
  const { instruments, believed } = run;
  const readsSources = isPencil(table) && seats.includes('sensors') && instruments !== undefined;
  const sources =
    readsSources && believed !== undefined
      ? sourcesOf(believed, [state.judgments], () =>
          SOURCES.map((source) => viewSource(source, believed, instruments, state.judgments[source])),
        )
      : undefined;
  if (state.stage !== 'descending') return sources === undefined ? {} : { sources };
  const known = flightKnown(run, state);
  const parts = { plan, run, known };
  const from = [known, run.flight];
  // both read what is predicted of the contact
  const sides = (at: DescentState) => sidesOf(run, [at], () => run.sides(at));
  return {
    ...(seats.includes('propellant') && {
      propellantReadings: propellantOf(run, [...from, state.reckonedBurn], () =>
        readPropellant(parts, state.reckonedBurn),
      ),
    }),
    ...(seats.includes('lead') && { leadReadings: leadOf(run, from, () => readLead(parts, sides(known))) }),
    ...(seats.includes('site') && { siteReadings: siteOf(run, from, () => readSite(parts, sides(known))) }),
    ...(sources !== undefined && { sources }),
  };
}

const valuesOf = createMemo<Reading, readonly number[]>();

/** `judgment` as it stands now: on hold, nothing has been made of it yet. */
function viewSource(
  source: Source,
  { sources }: EstimateView,
  { readings }: Instruments,
  judgment: Judgment = 'accepted',
): SourceReading {
  const { state, isUsed, age, usedAge, disagreement } = sources[source];
  const reading = readings[source];
  const worst = disagreement.reduce((most, one) => (Math.abs(one) > Math.abs(most) ? one : most), 0);
  return {
    source,
    state,
    judgment,
    // what is rejected, or silent, goes into nothing, whatever became of its last report
    isUsed: isUsed && judgment === 'accepted' && state !== 'no data' && state !== 'failed',
    ...(age !== undefined && { age }),
    ...(usedAge !== undefined && { usedAge }),
    values: valuesOf(reading, [...reading.values], () => [...reading.values]),
    ...(disagreement.length > 0 && { disagreement: worst }),
  };
}
