import type { EstimateView, Judgment } from '../estimate/index.ts';
import { SOURCES, type Source } from '../sensors/index.ts';
import type { DescentState } from '../world/descent.ts';
import { flightKnown } from './flightKnown.ts';
import type { Instruments } from './instruments.ts';
import { readLead, readPropellant, readSite } from './seatReadings.ts';
import type { Table } from './table.ts';
import type { Seat } from './tableTypes.ts';
import type { SourceReading, TableView } from './viewTypes.ts';

/** What of a view one seat is shown of the descent, whoever sits there. */
type Display = Pick<
  TableView,
  | 'drawnIn'
  | 'map'
  | 'spread'
  | 'rejected'
  | 'sources'
  | 'propellantReadings'
  | 'siteReadings'
  | 'leadReadings'
  | 'flight'
  | 'margin'
>;

/** What stands on the display of these seats now, whether people or stand-ins are at them; of none, what everybody sees. */
export function viewDisplay(table: Table, seats: readonly Seat[]): Display {
  const { run, state } = table;
  const known = flightKnown(run, state);
  return {
    ...viewOwnReadings(table, known, seats),
    ...viewBelief(table, seats),
    flight: isPencil(table) ? known : run.flight,
    margin: run.margin,
  };
}

/** The crew knows by instruments what is not at rest yet. */
export function isPencil({ state, run }: Table): boolean {
  return run.instruments !== undefined && state.stage !== 'resolved';
}

/** What only these seats read, while a descent runs. */
function viewOwnReadings(
  { plan, run, state }: Table,
  known: DescentState,
  seats: readonly Seat[],
): Pick<TableView, 'propellantReadings' | 'siteReadings' | 'leadReadings'> {
  if (state.stage !== 'descending') return {};
  const parts = { plan, run, known };
  // both read what is predicted of the contact
  const sides = seats.includes('lead') || seats.includes('site') ? run.sides(known) : undefined;
  return {
    ...(seats.includes('propellant') && { propellantReadings: readPropellant(parts, state.reckonedBurn) }),
    ...(seats.includes('lead') && { leadReadings: readLead(parts, sides) }),
    ...(seats.includes('site') && { siteReadings: readSite(parts, sides) }),
  };
}

function viewBelief(
  table: Table,
  seats: readonly Seat[],
): Pick<TableView, 'drawnIn' | 'map' | 'spread' | 'rejected' | 'sources'> {
  const { instruments, believed } = table.run;
  if (!isPencil(table) || instruments === undefined || believed === undefined) return { drawnIn: 'ink', rejected: [] };
  const { judgments } = table.state;
  const { terrain, sigma } = instruments.map;
  const { firstX, spacing, heights } = terrain;
  return {
    drawnIn: 'pencil',
    map: { firstX, spacing, heights, sigma },
    spread: believed.sigma,
    rejected: SOURCES.filter((source) => judgments[source] === 'rejected'),
    ...(seats.includes('sensors') && {
      sources: SOURCES.map((source) => viewSource(source, believed, instruments, judgments[source])),
    }),
  };
}

/** `judgment` as it stands now: on hold, nothing has been made of it yet. */
function viewSource(
  source: Source,
  { sources }: EstimateView,
  { readings }: Instruments,
  judgment: Judgment = 'accepted',
): SourceReading {
  const { state, isUsed, age, disagreement } = sources[source];
  const worst = disagreement.reduce((most, one) => (Math.abs(one) > Math.abs(most) ? one : most), 0);
  return {
    source,
    state,
    judgment,
    // what is rejected, or silent, goes into nothing, whatever became of its last report
    isUsed: isUsed && judgment === 'accepted' && state !== 'no data' && state !== 'failed',
    ...(age !== undefined && { age }),
    values: [...readings[source].values],
    ...(disagreement.length > 0 && { disagreement: worst }),
  };
}
