import type { Table } from '../table/table.ts';
import type { Member, TableState } from '../table/tableState.ts';
import type { Command } from '../table/tableTypes.ts';
import { SOURCES } from '../sensors/index.ts';
import { LOGGED_KINDS, type Logged, type LogLine, type Moment, type Speaker } from './talk.ts';

/** Of a descent the first so many lines are kept: ten minutes of a busy crew. The record has every entry. */
const MOST_LINES = 1000;

export function momentOf({ state, run }: Pick<Table, 'state' | 'run'>): Moment {
  return { tick: state.tick, descentTick: run.flight.tick };
}

/** Writes down what a member was about to do, if that belongs into the log. */
export function logCommand(table: Table, member: Member, command: Command): void {
  if (!isLogged(command)) return;
  const { seat, id } = member;
  addLine(table, { ...(seat !== undefined && { seat }), member: id, what: command });
}

/** Writes down what somebody at a seat did; without a member it was the stand-in. */
export function addLine(table: Table, line: Partial<Speaker> & Pick<LogLine, 'what' | 'call'>): void {
  const { state } = table;
  if (state.talk.log.length >= MOST_LINES) return;
  state.talk = { ...state.talk, log: [...state.talk.log, { ...momentOf(table), ...line }] };
}

/** What stand-ins can change, as it was before they looked. */
type Settings = Pick<TableState, 'judgments' | 'engine' | 'site'>;

/** Writes down what stand-ins have changed since. */
export function logStandIns(table: Table, before: Settings): void {
  const { judgments, engine, site } = table.state;
  if (judgments !== before.judgments)
    for (const source of SOURCES) {
      const judgment = judgments[source];
      if (judgment === undefined || judgment === before.judgments[source]) continue;
      addLine(table, { seat: 'sensors', what: { kind: 'judgeSource', source, judgment } });
    }
  if (engine.lineShut !== before.engine.lineShut)
    addLine(table, { seat: 'propellant', what: { kind: 'shutLine', shut: engine.lineShut } });
  if (engine.cutOff === 'fired' && before.engine.cutOff !== 'fired')
    addLine(table, { seat: 'propellant', what: { kind: 'fireCutOff' } });
  const { spot, facing } = site;
  if (spot !== undefined && spot !== before.site.spot)
    addLine(table, { seat: 'site', what: { kind: 'markSpot', ...spot } });
  if (facing !== undefined && facing !== before.site.facing)
    addLine(table, { seat: 'site', what: { kind: 'orderFacing', steps: facing } });
}

function isLogged(command: Command): command is Logged {
  return LOGGED_KINDS.some((kind) => kind === command.kind);
}
