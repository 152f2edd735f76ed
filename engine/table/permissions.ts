import { controlsOf } from './controls.ts';
import { memberAt, type Member, type TableState } from './tableState.ts';
import { SEAT_NAMES, type Command, type Refusal, type Stage } from './tableTypes.ts';

/**
 * Whom a command asks for: nobody; anybody at the table; whoever was here before the descent began or was let in; whoever sits; whoever holds thrust, or
 * tilt; Sensors; whoever may give up a descent that runs; whoever sets its pace.
 */
export type Who = 'nobody' | 'anybody' | 'let in' | 'seated' | 'thrust' | 'tilt' | 'sensors' | 'gives up' | 'paces';

/** Who may do what: a row a command, a column a stage. All else that a command asks for is looked at after this. */
export const PERMISSIONS: Readonly<Record<Command['kind'], Readonly<Record<Stage, Who>>>> = {
  takeSeat: { gathering: 'anybody', descending: 'let in', resolved: 'anybody' },
  leaveSeat: { gathering: 'seated', descending: 'seated', resolved: 'seated' },
  letIn: { gathering: 'nobody', descending: 'seated', resolved: 'nobody' },
  judgeSource: { gathering: 'nobody', descending: 'sensors', resolved: 'nobody' },
  begin: { gathering: 'seated', descending: 'nobody', resolved: 'nobody' },
  setThrust: { gathering: 'nobody', descending: 'thrust', resolved: 'nobody' },
  setTilt: { gathering: 'nobody', descending: 'tilt', resolved: 'nobody' },
  orderDescentRate: { gathering: 'nobody', descending: 'thrust', resolved: 'nobody' },
  orderDrift: { gathering: 'nobody', descending: 'tilt', resolved: 'nobody' },
  orderLean: { gathering: 'nobody', descending: 'tilt', resolved: 'nobody' },
  setPace: { gathering: 'paces', descending: 'paces', resolved: 'paces' },
  hold: { gathering: 'nobody', descending: 'seated', resolved: 'nobody' },
  resume: { gathering: 'nobody', descending: 'seated', resolved: 'nobody' },
  abort: { gathering: 'nobody', descending: 'gives up', resolved: 'nobody' },
  again: { gathering: 'nobody', descending: 'gives up', resolved: 'seated' },
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
    case 'thrust':
    case 'tilt':
      return controlsOf(state, member.seat)[who] ? undefined : notYours(state, member.seat, who);
    case 'sensors':
      return member.seat === 'sensors' ? undefined : NOT_SENSORS;
    case 'gives up':
      return decides(state, member) ? undefined : NOT_DECIDING;
    case 'paces':
      return decides(state, member) ? undefined : NOT_PACING;
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

/** Whoever is alone at the table, else Lead, or Flying without a Lead. */
function decides(state: TableState, { seat }: Member): boolean {
  const isAlone = state.members.every((member) => member.seat === undefined || member.seat === seat);
  return isAlone || seat === (memberAt(state, 'lead') === undefined ? 'flying' : 'lead');
}

function notYours(state: TableState, seat: NonNullable<Member['seat']>, control: 'thrust' | 'tilt'): Refusal {
  const byHand = state.orders === undefined;
  const holder = byHand && control === 'thrust' && memberAt(state, 'propellant') ? 'propellant' : 'flying';
  const what = byHand ? (control === 'thrust' ? 'Thrust is held' : 'Tilt is held') : 'Orders are given';
  const reason = `${what} by ${SEAT_NAMES[holder]}, and you sit at ${SEAT_NAMES[seat]}.`;
  return { code: 'table/not-yours', reason };
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
const NOT_SENSORS: Refusal = { code: 'table/not-yours', reason: 'What to make of a source is for Sensors to say.' };
const NOT_DECIDING: Refusal = {
  code: 'table/stage',
  reason: 'While a crew descends, only Lead, or Flying without a Lead, gives it up.',
};
const NOT_PACING: Refusal = {
  code: 'table/not-yours',
  reason: 'In a crew only Lead, or Flying without a Lead, sets the pace.',
};
