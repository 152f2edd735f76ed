import { decider } from './attendance.ts';
import { controlsOf } from './controls.ts';
import { createMemo } from './memo.ts';
import { maySit } from './permissions.ts';
import { facilitatorOf, type Member, type TableState } from './tableState.ts';
import { SEATS, type Seat } from './tableTypes.ts';
import type { HeldControls, OtherView, OwnView, SeatView, YouView } from './viewTypes.ts';

/** What is shown of the people at a table. */

const seatsOf = createMemo<TableState['members'], readonly SeatView[]>();

export function viewSeats({ members }: TableState): readonly SeatView[] {
  return seatsOf(members, [], () => SEATS.map((seat) => viewSeat(members, seat)));
}

function viewSeat(members: TableState['members'], seat: Seat): SeatView {
  const sitter = members.find((member) => member.seat === seat);
  return {
    seat,
    ...(sitter === undefined ? {} : { name: sitter.name }),
    connected: sitter !== undefined && sitter.absentSince === undefined,
    holds: controlsOf(seat),
  };
}

type People = Pick<OwnView, 'you' | 'others' | 'watching' | 'waiting'>;

const peopleFor = createMemo<Member, People>();

/** The member and the others, as this member sees them. */
export function viewPeople(state: TableState, member: Member): People {
  const { members, stage, leftByStandIn } = state;
  const from = [members, stage, leftByStandIn.thrust, leftByStandIn.tilt, decider(state)];
  return peopleFor(member, from, () => {
    const others = members.filter((other) => other !== member);
    return {
      you: viewYou(state, member),
      others: others.map(viewOther),
      watching: others.filter(isWatching).map(({ name }) => name),
      waiting: members
        .filter((other) => isWatching(other) && !maySit(state, other))
        .map(({ id, name }) => ({ id, name })),
    };
  });
}

function viewYou(state: TableState, member: Member): YouView {
  const { id, name, role, ready, seat } = member;
  const holds = controlsOf(seat);
  const standInLeft = leftToHolder(state, holds);
  return {
    id,
    name,
    role,
    ready,
    ...(seat === undefined ? {} : { seat }),
    holds,
    decides: decider(state) === member,
    runs: member === (facilitatorOf(state) ?? decider(state)),
    mayTakeSeat: role === 'crew' && maySit(state, member),
    ...(standInLeft.thrust || standInLeft.tilt ? { standInLeft } : {}),
  };
}

/** What the stand-in last commanded, of that which a member holds while a descent runs. */
function leftToHolder({ stage, leftByStandIn }: TableState, holds: HeldControls): HeldControls {
  const { thrust, tilt } = leftByStandIn;
  const isFlown = stage === 'descending';
  return { thrust: isFlown && thrust && holds.thrust, tilt: isFlown && tilt && holds.tilt };
}

function viewOther({ id, name, role, ready, absentSince, seat }: Member): OtherView {
  return { id, name, role, ready, connected: absentSince === undefined, ...(seat !== undefined && { seat }) };
}

function isWatching({ role, seat, absentSince }: Member): boolean {
  return role === 'crew' && seat === undefined && absentSince === undefined;
}
