import { decider } from './attendance.ts';
import { facilitatorOf, isControl, type Member, type TableState } from './tableState.ts';
import { SEAT_NAMES, type Command, type Refusal, type Role, type Seat, type Stage } from './tableTypes.ts';

/**
 * Whom a command asks for: nobody; anybody at the table, whatever they are here; crew; crew who were here before the descent began or were let in; whoever sits; a
 * seat by its name; whoever decides for the crew, which is Lead, else the next seat that is taken; whoever runs the table, which is the facilitator, else whoever decides;
 * the facilitator, else whoever sits (`opens`); both of them (`seated or facilitator`); Lead or the facilitator; the facilitator alone; the control side, which is the
 * facilitator and the evaluators; and, where nobody facilitates, whoever decides besides those (`reviews`).
 */
export type Who =
  | 'nobody'
  | 'anybody'
  | 'crew'
  | 'let in'
  | 'seated'
  | Seat
  | 'decides'
  | 'runs'
  | 'opens'
  | 'seated or facilitator'
  | 'lead or facilitator'
  | 'facilitator'
  | 'control'
  | 'reviews';

/** Who may do what: a row a command, a column a stage. All else that a command asks for is looked at after this. */
export const PERMISSIONS: Readonly<Record<Command['kind'], Readonly<Record<Stage, Who>>>> = {
  takeSeat: { gathering: 'crew', descending: 'let in', resolved: 'crew' },
  leaveSeat: { gathering: 'seated', descending: 'seated', resolved: 'seated' },
  letIn: { gathering: 'nobody', descending: 'opens', resolved: 'nobody' },
  handOver: { gathering: 'seated', descending: 'seated', resolved: 'seated' },
  deal: { gathering: 'lead or facilitator', descending: 'lead or facilitator', resolved: 'lead or facilitator' },
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
  orderFacing: { gathering: 'nobody', descending: 'site', resolved: 'nobody' },
  begin: { gathering: 'opens', descending: 'nobody', resolved: 'nobody' },
  setThrust: { gathering: 'nobody', descending: 'flying', resolved: 'nobody' },
  setTilt: { gathering: 'nobody', descending: 'flying', resolved: 'nobody' },
  orderDescentRate: { gathering: 'nobody', descending: 'flying', resolved: 'nobody' },
  orderDrift: { gathering: 'nobody', descending: 'flying', resolved: 'nobody' },
  orderLean: { gathering: 'nobody', descending: 'flying', resolved: 'nobody' },
  setPace: { gathering: 'runs', descending: 'runs', resolved: 'runs' },
  setRole: { gathering: 'facilitator', descending: 'facilitator', resolved: 'facilitator' },
  handOverTable: { gathering: 'facilitator', descending: 'facilitator', resolved: 'facilitator' },
  remove: { gathering: 'runs', descending: 'runs', resolved: 'runs' },
  setLock: { gathering: 'runs', descending: 'runs', resolved: 'runs' },
  setReady: { gathering: 'crew', descending: 'nobody', resolved: 'nobody' },
  stop: { gathering: 'anybody', descending: 'anybody', resolved: 'anybody' },
  liftStop: { gathering: 'runs', descending: 'runs', resolved: 'runs' },
  end: { gathering: 'nobody', descending: 'runs', resolved: 'nobody' },
  sendInject: { gathering: 'nobody', descending: 'facilitator', resolved: 'nobody' },
  skipInject: { gathering: 'nobody', descending: 'facilitator', resolved: 'nobody' },
  delayInject: { gathering: 'nobody', descending: 'facilitator', resolved: 'nobody' },
  setConduct: { gathering: 'runs', descending: 'runs', resolved: 'nobody' },
  turnOver: { gathering: 'nobody', descending: 'lead or facilitator', resolved: 'nobody' },
  takeBack: { gathering: 'nobody', descending: 'seated', resolved: 'nobody' },
  hold: { gathering: 'nobody', descending: 'seated or facilitator', resolved: 'nobody' },
  resume: { gathering: 'nobody', descending: 'opens', resolved: 'nobody' },
  abort: { gathering: 'nobody', descending: 'decides', resolved: 'nobody' },
  again: { gathering: 'nobody', descending: 'runs', resolved: 'runs' },
  wait: { gathering: 'nobody', descending: 'seated or facilitator', resolved: 'seated or facilitator' },
  callOut: { gathering: 'nobody', descending: 'seated', resolved: 'seated' },
  say: { gathering: 'seated', descending: 'seated', resolved: 'seated' },
  readBack: { gathering: 'seated', descending: 'seated', resolved: 'seated' },
  confirm: { gathering: 'seated', descending: 'seated', resolved: 'seated' },
  callPoll: { gathering: 'decides', descending: 'decides', resolved: 'decides' },
  answerPoll: { gathering: 'seated', descending: 'seated', resolved: 'seated' },
  decide: { gathering: 'decides', descending: 'decides', resolved: 'decides' },
  acknowledge: { gathering: 'nobody', descending: 'seated', resolved: 'nobody' },
  observe: { gathering: 'nobody', descending: 'control', resolved: 'control' },
  bookmark: { gathering: 'nobody', descending: 'reviews', resolved: 'reviews' },
  rate: { gathering: 'nobody', descending: 'nobody', resolved: 'reviews' },
  correctMeasure: { gathering: 'nobody', descending: 'nobody', resolved: 'reviews' },
  washHot: { gathering: 'nobody', descending: 'nobody', resolved: 'anybody' },
  sayLoad: { gathering: 'nobody', descending: 'nobody', resolved: 'seated' },
  setDebriefStep: { gathering: 'nobody', descending: 'nobody', resolved: 'runs' },
  setTopic: { gathering: 'nobody', descending: 'nobody', resolved: 'runs' },
  showClip: { gathering: 'nobody', descending: 'nobody', resolved: 'runs' },
  hideClip: { gathering: 'nobody', descending: 'nobody', resolved: 'runs' },
  noteTopic: { gathering: 'nobody', descending: 'nobody', resolved: 'reviews' },
  setGoal: { gathering: 'nobody', descending: 'nobody', resolved: 'reviews' },
  setAction: { gathering: 'nobody', descending: 'nobody', resolved: 'reviews' },
  dropAction: { gathering: 'nobody', descending: 'nobody', resolved: 'reviews' },
  askWhatIf: { gathering: 'nobody', descending: 'nobody', resolved: 'reviews' },
  closeDebrief: { gathering: 'nobody', descending: 'nobody', resolved: 'runs' },
  declineDebrief: { gathering: 'nobody', descending: 'nobody', resolved: 'runs' },
};

/** Why this member may not give this command now; undefined when they may. */
export function whyNot(state: TableState, member: Member, { kind }: Command): Refusal | undefined {
  if (state.stoppedBy !== undefined && !WHILE_STOPPED.includes(kind)) return STOPPED;
  const who = PERMISSIONS[kind][state.stage];
  const facilitator = facilitatorOf(state);
  switch (who) {
    case 'nobody':
      if (member.seat === undefined && member.role === 'crew') return NOT_SEATED;
      return { code: 'table/stage', reason: WRONG_STAGE[kind] ?? NO_DESCENT };
    case 'anybody':
      return undefined;
    case 'crew':
      return member.role === 'crew' ? undefined : notCrew(member.role);
    case 'let in':
      if (member.role !== 'crew') return notCrew(member.role);
      return maySit(state, member) ? undefined : NOT_LET_IN;
    case 'control':
      return isControl(member) ? undefined : NOT_CONTROL;
    case 'reviews':
      if (isControl(member)) return undefined;
      return facilitator === undefined ? whyNotDeciding(state, member) : NOT_CONTROL;
    case 'facilitator':
      return member === facilitator ? undefined : NOT_FACILITATOR;
    case 'seated or facilitator':
      return member === facilitator || member.seat !== undefined ? undefined : NOT_SEATED;
    case 'lead or facilitator':
      return member === facilitator ? undefined : whyNotAt('lead', member);
    case 'runs':
      if (facilitator !== undefined) return member === facilitator ? undefined : NOT_FACILITATOR;
      return whyNotDeciding(state, member);
    case 'opens':
      if (facilitator !== undefined) return member === facilitator ? undefined : NOT_FACILITATOR;
      return member.seat === undefined ? NOT_SEATED : undefined;
    case 'seated':
      return member.seat === undefined ? NOT_SEATED : undefined;
    case 'decides':
      return whyNotDeciding(state, member);
    case 'lead':
    case 'flying':
    case 'sensors':
    case 'propellant':
    case 'site':
      return whyNotAt(who, member);
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

function whyNotAt(holder: Seat, { seat }: Member): Refusal | undefined {
  if (seat === undefined) return NOT_SEATED;
  return seat === holder ? undefined : notYours(holder, seat);
}

function whyNotDeciding(state: TableState, member: Member): Refusal | undefined {
  if (member.seat === undefined) return NOT_SEATED;
  return decider(state) === member ? undefined : notDeciding(state);
}

function notCrew(role: Role): Refusal {
  return { code: 'table/not-crew', reason: `Seats are for the crew, and you are here as ${role}.` };
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

/** What may still be done while a real-world stop stands. */
const WHILE_STOPPED: readonly Command['kind'][] = ['stop', 'liftStop', 'end', 'leaveSeat'];
const STOPPED: Refusal = {
  code: 'table/stopped',
  reason: 'A real-world stop was called: everything stands until it is lifted.',
};
const NOT_CONTROL: Refusal = {
  code: 'table/not-control',
  reason: 'That is for the facilitator or an evaluator to do.',
};
const NOT_FACILITATOR: Refusal = { code: 'table/not-facilitator', reason: 'That is for the facilitator to do.' };
const NOT_SEATED: Refusal = { code: 'table/not-seated', reason: 'Take a seat first.' };
const NOT_LET_IN: Refusal = {
  code: 'table/not-let-in',
  reason: 'A descent is running. Watch it, or ask someone at the table to let you take a seat.',
};
