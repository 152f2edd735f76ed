import { decider } from './attendance.ts';
import type { Member, TableState } from './tableState.ts';
import { SEAT_NAMES, type Command, type Refusal, type Seat, type Stage } from './tableTypes.ts';

/**
 * Whom a command asks for: nobody; anybody at the table; whoever was here before the descent began or was let in; whoever sits; a seat by its name;
 * whoever decides, which is Lead, else the next seat that is taken.
 */
export type Who = 'nobody' | 'anybody' | 'let in' | 'seated' | Seat | 'decides';

/** Who may do what: a row a command, a column a stage. All else that a command asks for is looked at after this. */
export const PERMISSIONS: Readonly<Record<Command['kind'], Readonly<Record<Stage, Who>>>> = {
  takeSeat: { gathering: 'anybody', descending: 'let in', resolved: 'anybody' },
  leaveSeat: { gathering: 'seated', descending: 'seated', resolved: 'seated' },
  letIn: { gathering: 'nobody', descending: 'seated', resolved: 'nobody' },
  handOver: { gathering: 'seated', descending: 'seated', resolved: 'seated' },
  deal: { gathering: 'lead', descending: 'lead', resolved: 'lead' },
  judgeSource: { gathering: 'nobody', descending: 'sensors', resolved: 'nobody' },
  nameCause: { gathering: 'nobody', descending: 'sensors', resolved: 'nobody' },
  realign: { gathering: 'nobody', descending: 'sensors', resolved: 'nobody' },
  setCeiling: { gathering: 'nobody', descending: 'propellant', resolved: 'nobody' },
  armCutOff: { gathering: 'nobody', descending: 'propellant', resolved: 'nobody' },
  fireCutOff: { gathering: 'nobody', descending: 'propellant', resolved: 'nobody' },
  setCutAtContact: { gathering: 'nobody', descending: 'propellant', resolved: 'nobody' },
  shutLine: { gathering: 'nobody', descending: 'propellant', resolved: 'nobody' },
  markSpot: { gathering: 'nobody', descending: 'site', resolved: 'nobody' },
  clearSpot: { gathering: 'nobody', descending: 'site', resolved: 'nobody' },
  declareGround: { gathering: 'nobody', descending: 'site', resolved: 'nobody' },
  stateLimit: { gathering: 'nobody', descending: 'site', resolved: 'nobody' },
  begin: { gathering: 'seated', descending: 'nobody', resolved: 'nobody' },
  setThrust: { gathering: 'nobody', descending: 'flying', resolved: 'nobody' },
  setTilt: { gathering: 'nobody', descending: 'flying', resolved: 'nobody' },
  orderDescentRate: { gathering: 'nobody', descending: 'flying', resolved: 'nobody' },
  orderDrift: { gathering: 'nobody', descending: 'flying', resolved: 'nobody' },
  orderLean: { gathering: 'nobody', descending: 'flying', resolved: 'nobody' },
  setPace: { gathering: 'decides', descending: 'decides', resolved: 'decides' },
  hold: { gathering: 'nobody', descending: 'seated', resolved: 'nobody' },
  resume: { gathering: 'nobody', descending: 'seated', resolved: 'nobody' },
  abort: { gathering: 'nobody', descending: 'decides', resolved: 'nobody' },
  again: { gathering: 'nobody', descending: 'decides', resolved: 'decides' },
  wait: { gathering: 'nobody', descending: 'seated', resolved: 'seated' },
  callOut: { gathering: 'nobody', descending: 'seated', resolved: 'seated' },
  say: { gathering: 'seated', descending: 'seated', resolved: 'seated' },
  readBack: { gathering: 'seated', descending: 'seated', resolved: 'seated' },
  confirm: { gathering: 'seated', descending: 'seated', resolved: 'seated' },
  callPoll: { gathering: 'decides', descending: 'decides', resolved: 'decides' },
  answerPoll: { gathering: 'seated', descending: 'seated', resolved: 'seated' },
  decide: { gathering: 'decides', descending: 'decides', resolved: 'decides' },
  acknowledge: { gathering: 'nobody', descending: 'seated', resolved: 'nobody' },
};

/** Why this member may not give this command now; undefined when they may. */
export function whyNot(state: TableState, member: Member, { kind }: Command): Refusal | undefined {
  const who = PERMISSIONS[kind][state.stage];
  if (who === 'anybody') return undefined;
  if (who === 'let in') return maySit(state, member) ? undefined : NOT_LET_IN;
  if (member.seat === undefined) return NOT_SEATED;
  switch (who) {
    case 'nobody':
      return { code: 'table/stage', reason: WRONG_STAGE[kind] ?? NO_DESCENT };
    case 'seated':
      return undefined;
    case 'decides':
      return decider(state) === member ? undefined : notDeciding(state);
    case 'lead':
    case 'flying':
    case 'sensors':
    case 'propellant':
    case 'site':
      return member.seat === who ? undefined : notYours(who, member.seat);
  }
  return who satisfies never;
}

/** Whether a member may take a free seat now. Nobody is left out when nobody is there to let them in. */
export function maySit({ stage, members }: TableState, member: Member): boolean {
  return (
    stage !== 'descending' ||
    member.letIn ||
    member.seat !== undefined ||
    members.every(({ seat, absentSince }) => seat === undefined || absentSince !== undefined)
  );
}

function notYours(holder: Seat, own: Seat): Refusal {
  const reason = `That is for ${SEAT_NAMES[holder]} to do, and you sit at ${SEAT_NAMES[own]}.`;
  return { code: 'table/not-yours', reason };
}

function notDeciding(state: TableState): Refusal {
  const seat = decider(state)?.seat ?? 'lead';
  return { code: 'table/not-deciding', reason: `That is for ${SEAT_NAMES[seat]} to decide.` };
}

const NO_DESCENT = 'No descent is running.';
const WRONG_STAGE: Readonly<Partial<Record<Command['kind'], string>>> = {
  begin: 'The descent has begun already.',
  again: 'There is nothing to repeat before the first descent.',
};

const NOT_SEATED: Refusal = { code: 'table/not-seated', reason: 'Take a seat first.' };
const NOT_LET_IN: Refusal = {
  code: 'table/not-let-in',
  reason: 'A descent is running. Watch it, or ask someone at the table to let you take a seat.',
};
