import { assert } from '../assert.ts';
import type { Orders } from '../descent/index.ts';
import type { EventListState, Failure } from '../drill/index.ts';
import type { Judgments } from '../estimate/index.ts';
import type { Source } from '../sensors/index.ts';
import type { ClockAtStart } from '../review/clockBetween.ts';
import type { ReviewState } from '../review/review.ts';
import type { TalkState } from '../talk/talk.ts';
import type { ControlInput } from '../world/descent.ts';
import type { EngineSettings } from './engineSettings.ts';
import type { Pace } from './planChoice.ts';
import type { PropellantWatch } from './propellantStandIn.ts';
import type { SensorsWatch } from './sensorsStandIn.ts';
import type { SiteNotes } from './siteNotes.ts';
import type { BelievedArrival, CrewEntry } from './scorecardTypes.ts';
import type { HeldControls } from './viewTypes.ts';
import type { LegWatch } from './turnStandIn.ts';
import type { LaidOrder } from './turns.ts';
import type { Conduct, MemberId, NamedCause, Role, Seat, Stage } from './tableTypes.ts';

/** All that a table knows, besides the played world: plain data, changed by `applyEntry` and `stepTable` alone. */
export interface TableState {
  /** Ticks since the table was opened, whether or not a descent runs. */
  tick: number;
  stage: Stage;
  held: boolean;
  /** Tick of the table at which the landing was given up; undefined while it is not. */
  abortedAt: number | undefined;
  /** Who called the real-world stop; undefined while none stands. */
  stoppedBy: MemberId | undefined;
  /** Nobody else may join; undefined: whoever has the code may. */
  locked?: true | undefined;
  conduct: Conduct;
  /** In turns: orders that lie face down, in the order in which they were laid. */
  laid: readonly LaidOrder[];
  /** In turns: the tick of the descent at which the clock stands again; undefined while orders are awaited. */
  turnEndsAt: number | undefined;
  /** In order of joining; replaced and never written into: what is shown of people is made anew only when the list is another. */
  members: readonly Member[];
  /** How many ever joined; names the next member. */
  joined: number;
  /** How many descents have begun. */
  descents: number;
  /** Of the clock while a descent runs. */
  pace: Pace;
  /** How the clock was to be run when the descent began. */
  begun: ClockAtStart;
  commanded: ControlInput;
  /** What is to be held; undefined in a descent by hand. */
  orders: Orders | undefined;
  /** Controls that the stand-in commanded last: nobody has set them since. */
  leftByStandIn: HeldControls;
  /** How Propellant has set the engine, and what Site has said. */
  engine: EngineSettings;
  site: SiteNotes;
  /** Ticks of the descent at which the line was first shut, the cut-off fired, a turn about the long axis first ordered, and the last edge come to the right. */
  answered: { readonly lineShut?: number; readonly cutOff?: number; readonly facing?: number; readonly faced?: number };
  /** Propellant burned by the sum of commanded thrust times time [kg]. */
  reckonedBurn: number;
  /** Tick of the table at which a crew's next descent begins; undefined when nobody asked for it. */
  againAt: number | undefined;
  /** Ticks of flying level until the inertial unit is aligned anew; undefined when nobody asked for it. */
  aligningFor: number | undefined;
  /** From where to where there is ground, whole meters of the section [m]. */
  readonly span: { readonly least: number; readonly most: number };
  /** Of the drill, by their names; none in a free descent. */
  readonly objectives: readonly string[];
  /** Whether the crew flies by instruments. */
  readonly byInstruments: boolean;
  /** What the crew, or the stand-in at Sensors, makes of the sources; accepted where there is no word. */
  judgments: Judgments;
  /** What Sensors names as the cause now, and the ticks of the descent at which each was. */
  named: Readonly<Partial<Record<Source, NamedCause>>>;
  namings: Readonly<Partial<Record<Source, Readonly<Partial<Record<NamedCause, readonly number[]>>>>>>;
  /** What was said, asked and alerted in this descent. */
  talk: TalkState;
  review: ReviewState;
  watch: SensorsWatch;
  propellantWatch: PropellantWatch;
  /** Undefined while every leg has been shown locked. */
  legWatch: LegWatch | undefined;
  /** Ticks of the descent at which each source, accepted until then, was put under check or rejected. */
  doubts: Readonly<Partial<Record<Source, readonly number[]>>>;
  /** What was believed when the lander first met the ground. */
  believedContact: Omit<BelievedArrival, 'utilisation'> | undefined;
  /** What fails in this descent, dealt or from the plan. */
  failures: readonly Failure[];
  /** How the event list of the drill stands; undefined in a free descent. */
  events: EventListState | undefined;
  /** Who sat where when the descent came to its end. */
  finalCrew: readonly CrewEntry[];
}

export interface Member {
  readonly id: MemberId;
  readonly name: string;
  readonly role: Role;
  /** Has read the brief. */
  readonly ready: boolean;
  readonly seat: Seat | undefined;
  /** Tick of the table at which the line dropped; undefined while connected. */
  readonly absentSince: number | undefined;
  /** Was here before the descent began, or was let in since: may take a seat while it runs. */
  readonly letIn: boolean;
}

/** Puts something else down about a member. */
export function changeMember(state: TableState, id: MemberId, change: Partial<Omit<Member, 'id' | 'name'>>): void {
  assert(findMember(state, id) !== undefined, `there is a member ${id} at this table`);
  state.members = state.members.map((member) => (member.id === id ? { ...member, ...change } : member));
}

export function memberAt(state: TableState, seat: Seat): Member | undefined {
  return state.members.find((member) => member.seat === seat);
}

export function findMember(state: TableState, id: MemberId): Member | undefined {
  return state.members.find((member) => member.id === id);
}

/** Who runs the table; undefined where nobody does. */
export function facilitatorOf({ members }: TableState): Member | undefined {
  return members.find(({ role }) => role === 'facilitator');
}

/** Whether somebody sees what is so while the crew does not. */
export function isControl({ role }: Member): boolean {
  return role === 'facilitator' || role === 'evaluator';
}
