import type { Orders } from '../descent/index.ts';
import { delayed, skipped, ticksOf } from '../drill/index.ts';
import type { Judgment } from '../estimate/index.ts';
import type { Source } from '../sensors/index.ts';
import { assert } from '../assert.ts';
import { carryOutReview } from '../review/carryOutReview.ts';
import { isReview } from '../review/commands.ts';
import { carryOutTalk } from '../talk/carryOutTalk.ts';
import { isTalk } from '../talk/commands.ts';
import { addLine, logCommand } from '../talk/crewLog.ts';
import { setEngine, settingsAfter } from './engineSettings.ts';
import { isHappening, type Entry } from './entry.ts';
import { judgeCommand } from './judge.ts';
import { firstOrders } from './orders.ts';
import { paceNow } from './pace.ts';
import { notesAfter, orderFacing } from './siteNotes.ts';
import { withoutSign } from './withoutSign.ts';
import { nameCause, noteDoubts } from './sourceNotes.ts';
import { sendRow } from './runEvents.ts';
import { flightKnown } from './flightKnown.ts';
import { begin, endDescent, type Table } from './table.ts';
import { isLaying, isOrder, layDown, TURN_TICKS } from './turns.ts';
import { ALIGNING_TICKS } from './alignment.ts';
import { changeMember, findMember, memberAt, type Member, type TableState } from './tableState.ts';
import { SEATS, type Command, type Conduct, type MemberId, type Role, type Seat } from './tableTypes.ts';

/** A crew that is to fly again has so long, by the clock on the wall, to say that it is not done yet [tick]. */
const AGAIN_TICKS = 300;

/**
 * Carries out an entry: the only thing, besides the clock, that changes a table. It refuses nothing: what stands in an entry has been judged. An entry
 * that no table could have got at this tick breaks the contract.
 */
export function applyEntry(table: Table, { tick, member: id, content }: Entry): void {
  const { state } = table;
  assert(tick === state.tick, `an entry is carried out at its tick ${tick}, not at ${state.tick}`);
  if (!isHappening(content)) return carryOut(table, memberOf(state, id), content);
  switch (content.kind) {
    case 'joined':
      return join(state, id, content);
    case 'dropped':
      return changeMember(state, id, { absentSince: memberOf(state, id).absentSince ?? tick });
    case 'interrupted':
      if (state.stage !== 'descending' || state.held) return;
      state.held = true;
      addLine(table, { what: { kind: 'hold' } });
      return;
    case 'returned':
      return changeMember(state, id, { absentSince: undefined });
    case 'left':
      memberOf(state, id);
      state.members = state.members.filter((member) => member.id !== id);
      return;
  }
  content satisfies never;
}

function join(state: TableState, id: MemberId, { name, role }: { readonly name: string; readonly role: Role }): void {
  assert(findMember(state, id) === undefined, `nobody at this table is ${id} yet`);
  state.joined += 1;
  const letIn = state.stage !== 'descending';
  const member = { id, name, role, ready: false, seat: undefined, absentSince: undefined, letIn };
  state.members = [...state.members, member];
}

function carryOut(table: Table, member: Member, command: Command): void {
  if (isTalk(command)) return carryOutTalk(table, member, command);
  if (isReview(command)) return carryOutReview(table, member, command);
  const { state } = table;
  const { tick } = state;
  if (member.seat !== undefined && isOrder(command) && isLaying(state)) {
    state.laid = layDown(state.laid, { seat: member.seat, order: command });
    return;
  }
  logCommand(table, member, command);
  switch (command.kind) {
    case 'takeSeat':
      return changeMember(state, member.id, { seat: command.seat });
    case 'leaveSeat':
      return changeMember(state, member.id, { seat: undefined });
    case 'letIn':
      return changeMember(state, command.member, { letIn: true });
    case 'handOver':
      if (member.seat !== undefined) seatAt(state, memberOf(state, command.member), member.seat);
      return;
    case 'deal':
      return seatAt(state, memberOf(state, command.member), command.seat);
    case 'judgeSource':
      return judgeSource(table, command.source, command.judgment);
    case 'nameCause':
      return nameCause(state, table.run.flight.tick, command.source, command.cause);
    case 'realign':
      state.aligningFor = ALIGNING_TICKS;
      return;
    case 'setCeiling':
    case 'armCutOff':
    case 'fireCutOff':
    case 'setCutAtContact':
    case 'shutLine':
      return setEngine(state, table.run.flight.tick, settingsAfter(state.engine, command));
    case 'markSpot':
    case 'clearSpot':
    case 'declareGround':
    case 'stateLimit':
      state.site = notesAfter(state.site, command);
      return;
    case 'orderFacing':
      return orderFacing(state, table.run.flight.tick, notesAfter(state.site, command));
    case 'abort':
      state.abortedAt = state.tick;
      state.held = false;
      return;
    case 'begin':
      return begin(table);
    case 'again':
      // a crew is told before the table is cleared
      if (state.members.filter(({ seat }) => seat !== undefined).length > 1)
        state.againAt = tick + AGAIN_TICKS * paceNow(state);
      else begin(table);
      return;
    case 'wait':
      state.againAt = undefined;
      return;
    case 'setThrust':
      state.commanded = { ...state.commanded, thrustPercent: withoutSign(command.percent) };
      state.leftByStandIn = { ...state.leftByStandIn, thrust: false };
      return;
    case 'setTilt':
      state.commanded = { ...state.commanded, tiltDeg: withoutSign(command.degrees) };
      state.leftByStandIn = { ...state.leftByStandIn, tilt: false };
      return;
    case 'orderDescentRate':
      return order(state, 'thrust', { descentRateTenths: withoutSign(command.tenths) });
    case 'orderDrift':
      return order(state, 'tilt', { across: 'drift', driftTenths: withoutSign(command.tenths) });
    case 'orderLean':
      return order(state, 'tilt', { across: 'lean', leanDeg: withoutSign(command.degrees) });
    case 'setPace':
      state.pace = command.pace;
      return;
    case 'setRole':
      return makeOf(state, memberOf(state, command.member), command.role);
    case 'handOverTable':
      makeOf(state, memberOf(state, command.member), 'facilitator');
      return makeOf(state, member, 'observer');
    case 'remove':
      state.members = state.members.filter(({ id }) => id !== command.member);
      return;
    case 'setLock':
      state.locked = command.locked ? true : undefined;
      return;
    case 'setReady':
      return changeMember(state, member.id, { ready: command.ready });
    case 'stop':
      state.stoppedBy = member.id;
      return;
    case 'liftStop':
      state.stoppedBy = undefined;
      // whoever was called away starts it again when everybody is back
      state.held = state.stage === 'descending';
      return;
    case 'end':
      return endDescent(table);
    case 'sendInject':
    case 'skipInject':
    case 'delayInject':
      return carryOutInject(table, command);
    case 'setConduct':
      return setConduct(table, command.conduct);
    case 'turnOver':
      return turnOver(table);
    case 'takeBack':
      state.laid = state.laid.filter(({ seat }) => seat !== member.seat);
      return;
    case 'hold':
      state.held = true;
      return;
    case 'resume':
      state.held = false;
      return;
  }
  command satisfies never;
}

function makeOf(state: TableState, { id }: Member, role: Role): void {
  changeMember(state, id, { role, ...(role !== 'crew' && { seat: undefined }) });
}

/** By orders in turns, whatever the plan says: nobody holds a stick while the clock stands. */
function setConduct(table: Table, conduct: Conduct): void {
  const { state, plan, run } = table;
  state.conduct = conduct;
  state.laid = [];
  state.turnEndsAt = undefined;
  if (conduct === 'turns') state.orders ??= firstOrders(flightKnown(run, state));
  else if (plan.choice.mode === 'by hand') state.orders = undefined;
  if (state.stage === 'descending') state.held = true;
}

/** All that lies face down is carried out, in the order of the seats; what an order before it has made idle is left. */
function turnOver(table: Table): void {
  const { state, run } = table;
  const { laid } = state;
  state.laid = [];
  state.turnEndsAt = run.flight.tick + TURN_TICKS;
  state.held = false;
  for (const seat of SEATS) {
    const sitter = memberAt(state, seat);
    for (const { order } of laid.filter((one) => one.seat === seat))
      if (sitter !== undefined && judgeCommand(state, sitter.id, order).ok) carryOut(table, sitter, order);
  }
}

function carryOutInject(
  table: Table,
  command: Extract<Command, { kind: 'sendInject' | 'skipInject' | 'delayInject' }>,
): void {
  const { state, plan, run } = table;
  const row = plan.drill?.events.find(({ id }) => id === command.inject);
  if (state.events === undefined || row === undefined) return;
  if (command.kind === 'sendInject') return sendRow(table, row);
  state.events =
    command.kind === 'skipInject'
      ? skipped(state.events, row.id, 'skipped')
      : delayed(state.events, row.id, run.flight.tick + ticksOf(command.seconds));
}

function order(state: TableState, control: 'thrust' | 'tilt', part: Partial<Orders>): void {
  assert(state.orders !== undefined, 'orders are given in a descent by orders');
  state.orders = { ...state.orders, ...part };
  state.leftByStandIn = { ...state.leftByStandIn, [control]: false };
}

function judgeSource({ state, run }: Table, source: Source, judgment: Judgment): void {
  const before = state.judgments;
  state.judgments = { ...before, [source]: judgment };
  noteDoubts(state, run.flight.tick, before);
}

/** Who sat there before goes where the other comes from. */
function seatAt(state: TableState, member: Member, seat: Seat): void {
  const before = memberAt(state, seat);
  if (before !== undefined) changeMember(state, before.id, { seat: member.seat });
  changeMember(state, member.id, { seat, letIn: true });
}

function memberOf(state: TableState, id: MemberId): Member {
  const member = findMember(state, id);
  assert(member !== undefined, `there is a member ${id} at this table`);
  return member;
}
