import { assert } from '../assert.ts';
import { MAX_TILT_DEG } from '../input/controlInput.ts';
import { accept, refuse, type Result } from '../result.ts';
import { isReview } from '../review/commands.ts';
import { faultOfReview } from '../review/judgeReview.ts';
import { isTalk } from '../talk/commands.ts';
import { faultOfTalk } from '../talk/judgeTalk.ts';
import { decider } from './attendance.ts';
import { CEILING_RANGE } from './engineSettings.ts';
import { isHappening, type Entry, type EntryContent } from './entry.ts';
import { LONGEST_NAME, parseMemberName } from './memberName.ts';
import { DESCENT_RATE_RANGE_TENTHS, DRIFT_RANGE_TENTHS } from './orders.ts';
import { whyNot } from './permissions.ts';
import { PACES } from './planChoice.ts';
import { FACING_RANGE, LIMIT_RANGE } from './siteNotes.ts';
import { facilitatorOf, findMember, memberAt, type Member, type TableState } from './tableState.ts';
import { SEAT_NAMES, type Command, type MemberId, type Refusal, type Role } from './tableTypes.ts';
import { isLaying } from './turns.ts';

/** Most people at one table, seated or watching, present or away. */
export const MOST_MEMBERS = 40;

/** Commanded thrust, whole percent of the engine's maximum [-]. */
export const THRUST_RANGE = { least: 0, most: 100 } as const;
/** Commanded attitude, whole degrees from upright, counter-clockwise positive. */
export const TILT_RANGE_DEG = { least: -MAX_TILT_DEG, most: MAX_TILT_DEG } as const;

/** The entry that a command of a member becomes, or why it does not. Changes nothing. */
export function judgeCommand(state: TableState, id: MemberId, command: Command): Result<Entry, Refusal> {
  const member = findMember(state, id);
  if (member === undefined) return refuse(NOT_HERE);
  const refusal = whyNot(state, member, command) ?? faultOf(state, member, command);
  return refusal === undefined ? accept(entryOf(state, id, command)) : refuse(refusal);
}

/** Why this member may not choose anew what the table plays; undefined where they may: whoever decides, before the first descent. */
export function judgeChoosing(state: TableState, id: MemberId): Refusal | undefined {
  const member = findMember(state, id);
  if (member === undefined) return NOT_HERE;
  if (state.stage !== 'gathering') return CHOSEN;
  return whyNot(state, member, { kind: 'setPace', pace: state.pace });
}

/** The entry of somebody who joins under this name, and is no member yet. */
export function judgeJoin(state: TableState, name: string, role: Role = 'crew'): Result<Entry, Refusal> {
  const parsed = parseMemberName(name);
  if (!parsed.ok) return parsed;
  if (state.members.length >= MOST_MEMBERS) {
    return refuse({ code: 'table/full', reason: `This table is full: it takes ${MOST_MEMBERS} people.` });
  }
  if (state.locked === true) return refuse(LOCKED);
  if (role === 'facilitator' && facilitatorOf(state) !== undefined) return refuse(FACILITATED);
  return accept(
    entryOf(state, `m${state.joined + 1}`, { kind: 'joined', name: unusedName(state, parsed.value), role }),
  );
}

/** The entry of what happened to the line of a member. */
export function noteLine(
  state: TableState,
  id: MemberId,
  kind: 'dropped' | 'returned' | 'left' | 'interrupted',
): Entry {
  assert(findMember(state, id) !== undefined, `there is a member ${id} at this table`);
  return entryOf(state, id, { kind });
}

/** Why a table, as it is, cannot have got this entry; undefined when it can. For entries that come from elsewhere than this judge. */
export function judgeEntry(state: TableState, { member, content }: Entry): Refusal | undefined {
  if (!isHappening(content)) {
    const judged = judgeCommand(state, member, content);
    return judged.ok ? undefined : judged.error;
  }
  if (content.kind !== 'joined') return findMember(state, member) === undefined ? NOT_HERE : undefined;
  const judged = judgeJoin(state, content.name, content.role);
  if (!judged.ok) return judged.error;
  const { value } = judged;
  const isSame = value.member === member && value.content.kind === 'joined' && value.content.name === content.name;
  return isSame ? undefined : { code: 'table/other-member', reason: `The next to join is ${value.member}.` };
}

function entryOf({ tick }: TableState, member: MemberId, content: EntryContent): Entry {
  return { tick, member, content };
}

/** What is wrong with a command that this member may give. */
function faultOf(state: TableState, member: Member, command: Command): Refusal | undefined {
  if (isTalk(command)) return faultOfTalk(state, member, command);
  if (isReview(command)) return faultOfReview(state, command);
  switch (command.kind) {
    case 'takeSeat': {
      const sitter = memberAt(state, command.seat);
      if (sitter === undefined || sitter === member) return undefined;
      return { code: 'table/seat-taken', reason: `${SEAT_NAMES[command.seat]} is taken by ${sitter.name}.` };
    }
    case 'letIn':
      return findMember(state, command.member) === undefined ? NOT_HERE : undefined;
    case 'handOver':
    case 'deal':
      return whyNotSeated(state, member, command);
    case 'judgeSource':
    case 'nameCause':
      return state.byInstruments ? undefined : NO_INSTRUMENTS;
    case 'realign':
      if (!state.byInstruments) return NO_INSTRUMENTS;
      if (state.aligningFor === undefined) return undefined;
      return { code: 'table/aligning', reason: 'The inertial unit is being aligned already.' };
    case 'setCeiling':
      if (isWholeWithin(command.percent, CEILING_RANGE)) return undefined;
      return outOfRange('The thrust ceiling is a whole percent', CEILING_RANGE, command.percent);
    case 'armCutOff':
      return state.engine.cutOff === 'fired' ? CUT_OFF_FIRED : undefined;
    case 'fireCutOff':
      if (state.engine.cutOff === 'fired') return CUT_OFF_FIRED;
      if (state.engine.cutOff === 'armed') return undefined;
      return { code: 'table/not-armed', reason: 'Arm the cut-off first.' };
    case 'markSpot':
      if (isWholeWithin(command.meters, state.span)) return undefined;
      return outOfRange('A spot is a whole number of meters along the site', state.span, command.meters);
    case 'stateLimit':
      if (isWholeWithin(command.hundredths, LIMIT_RANGE)) return undefined;
      return outOfRange('A limit is a whole number of hundredths of a meter a second', LIMIT_RANGE, command.hundredths);
    case 'orderFacing':
      if (isWholeWithin(command.steps, FACING_RANGE)) return undefined;
      return outOfRange('A turn is a whole number of steps from how it started', FACING_RANGE, command.steps);
    case 'setThrust':
      if (state.abortedAt !== undefined) return ABORTING;
      if (state.orders !== undefined) return BY_ORDERS;
      if (isWholeWithin(command.percent, THRUST_RANGE)) return undefined;
      return outOfRange('Thrust is a whole percent', THRUST_RANGE, command.percent);
    case 'setTilt':
      if (state.abortedAt !== undefined) return ABORTING;
      if (state.orders !== undefined) return BY_ORDERS;
      if (isWholeWithin(command.degrees, TILT_RANGE_DEG)) return undefined;
      return outOfRange('Tilt is a whole number of degrees', TILT_RANGE_DEG, command.degrees);
    case 'orderDescentRate':
    case 'orderDrift':
    case 'orderLean':
      if (state.abortedAt !== undefined) return ABORTING;
      return state.orders === undefined ? BY_HAND : faultOfOrder(command);
    case 'setPace':
      if (PACES.includes(command.pace)) return undefined;
      return {
        code: 'table/out-of-range',
        reason: `The pace is one of ${PACES.join(', ')}; got ${JSON.stringify(command.pace)}.`,
      };
    case 'setRole':
    case 'handOverTable':
    case 'remove':
      return faultOfMoving(state, member, command);
    case 'stop':
      return state.stoppedBy === undefined ? undefined : { code: 'table/stopped', reason: 'The stop stands already.' };
    case 'liftStop':
      return state.stoppedBy === undefined ? { code: 'table/stopped', reason: 'No stop stands.' } : undefined;
    case 'sendInject':
    case 'skipInject':
    case 'delayInject':
      return faultOfInject(state, command);
    case 'setConduct':
      if (state.conduct !== command.conduct) return undefined;
      return { code: 'table/conduct', reason: 'Time is played that way already.' };
    case 'turnOver':
      return isLaying(state) ? undefined : NO_TURN;
    case 'takeBack':
      if (state.laid.some(({ seat }) => seat === member.seat)) return undefined;
      return { code: 'table/turns', reason: 'No order of yours lies face down.' };
    case 'hold':
      return state.held ? { code: 'table/held', reason: 'The descent is on hold already.' } : undefined;
    case 'resume':
      if (isLaying(state))
        return { code: 'table/turns', reason: 'In turns the clock runs when the orders are turned over.' };
      return state.held ? undefined : { code: 'table/held', reason: 'The descent is not on hold.' };
    case 'abort':
      return state.abortedAt === undefined ? undefined : ABORTING;
    case 'again':
      if (state.againAt === undefined) return undefined;
      return { code: 'table/starting', reason: 'The next descent is about to begin already.' };
    case 'wait':
      if (state.againAt !== undefined) return undefined;
      return { code: 'table/starting', reason: 'No descent is about to begin.' };
    case 'leaveSeat':
    case 'begin':
    case 'setCutAtContact':
    case 'shutLine':
    case 'clearSpot':
    case 'declareGround':
    case 'setReady':
    case 'setLock':
    case 'end':
      return undefined;
  }
  return command satisfies never;
}

/** The first who joined. */
const OPENER: MemberId = 'm1';

/** What keeps somebody from being moved, made something else or sent away. */
function faultOfMoving(
  state: TableState,
  member: Member,
  command: Extract<Command, { kind: 'setRole' | 'handOverTable' | 'remove' }>,
): Refusal | undefined {
  const other = findMember(state, command.member);
  if (other === undefined) return NOT_HERE;
  if (other === member) return { code: 'table/yourself', reason: 'You run this table: hand it over first.' };
  // whoever takes the first seat decides there, and is not to send away whose table it is
  if (command.kind === 'remove' && member.role !== 'facilitator' && other.id === OPENER)
    return { code: 'table/opener', reason: `${other.name} opened this table, and stays.` };
  if (command.kind === 'setRole' && other.role === command.role)
    return { code: 'table/same-role', reason: `${other.name} is here as ${other.role} already.` };
  if (command.kind === 'handOverTable' && other.absentSince !== undefined) return away(other);
  return undefined;
}

/** Whether there is such an inject in this descent, and what can still be done with it. */
function faultOfInject(
  { events }: TableState,
  command: Extract<Command, { kind: 'sendInject' | 'skipInject' | 'delayInject' }>,
): Refusal | undefined {
  const row = events?.rows[command.inject];
  if (row === undefined)
    return { code: 'table/no-inject', reason: `There is no inject ${command.inject} in this descent.` };
  if (command.kind === 'sendInject' || row.state === 'waiting') return undefined;
  return { code: 'table/inject-over', reason: `The inject ${command.inject} is ${row.state} already.` };
}

function away({ name }: Member): Refusal {
  return { code: 'table/away', reason: `${name} is away now.` };
}

const NO_TURN: Refusal = { code: 'table/turns', reason: 'No orders are awaited now.' };
const LOCKED: Refusal = {
  code: 'table/locked',
  reason: 'This table is locked. Ask somebody who sits there to let you in.',
};
const FACILITATED: Refusal = { code: 'table/facilitated', reason: 'This table has a facilitator already.' };

/** What is wrong with an order, in a descent that is flown by orders. */
function faultOfOrder(
  order: Extract<Command, { kind: 'orderDescentRate' | 'orderDrift' | 'orderLean' }>,
): Refusal | undefined {
  if (order.kind === 'orderLean') {
    if (isWholeWithin(order.degrees, TILT_RANGE_DEG)) return undefined;
    return outOfRange('An ordered lean is a whole number of degrees', TILT_RANGE_DEG, order.degrees);
  }
  const isRate = order.kind === 'orderDescentRate';
  const range = isRate ? DESCENT_RATE_RANGE_TENTHS : DRIFT_RANGE_TENTHS;
  if (isWholeWithin(order.tenths, range)) return undefined;
  const what = isRate ? 'descent rate' : 'drift';
  return outOfRange(`An ordered ${what} is a whole number of tenths of a m/s`, range, order.tenths);
}

const BY_ORDERS: Refusal = {
  code: 'table/by-orders',
  reason: 'This descent is flown by orders: say what to hold, and the stand-in sets thrust and tilt.',
};
const BY_HAND: Refusal = { code: 'table/by-hand', reason: 'This descent is flown by hand: set thrust and tilt.' };

/** What keeps a seat from going to somebody. */
function whyNotSeated(
  state: TableState,
  member: Member,
  command: Extract<Command, { kind: 'handOver' | 'deal' }>,
): Refusal | undefined {
  const other = findMember(state, command.member);
  if (other === undefined) return NOT_HERE;
  if (other.absentSince !== undefined) {
    return away(other);
  }
  if (command.kind === 'handOver' && other.seat !== undefined && decider(state) !== member) {
    const reason = `${other.name} sits at ${SEAT_NAMES[other.seat]}: only who decides lets two people change places.`;
    return { code: 'table/sits-elsewhere', reason };
  }
  if (other.role !== 'crew')
    return { code: 'table/not-crew', reason: `${other.name} is here as ${other.role}, not as crew.` };
  const seat = command.kind === 'deal' ? command.seat : member.seat;
  return other.seat === seat ? { code: 'table/sits-there', reason: `${other.name} sits there already.` } : undefined;
}

const NO_INSTRUMENTS: Refusal = {
  code: 'table/no-instruments',
  reason: 'Nothing has to be judged here: this descent shows what is true.',
};
const CUT_OFF_FIRED: Refusal = {
  code: 'table/cut-off',
  reason: 'The cut-off has been fired: the engine stays shut down in this descent.',
};
const ABORTING: Refusal = {
  code: 'table/aborting',
  reason: 'The landing was given up: the lander climbs away by itself.',
};
const CHOSEN: Refusal = {
  code: 'table/stage',
  reason: 'A descent has begun at this table: what it plays stays.',
};
const NOT_HERE: Refusal = { code: 'table/not-here', reason: 'That person is not at this table any more.' };

interface Range {
  readonly least: number;
  readonly most: number;
}

function outOfRange(what: string, { least, most }: Range, actual: number): Refusal {
  return { code: 'table/out-of-range', reason: `${what} from ${least} to ${most}; got ${actual}.` };
}

function isWholeWithin(value: number, range: Range): boolean {
  return Number.isInteger(value) && value >= range.least && value <= range.most;
}

/** Of two people with one name the later gets a number, so that whoever reads a name knows who is meant. */
function unusedName({ members }: TableState, name: string): string {
  const isUsed = (candidate: string) => members.some((member) => member.name === candidate);
  let candidate = name;
  for (let number = 2; isUsed(candidate); number += 1) {
    const suffix = ` ${number}`;
    candidate =
      Array.from(name)
        .slice(0, LONGEST_NAME - suffix.length)
        .join('') + suffix;
  }
  return candidate;
}
