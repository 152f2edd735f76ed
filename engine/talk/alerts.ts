import type { AlertLevel, Display } from '../drill/drill.ts';
import { SOURCES, type Source } from '../sensors/index.ts';
import { isCovered } from '../table/attendance.ts';
import { marginNow } from '../table/flightKnown.ts';
import { isCarriedOut } from '../table/responses.ts';
import { readPropellant } from '../table/seatReadings.ts';
import type { Table } from '../table/table.ts';
import type { TableState } from '../table/tableState.ts';
import { SEATS, type Refusal, type Seat } from '../table/tableTypes.ts';
import type { DescentState, Phase } from '../world/descent.ts';
import { addLine, momentOf } from './crewLog.ts';
import { isLost } from './lostSource.ts';
import { refusal } from './refusal.ts';
import type { Alert, AlertCause, Speaker } from './talk.ts';

/** Ticks between two looks at what may call for an alert. */
export const ALERT_LOOK = 6;
/** A cause must be there for so many looks in a row before the alert is raised, and away before it is cleared: half a second and two, so that none comes and goes with the noise. */
const LOOKS_TO_RAISE = 5;
const LOOKS_TO_CLEAR = 20;
/** A cleared alert says so for so long: five seconds. */
const LOOKS_CLEARED = 50;
/** A told alert stands at least so long where nobody is there to acknowledge it: ten seconds [looks]. */
const LOOKS_UNHEARD = 100;

/** Propellant for less than this calls for a caution, and for a warning [s of hover]; common practice, no source. */
const LOW_SECONDS = 20;
const VERY_LOW_SECONDS = 10;
/** A margin is no matter for an alert before the contact is this near [s]: until then there is time to fly on. */
const NEAR_CONTACT = 10;

/** Phases in which there is something to fly for. */
const ALOFT: readonly Phase[] = ['approach', 'terminal descent', 'final drop'];
const EVERYBODY: readonly Display[] = [...SEATS, 'room'];

/** What calls for an alert now. */
interface Cause extends Pick<Alert, 'cause' | 'level' | 'to'> {
  readonly source?: Source;
}

/** Raises what has been there for long enough, and clears what has gone. `known`: the descent as the crew knows it. */
export function watchAlerts(table: Table, known: DescentState): void {
  const { state } = table;
  const causes = state.stage === 'descending' ? causesOf(table, known) : [];
  const { talk } = state;
  const alerts = talk.alerts.flatMap((alert) => goOn(alert, causes, table));
  const waiting = causes.filter((cause) => alerts.every((alert) => alert.isCleared || keyOf(alert) !== keyOf(cause)));
  const rising = Object.fromEntries(waiting.map((cause) => [keyOf(cause), (talk.rising[keyOf(cause)] ?? 0) + 1]));
  // most looks find nothing new: then what was said stays the very same
  const isSame = alerts.length === talk.alerts.length && alerts.every((alert, i) => alert === talk.alerts[i]);
  if (isSame && waiting.length === 0 && Object.keys(talk.rising).length === 0) return;
  state.talk = { ...talk, alerts, rising };
  for (const cause of waiting) if ((rising[keyOf(cause)] ?? 0) >= LOOKS_TO_RAISE) raise(table, cause);
}

/** Words sent to these displays. `until`: the response for want of which they are sent; without one the alert stands until whoever is there has acknowledged it. */
export function tell(
  table: Table,
  told: { text: string; level: AlertLevel; to: readonly Display[]; until?: string },
): void {
  raise(table, { cause: 'told', ...told });
}

export function faultOfAcknowledge({ talk }: TableState, seat: Seat, id: number): Refusal | undefined {
  const alert = talk.alerts.find((one) => one.id === id);
  if (alert === undefined || alert.isCleared || !alert.to.includes(seat))
    return refusal('no-alert', 'That alert is gone.');
  return alert.acknowledged.includes(seat)
    ? refusal('acknowledged', 'Your seat has acknowledged that already.')
    : undefined;
}

export function acknowledge(table: Table, by: Speaker, id: number): void {
  const { state } = table;
  const alerts = state.talk.alerts.map((alert) =>
    alert.id === id ? { ...alert, acknowledged: [...alert.acknowledged, by.seat] } : alert,
  );
  state.talk = { ...state.talk, alerts };
  addLine(table, { ...by, what: { kind: 'acknowledge', alert: id } });
}

function raise(table: Table, cause: Cause & Pick<Alert, 'text' | 'until'>): void {
  const { state } = table;
  const id = state.talk.raised + 1;
  const alert: Alert = { ...momentOf(table), id, ...cause, acknowledged: [], isCleared: false, gone: 0 };
  // one that is back has not gone; words that were sent are each of their own
  const before = state.talk.alerts.filter(
    (one) => !one.isCleared || one.cause === 'told' || keyOf(one) !== keyOf(alert),
  );
  state.talk = { ...state.talk, raised: id, alerts: [...before, alert] };
}

/** An alert after one more look: as it was, with its cause away for one look more, or gone. One that is graver now, or less grave, is raised anew. */
function goOn(alert: Alert, causes: readonly Cause[], table: Table): readonly Alert[] {
  if (table.state.stage === 'resolved') return [];
  if (alert.isCleared) return alert.gone < LOOKS_CLEARED ? [{ ...alert, gone: alert.gone + 1 }] : [];
  if (alert.cause === 'told') return goOnTold(alert, table);
  const now = causes.find((cause) => keyOf(cause) === keyOf(alert));
  if (now?.level === alert.level) return [alert.gone === 0 ? alert : { ...alert, gone: 0 }];
  const gone = alert.gone + 1;
  if (now !== undefined) return gone >= LOOKS_TO_RAISE ? [] : [{ ...alert, gone }];
  return [gone >= LOOKS_TO_CLEAR ? cleared(alert) : { ...alert, gone }];
}

/** What was done about it stands in the log, so that no truth is told by its going. */
function goOnTold(alert: Alert, table: Table): readonly Alert[] {
  const { drill } = table.plan;
  if (alert.until === undefined || drill === undefined) return isHeard(alert, table.state) ? [] : [agedIf(alert)];
  return [isCarriedOut(table, drill, alert.until) ? cleared(alert) : alert];
}

function cleared(alert: Alert): Alert {
  return { ...alert, isCleared: true, gone: 0 };
}

/** Of a told alert `gone` counts how long it has stood. */
function agedIf(alert: Alert): Alert {
  return alert.gone < LOOKS_UNHEARD ? { ...alert, gone: alert.gone + 1 } : alert;
}

function isHeard({ to, acknowledged, gone }: Alert, state: TableState): boolean {
  const people = SEATS.filter((seat) => to.includes(seat) && !isCovered(state, seat));
  return people.length === 0 ? gone >= LOOKS_UNHEARD : people.every((seat) => acknowledged.includes(seat));
}

function keyOf({ cause, source }: { readonly cause: AlertCause; readonly source?: Source }): string {
  return source === undefined ? cause : `${cause} ${source}`;
}

function causesOf(table: Table, known: DescentState): readonly Cause[] {
  if (!ALOFT.includes(known.phase)) return [];
  return [...sourcesLost(table), ...marginOutside(table), ...engineCauses(table, known)];
}

function sourcesLost({ run: { believed } }: Table): readonly Cause[] {
  const lost = SOURCES.filter((source) => believed !== undefined && isLost(believed.sources[source]));
  return lost.map((source) => ({ cause: 'sourceLost', source, level: 'caution', to: ['sensors'] }));
}

function marginOutside({ run }: Table): readonly Cause[] {
  const { predicted } = marginNow(run);
  const isOutside = predicted?.callout === 'outside' && predicted.seconds <= NEAR_CONTACT;
  return isOutside ? [{ cause: 'marginOutside', level: 'warning', to: ['lead', 'flying'] }] : [];
}

function engineCauses({ plan, run, state }: Table, known: DescentState): readonly Cause[] {
  if (known.propellant <= 0) return [{ cause: 'dry', level: 'warning', to: EVERYBODY }];
  if (state.engine.cutOff === 'fired') return [{ cause: 'cutOff', level: 'warning', to: EVERYBODY }];
  const { seconds } = readPropellant({ plan, run, known }, state.reckonedBurn);
  if (seconds >= LOW_SECONDS) return [];
  const level = seconds < VERY_LOW_SECONDS ? 'warning' : 'caution';
  return [{ cause: 'propellantLow', level, to: ['flying', 'propellant'] }];
}
