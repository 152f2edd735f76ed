import type { EstimateView } from '../estimate/index.ts';
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

/** What stands on the display of a seat now, whether a person or a stand-in is at it; without a seat, what everybody sees. */
export function viewDisplay(table: Table, seat: Seat | undefined): Display {
  const { run, state } = table;
  const known = flightKnown(run, state);
  return {
    ...viewOwnReadings(table, known, seat),
    ...viewBelief(table, seat),
    flight: isPencil(table) ? known : run.flight,
    margin: run.margin,
  };
}

/** The crew knows by instruments what is not at rest yet. */
export function isPencil({ state, run }: Table): boolean {
  return run.instruments !== undefined && state.stage !== 'resolved';
}

/** What only this seat reads, while a descent runs. */
function viewOwnReadings(
  { plan, run, state }: Table,
  known: DescentState,
  seat: Seat | undefined,
): Pick<TableView, 'propellantReadings' | 'siteReadings' | 'leadReadings'> {
  if (state.stage !== 'descending') return {};
  if (seat === 'propellant') return { propellantReadings: readPropellant({ plan, run, known }, state.reckonedBurn) };
  if (seat === 'lead') return { leadReadings: readLead({ plan, run, known }, run.sides(known)) };
  if (seat === 'site') return { siteReadings: readSite({ plan, run, known }, run.sides(known)) };
  return {};
}

function viewBelief(
  table: Table,
  seat: Seat | undefined,
): Pick<TableView, 'drawnIn' | 'map' | 'spread' | 'rejected' | 'sources'> {
  const { instruments, believed } = table.run;
  if (!isPencil(table) || instruments === undefined || believed === undefined) return { drawnIn: 'ink', rejected: [] };
  const { terrain, sigma } = instruments.map;
  const { firstX, spacing, heights } = terrain;
  return {
    drawnIn: 'pencil',
    map: { firstX, spacing, heights, sigma },
    spread: believed.sigma,
    rejected: SOURCES.filter((source) => table.state.judgments[source] === 'rejected'),
    ...(seat === 'sensors' && { sources: SOURCES.map((source) => viewSource(source, believed, instruments)) }),
  };
}

function viewSource(source: Source, { sources }: EstimateView, { readings }: Instruments): SourceReading {
  const { state, judgment, isUsed, age, disagreement } = sources[source];
  const worst = disagreement.reduce((most, one) => (Math.abs(one) > Math.abs(most) ? one : most), 0);
  return {
    source,
    state,
    judgment,
    isUsed,
    ...(age !== undefined && { age }),
    values: [...readings[source].values],
    ...(disagreement.length > 0 && { disagreement: worst }),
  };
}
