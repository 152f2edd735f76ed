import type { Display, Drill, EventRow, RowState } from '../drill/index.ts';
import { accept, refuse, type Result } from '../result.ts';
import { TICK_RATE } from '../world/constants.ts';
import { lineOf, ticksAfter } from './responses.ts';
import { createMemo } from './memo.ts';
import type { Run, Table } from './table.ts';
import { findMember, isControl, type Member, type TableState } from './tableState.ts';
import type { MemberId, Refusal, TablePlan } from './tableTypes.ts';
import { awaitedSeats, isLaying, type Order } from './turns.ts';
import type {
  BriefView,
  CommonView,
  ControlView,
  DealtCard,
  LaidView,
  OwnView,
  RowView,
  TurnView,
} from './viewTypes.ts';

/** What a member is shown of the drill and of how time is played. */

export function viewStop(state: TableState): Pick<CommonView, 'conduct' | 'stoppedBy'> {
  const { conduct, stoppedBy } = state;
  return { conduct, ...(stoppedBy !== undefined && { stoppedBy: findMember(state, stoppedBy)?.name ?? '' }) };
}

/** `tick`: of the descent. */
export function viewTurn(state: TableState, { seat }: Member, tick: number): TurnView | undefined {
  if (state.conduct !== 'turns' || state.stage !== 'descending') return undefined;
  const laying = isLaying(state);
  return {
    laying,
    awaited: laying ? awaitedSeats(state) : [],
    own: state.laid.filter((laid) => laid.seat === seat).map(({ order }) => viewLaid(order)),
    ...(state.turnEndsAt !== undefined && { left: (state.turnEndsAt - tick) / TICK_RATE }),
  };
}

function viewLaid(order: Order): LaidView {
  switch (order.kind) {
    case 'judgeSource':
      return { order: order.kind, source: order.source, word: order.judgment };
    case 'nameCause':
      return { order: order.kind, source: order.source, word: order.cause };
    case 'setCeiling':
      return { order: order.kind, figure: order.percent };
    case 'armCutOff':
      return { order: order.kind, figure: Number(order.armed) };
    case 'setCutAtContact':
      return { order: order.kind, figure: Number(order.on) };
    case 'shutLine':
      return { order: order.kind, figure: Number(order.shut) };
    case 'markSpot':
      return { order: order.kind, figure: order.meters, word: order.approach };
    case 'declareGround':
      return { order: order.kind, word: order.ground };
    case 'stateLimit':
      return { order: order.kind, figure: order.hundredths };
    case 'orderFacing':
      return { order: order.kind, figure: order.steps };
    case 'orderDescentRate':
    case 'orderDrift':
      return { order: order.kind, figure: order.tenths };
    case 'orderLean':
      return { order: order.kind, figure: order.degrees };
    case 'realign':
    case 'fireCutOff':
    case 'clearSpot':
    case 'abort':
      return { order: order.kind };
  }
  return order satisfies never;
}

const briefOf = createMemo<Drill, BriefView>();

export function viewBrief({ drill }: TablePlan): Pick<CommonView, 'drill'> {
  if (drill === undefined) return {};
  const { id, title, brief, objectives, ruleCard, profile } = drill;
  const rules = () => ruleCard.map((rule) => ({ id: rule.id, text: rule.text }));
  return { drill: briefOf(drill, [], () => ({ id, title, brief, objectives, ruleCard: rules(), profile })) };
}

export function viewOwnDrill(table: Table, member: Member): Pick<OwnView, 'dealt' | 'control'> {
  return { dealt: viewDealt(table, member), ...(isControl(member) && { control: viewControl(table) }) };
}

const dealtTo = createMemo<Member, readonly DealtCard[]>();
const NO_CARDS: readonly DealtCard[] = [];

function viewDealt({ state: { events } }: Table, member: Member): readonly DealtCard[] {
  if (events === undefined) return NO_CARDS;
  const { told } = events;
  const display: Display | undefined = member.role === 'crew' ? member.seat : 'room';
  return dealtTo(member, [told], () =>
    told
      .filter(({ to }) => isControl(member) || (display !== undefined && to.includes(display)))
      .map(({ text, level, tick }) => ({ text, after: tick / TICK_RATE, ...(level && { level }) })),
  );
}

const rowsOf = createMemo<Run, readonly RowView[]>();

function viewControl(table: Table): ControlView {
  const { plan, state, run } = table;
  const { events, talk } = state;
  const counts = Object.values(events?.rows ?? {}).some(isCounting);
  return {
    truth: run.flight,
    ...(events?.course !== undefined && { course: events.course }),
    rows: rowsOf(run, [events, talk.log, counts && run.flight.tick], () =>
      (plan.drill?.events ?? []).flatMap((row) => viewRow(table, row)),
    ),
  };
}

function viewRow(table: Table, { id, responses }: EventRow): readonly RowView[] {
  const { state, run } = table;
  const row = state.events?.rows[id];
  if (row === undefined) return [];
  const sentAfter = row.sentTicks.at(-1);
  const [since] = row.sentTicks;
  const view: RowView = {
    id,
    state: row.state,
    seen: since === undefined ? [] : seenOf(table, responses, since),
    ...(sentAfter !== undefined && { sentAfter: sentAfter / TICK_RATE }),
    ...(row.sentHeight !== undefined && { sentHeight: row.sentHeight }),
    ...(isCounting(row) && { dueIn: (row.dueTick - run.flight.tick) / TICK_RATE }),
  };
  return [view];
}

/** Whether a row waits for the clock alone. */
function isCounting(row: RowState): row is RowState & { readonly dueTick: number } {
  return row.dueTick !== undefined && row.state === 'waiting';
}

/** The drill with all that it hides, for whoever may know it now. */
export function askForDrill({ plan, state }: Table, id: MemberId): Result<Drill, Refusal> {
  const member = findMember(state, id);
  if (plan.drill === undefined) return refuse({ code: 'table/no-drill', reason: 'No drill is played at this table.' });
  if (member !== undefined && (isControl(member) || state.stage === 'resolved')) return accept(plan.drill);
  return refuse({
    code: 'table/hidden',
    reason: 'What a drill holds is shown to the crew when the descent is at rest.',
  });
}

/** Which of the responses to an inject that was sent at this tick have been carried out, and when. */
function seenOf(table: Table, responses: EventRow['responses'], since: number): RowView['seen'] {
  return responses.flatMap(({ id, seen }) => {
    const line = table.state.talk.log[lineOf(table.state.talk.log, seen, since)];
    return line === undefined ? [] : [{ response: id, after: (since + ticksAfter(line, since)) / TICK_RATE }];
  });
}
