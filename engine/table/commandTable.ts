import { MAX_TILT_DEG } from '../input/controlInput.ts';
import { accept, refuse, type Result } from '../result.ts';
import { controlsOf, memberAt } from './controls.ts';
import { memberOf } from './members.ts';
import { beginDescent, type Member, type Table } from './table.ts';
import type { Command, MemberId, Refusal, Seat } from './tableTypes.ts';

/** Commanded thrust, whole percent of the engine's maximum [-]. */
export const THRUST_RANGE = { least: 0, most: 100 } as const;
/** Commanded attitude, whole degrees from upright, counter-clockwise positive. */
export const TILT_RANGE_DEG = { least: -MAX_TILT_DEG, most: MAX_TILT_DEG } as const;

/** Seats as people call them. */
export const SEAT_NAMES: Readonly<Record<Seat, string>> = {
  lead: 'Lead',
  flying: 'Flying',
  sensors: 'Sensors',
  propellant: 'Propellant',
  site: 'Site',
};

/** Carries out what a member asks for, or says in words why not. A refused command changes nothing. */
export function commandTable(table: Table, id: MemberId, command: Command): Result<void, Refusal> {
  const member = memberOf(table, id);
  switch (command.kind) {
    case 'takeSeat':
      return takeSeat(table, member, command.seat);
    case 'leaveSeat':
      return leaveSeat(member);
    case 'begin':
      return begin(table, member);
    case 'setThrust':
      return setThrust(table, member, command.percent);
    case 'setTilt':
      return setTilt(table, member, command.degrees);
    case 'hold':
      return hold(table, member);
    case 'resume':
      return resume(table, member);
    case 'again':
      return again(table, member);
  }
  return command satisfies never;
}

function takeSeat(table: Table, member: Member, seat: Seat): Result<void, Refusal> {
  const sitter = memberAt(table, seat);
  if (sitter !== undefined && sitter !== member) {
    return refuse({ code: 'table/seat-taken', reason: `${SEAT_NAMES[seat]} is taken by ${sitter.name}.` });
  }
  member.seat = seat;
  return accept(undefined);
}

function leaveSeat(member: Member): Result<void, Refusal> {
  if (member.seat === undefined) return NOT_SEATED;
  member.seat = undefined;
  return accept(undefined);
}

function begin(table: Table, member: Member): Result<void, Refusal> {
  if (member.seat === undefined) return NOT_SEATED;
  if (table.stage !== 'gathering') {
    return refuse({ code: 'table/stage', reason: 'The descent has begun already.' });
  }
  return beginDescent(table);
}

function setThrust(table: Table, member: Member, percent: number): Result<void, Refusal> {
  const allowed = mayCommand(table, member, 'thrust');
  if (!allowed.ok) return allowed;
  if (!isWholeWithin(percent, THRUST_RANGE)) {
    return refuse({
      code: 'table/out-of-range',
      reason: `Thrust is a whole percent from ${THRUST_RANGE.least} to ${THRUST_RANGE.most}; came ${percent}.`,
    });
  }
  const { run } = table;
  run.commanded = { ...run.commanded, thrustPercent: withoutSign(percent) };
  run.leftByStandIn = { ...run.leftByStandIn, thrust: false };
  return accept(undefined);
}

function setTilt(table: Table, member: Member, degrees: number): Result<void, Refusal> {
  const allowed = mayCommand(table, member, 'tilt');
  if (!allowed.ok) return allowed;
  if (!isWholeWithin(degrees, TILT_RANGE_DEG)) {
    return refuse({
      code: 'table/out-of-range',
      reason: `Tilt is a whole number of degrees from ${TILT_RANGE_DEG.least} to ${TILT_RANGE_DEG.most}; came ${degrees}.`,
    });
  }
  const { run } = table;
  run.commanded = { ...run.commanded, tiltDeg: withoutSign(degrees) };
  run.leftByStandIn = { ...run.leftByStandIn, tilt: false };
  return accept(undefined);
}

function hold(table: Table, member: Member): Result<void, Refusal> {
  if (member.seat === undefined) return NOT_SEATED;
  if (table.stage !== 'descending') return NO_DESCENT;
  if (table.held) return refuse({ code: 'table/held', reason: 'The descent is on hold already.' });
  table.held = true;
  return accept(undefined);
}

function resume(table: Table, member: Member): Result<void, Refusal> {
  if (member.seat === undefined) return NOT_SEATED;
  if (table.stage !== 'descending') return NO_DESCENT;
  if (!table.held) return refuse({ code: 'table/held', reason: 'The descent is not on hold.' });
  table.held = false;
  return accept(undefined);
}

function again(table: Table, member: Member): Result<void, Refusal> {
  if (member.seat === undefined) return NOT_SEATED;
  if (table.stage === 'gathering')
    return refuse({ code: 'table/stage', reason: 'There is nothing to repeat before the first descent.' });
  if (table.stage === 'descending' && !mayStartOver(table, member)) {
    return refuse({
      code: 'table/stage',
      reason: 'While a crew descends, only Lead, or Flying without a Lead, starts over.',
    });
  }
  return beginDescent(table);
}

/** Who may give up a descent that runs: whoever is alone at it, else the one who decides. */
function mayStartOver(table: Table, member: Member): boolean {
  const isAlone = table.members.every(({ seat }) => seat === undefined || seat === member.seat);
  return isAlone || member.seat === (memberAt(table, 'lead') === undefined ? 'flying' : 'lead');
}

function mayCommand(table: Table, member: Member, control: 'thrust' | 'tilt'): Result<void, Refusal> {
  if (member.seat === undefined) return NOT_SEATED;
  if (!controlsOf(table, member.seat)[control]) {
    const holder = control === 'thrust' && memberAt(table, 'propellant') !== undefined ? 'propellant' : 'flying';
    const what = control === 'thrust' ? 'Thrust' : 'Tilt';
    return refuse({
      code: 'table/not-yours',
      reason: `${what} is held by ${SEAT_NAMES[holder]}, and you sit at ${SEAT_NAMES[member.seat]}.`,
    });
  }
  return table.stage === 'descending' ? accept(undefined) : NO_DESCENT;
}

function isWholeWithin(value: number, range: { readonly least: number; readonly most: number }): boolean {
  return Number.isInteger(value) && value >= range.least && value <= range.most;
}

/** −0 becomes 0, so that equal inputs have equal bits. */
function withoutSign(value: number): number {
  return value === 0 ? 0 : value;
}

const NOT_SEATED = refuse<Refusal>({ code: 'table/not-seated', reason: 'Take a seat first.' });
const NO_DESCENT = refuse<Refusal>({ code: 'table/stage', reason: 'No descent is running.' });
