import { CloseCode, Room, ServerError, type Client } from '@colyseus/core';
import { Encoder, StateView } from '@colyseus/schema';
import { nanoid } from 'nanoid';
import { accept, refuse, type Result } from '../../engine/result.ts';
import {
  askTable,
  headerOf,
  joinTable,
  markLine,
  openKeptTable,
  relayKeptTable,
  resumeKeptTable,
  stepKeptTable,
  tellLine,
  type KeptTable,
  type RecordLine,
} from '../../engine/record/index.ts';
import {
  askForDrill,
  judgeChoosing,
  paceNow,
  viewCommon,
  viewOwn,
  type Entry,
  type MemberId,
  type PlanChoice,
  type Refusal,
  type TableModel,
  type TablePlan,
} from '../../engine/table/index.ts';
import type { DescentEvent } from '../../engine/world/index.ts';
import {
  CLOSE_CODES,
  JOIN_CODES,
  parseChoice,
  parseCommand,
  type CommandAnswer,
  type JoinOptions,
  type Welcome,
} from '../messages/index.ts';
import { TablePapers, layPaper, writeCommon, writeOwn } from '../schema/index.ts';
import type { Journal, TableJournal, UnfinishedTable } from '../storage/index.ts';
import { RUN_KEY_LETTERS } from '../logbook/index.ts';
import { createAllowances } from './allowances.ts';
import { ALL_IN_USE, TOO_MANY_TABLES, type Entering } from './entrance.ts';
import { createForkKeeper, type FlyFork, type ForkKeeper } from './forkKeeper.ts';
import { createOwnReadings } from './ownReadings.ts';
import { createPlaces, type Places } from './places.ts';
import type { Processes } from './processes.ts';
import type { OpenTable, TableRegistry } from './tableRegistry.ts';
import { TICK_MS, type Ticker } from './ticker.ts';

/** What the papers of a full crew fill, with a log and a debrief [byte]: the library grows a smaller buffer by itself, and complains in the log of the server. */
Encoder.BUFFER_SIZE = 128 * 1024;

/** Steps between two sendings: papers go out 20 times a second. */
export const STEPS_PER_PATCH = 3;

/** How long a reserved place is kept for whoever asked for it [s], and a table for its first member. */
const RESERVED_SECONDS = 10;
const FIRST_MEMBER_STEPS = RESERVED_SECONDS * 60;

/** Who opened the table. */
const FIRST_MEMBER: MemberId = 'm1';

/** Given by the server to each room when it is made. */
export interface RoomServices {
  readonly ticker: Ticker;
  readonly registry: TableRegistry;
  readonly model: TableModel;
  /** Of a new table, for what its opener chose; without a choice, the server's own. */
  readonly plan: (choice?: PlanChoice, recorded?: unknown) => TablePlan;
  readonly journal: Journal;
  readonly flyFork: FlyFork;
  /** Other processes that serve the same name. */
  readonly processes: Processes;
  /** Tables that are taken up from the journal: for the room that is made with the key of one, which takes it from here. */
  readonly takenUp: Map<string, UnfinishedTable>;
  readonly seatKeptSeconds: number;
  readonly idleMinutes: number;
  readonly onFault: (fault: Error, where: string) => void;
}

/** What a room is made with. */
type RoomOptions = { readonly services: RoomServices; readonly takeUp?: string } & Partial<Entering>;

/**
 * Wires one table to the network: who is who, what goes out when, and what happens when a line drops. It decides nothing
 * about the exercise; that is the authority's.
 *
 * A place belongs to a member, not to a socket. A member proves who they are with the token from the `Welcome`, whether the
 * page was reloaded, the network dropped, or the same place was opened in a second window (which closes the first).
 */
export class TableRoom extends Room<{ state: TablePapers }> implements OpenTable {
  override state = new TablePapers();
  /** The room's own timer is too coarse: papers are sent from `step`. */
  override patchRate = null;
  /** A table outlives its sockets; `step` closes it when its last member is gone. */
  override autoDispose = false;
  override seatReservationTimeout = RESERVED_SECONDS;

  opener: string | undefined;
  desertedSinceMs: number | undefined;

  // a message the library validates and finds wrong would cut the line, so it is parsed here and refused with a reason
  override messages = {
    command: (client: Client, message: unknown) => this.answer(client, message),
    choose: (client: Client, message: unknown) => this.choose(client, message),
    record: (client: Client) => this.record(client),
    drill: (client: Client) => this.drill(client),
    '*': () => undefined,
  };

  #services!: RoomServices;
  #kept!: KeptTable;
  #journal!: TableJournal;
  /** Opens the record of this table in the logbook, whatever the table comes to play. */
  #runKey = nanoid(RUN_KEY_LETTERS);
  #forks!: ForkKeeper;
  #stopTicking: (() => void) | undefined;
  #isClosed = false;
  /** In another process, or the next one. */
  #goesOn = false;
  #code = '';
  #places!: Places;
  readonly #allowances = createAllowances();
  /** Step at which somebody last asked for something. */
  #askedAt = 0;
  readonly #lines = new Map<Client, { readonly memberId: MemberId }>();
  /** Step at which the line of each member who is away dropped. */
  readonly #away = new Map<MemberId, number>();
  /** What came to the table before its first descent: it is laid out anew with them when something else is chosen. */
  #gathered: Entry[] = [];
  readonly #ownReadings = createOwnReadings();
  #events: DescentEvent[] = [];
  /** Sixty a second of the clock on the wall, whatever the pace of the descent. */
  #steps = 0;
  /** Share of the next tick of the table that has passed [-]. */
  #passed = 0;

  override async onCreate({ services, takeUp = '', join, address }: RoomOptions): Promise<void> {
    const { takenUp: all, registry, processes } = services;
    const takenUp = all.get(takeUp);
    all.delete(takeUp);
    this.roomId = nanoid();
    this.opener = address;
    this.desertedSinceMs = performance.now();
    this.#services = services;
    const code = takenUp?.code ?? (await processes.claim(() => registry.draw(), this.roomId));
    this.#code = code;
    this.#places = createPlaces(() => this.#journal, address, takenUp?.places);
    try {
      if (takenUp === undefined) {
        refuseTooMany(registry, address);
        this.#open(join);
      } else this.#takeUp(takenUp);
      this.#code = registry.open(this, code);
      if (takenUp !== undefined) await processes.move(this.#code, this.roomId);
    } catch (error) {
      await processes.release(code, this.roomId);
      throw error;
    }
    this.#stopTicking = services.ticker.add(() => this.#step());
  }

  get isJoined(): boolean {
    return this.#kept.table.state.joined > 0;
  }

  hasPlace(token: string): boolean {
    return this.#places.memberOf(token) !== undefined;
  }

  hasAddress(address: string): boolean {
    return this.#places.isKnown(address);
  }

  /** Another table needs the room. */
  end(): void {
    this.#journal.end();
    this.#close(CLOSE_CODES.idle);
  }

  override onJoin(client: Client, entering: Entering): void {
    const [memberId, resume] = this.#admit(entering);
    this.#closeOtherLine(memberId);
    this.#lines.set(client, { memberId });
    const paper = layPaper(this.state, memberId);
    writeCommon(this.state, viewCommon(this.#kept.table));
    writeOwn(paper, viewOwn(this.#kept.table, memberId));
    client.view = new StateView();
    client.view.add(paper);
    const welcome: Welcome = {
      memberId,
      resume,
      code: this.#code,
      seatKeptSeconds: this.#services.seatKeptSeconds,
      ...(this.#runsTable(memberId) && { runKey: this.#runKey }),
    };
    this.#away.delete(memberId);
    this.desertedSinceMs = undefined;
    client.send('welcome', welcome);
  }

  override onLeave(client: Client, code?: number): void {
    client.view?.dispose();
    const line = this.#lines.get(client);
    // no line any more: the same place was opened elsewhere
    if (line === undefined) return;
    this.#lines.delete(client);
    if (code === CloseCode.CONSENTED) {
      tellLine(this.#kept, line.memberId, 'left');
      this.#forget(line.memberId);
    } else {
      this.#drop(line.memberId);
    }
    if (this.#lines.size === 0) this.desertedSinceMs = performance.now();
  }

  /** The process is about to end: the table is taken up as it is now. */
  override onBeforeShutdown(): void {
    this.#goesOn = true;
    this.#journal.write(markLine(this.#kept.table));
    this.#close(CLOSE_CODES.restarting);
  }

  override onDispose(): void {
    this.#stopTicking?.();
    this.#services.registry.close(this.#code);
    // one that ends with its process stays known: another takes it up
    if (!this.#goesOn)
      this.#services.processes
        .release(this.#code, this.roomId)
        .catch((error: unknown) => this.#report(error, 'release'));
  }

  #report(error: unknown, where: string): void {
    this.#services.onFault(error instanceof Error ? error : new Error(String(error)), where);
  }

  /** Without this, one throwing handler would end the process and every table in it. */
  override onUncaughtException(error: Error, where: string): void {
    // a refusal to join is thrown on purpose, and has told the client why
    if (error.cause instanceof ServerError) return;
    this.#services.onFault(error, where);
  }

  /** Carries out a command, or says why not. */
  answer(client: Client, message: unknown): CommandAnswer {
    const asking = this.#whoAsks(client);
    if (!asking.ok) return asking;
    const command = parseCommand(message);
    if (!command.ok) return command;
    const tooDear = command.value.kind === 'again' ? this.#allowances.spendDear(asking.value) : undefined;
    if (tooDear !== undefined) return refuse(tooDear);
    const answer = askTable(this.#kept, asking.value, command.value);
    if (!answer.ok) return answer;
    if (command.value.kind === 'remove') this.#sendAway(command.value.member);
    if (command.value.kind === 'handOverTable') this.#handOverKey(command.value.member);
    return answer;
  }

  /** Lays out something else to play before the first descent, or says why not. Everybody keeps their place. */
  choose(client: Client, message: unknown): CommandAnswer {
    const asking = this.#whoAsks(client);
    if (!asking.ok) return asking;
    const { state } = this.#kept.table;
    const refusal = judgeChoosing(state, asking.value) ?? this.#allowances.spendDear(asking.value);
    if (refusal !== undefined) return refuse(refusal);
    const choice = parseChoice(message);
    if (!choice.ok) return choice;
    const plan = this.#services.plan(choice.value);
    const before = { gathered: this.#gathered, tick: state.tick };
    this.#journal.drop();
    this.#kept = relayKeptTable(before, this.#begin(plan));
    this.#places.keepIn(this.#journal);
    return accept(undefined);
  }

  /** The record of this table for a member, once nothing in it is to stay hidden. */
  record(client: Client): Result<string, Refusal> {
    const asking = this.#whoAsks(client);
    if (!asking.ok) return asking;
    if (this.#kept.table.state.stage !== 'resolved')
      return refuse({ code: 'table/stage', reason: 'The record can be saved when the descent is at rest.' });
    const tooDear = this.#allowances.spendDear(asking.value);
    if (tooDear !== undefined) return refuse(tooDear);
    const text = this.#journal.text();
    return text === undefined
      ? refuse({ code: 'table/no-record', reason: 'This server keeps no record of this table.' })
      : accept(text);
  }

  /** The whole drill, as JSON, for facilitator and evaluator, and for everybody once nothing in it is to stay hidden. */
  drill(client: Client): Result<string, Refusal> {
    const asking = this.#whoAsks(client);
    if (!asking.ok) return asking;
    const tooDear = this.#allowances.spendDear(asking.value);
    if (tooDear !== undefined) return refuse(tooDear);
    const drill = askForDrill(this.#kept.table, asking.value);
    return drill.ok ? accept(JSON.stringify(drill.value)) : drill;
  }

  /** Whose message it is, unless they have no line any more or send too much. */
  #whoAsks(client: Client): Result<MemberId, Refusal> {
    const line = this.#lines.get(client);
    if (line === undefined) {
      return refuse({ code: 'table/not-here', reason: 'This place was opened in another window.' });
    }
    const refusal = this.#allowances.spend(line.memberId);
    if (refusal !== undefined) return refuse(refusal);
    this.#askedAt = this.#steps;
    return accept(line.memberId);
  }

  #open(join: JoinOptions | undefined): void {
    this.#kept = openKeptTable(this.#begin(this.#services.plan(join?.choice)));
  }

  /** Begins a record for what is to be played. */
  #begin(plan: TablePlan): Parameters<typeof openKeptTable>[0] {
    const { model, journal, flyFork, onFault } = this.#services;
    this.#journal = journal.open(this.#code, headerOf(plan), this.#runKey);
    this.#forks = createForkKeeper({ fly: flyFork, onFault });
    this.#gathered = [];
    return { plan, model, write: (line) => this.#write(line) };
  }

  #write(line: RecordLine): void {
    this.#journal.write(line);
    this.#forks.note(line);
    if (line.line === 'entry') this.#ownReadings.note();
    if (line.line === 'entry' && this.#kept.table.state.stage === 'gathering') this.#gathered.push(line);
  }

  /** As the table was when the process before this one ended; everybody has lost their line. */
  #takeUp({ record, journal, runKey }: UnfinishedTable): void {
    const { plan: lay, model, flyFork, onFault } = this.#services;
    const resumed =
      record === undefined
        ? undefined
        : resumeKeptTable(record, {
            plan: lay(record.header.plan.choice, record.header.plan.drill),
            model,
            write: (line) => this.#write(line),
          });
    if (record === undefined || resumed?.ok !== true) {
      journal.end();
      throw new Error('A table of another version cannot be taken up.');
    }
    this.#journal = journal;
    this.#runKey = runKey ?? this.#runKey;
    this.#forks = createForkKeeper({ fly: flyFork, onFault, lines: record.lines });
    this.#gathered = record.lines.filter((line) => line.line === 'entry');
    this.#kept = resumed.value;
    const { members } = resumed.value.table.state;
    // nobody is there yet: what ran stands still until somebody is
    const [first] = members;
    if (first !== undefined) tellLine(this.#kept, first.id, 'interrupted');
    for (const { id, absentSince } of members) {
      if (absentSince === undefined) this.#drop(id);
      // how long somebody was away before is not known: the time begins anew
      else this.#away.set(id, this.#steps);
    }
  }

  /** The member who comes back, or a new one, with what proves it the next time. */
  #admit({ join, address }: Entering): readonly [MemberId, string] {
    const { name, role = 'crew', resume } = join;
    if (resume !== undefined) return this.#takeBack(resume);
    if (!this.isJoined && !this.#services.registry.hasRoom()) throw new ServerError(JOIN_CODES.noTableFree, ALL_IN_USE);
    if (this.#places.isCrowded(address)) throw new ServerError(JOIN_CODES.tableFull, TOO_MANY_FROM_THERE);
    // only who opens a table may run it from the start; later the part is handed over
    if (role === 'facilitator' && this.isJoined) {
      throw new ServerError(
        JOIN_CODES.notFacilitator,
        'Only who opens a table runs it. Ask for the part at the table.',
      );
    }
    const joined = joinTable(this.#kept, name, role);
    if (!joined.ok) throw new ServerError(JOIN_CODES.tableFull, joined.error.reason);
    return [joined.value, this.#places.give(joined.value, address)];
  }

  #takeBack(token: string): readonly [MemberId, string] {
    const memberId = this.#places.memberOf(token);
    if (memberId === undefined) {
      throw new ServerError(
        JOIN_CODES.unknownPlace,
        'Your place at this table was given up. Join again with the code.',
      );
    }
    tellLine(this.#kept, memberId, 'returned');
    return [memberId, this.#places.renew(memberId, token)];
  }

  /** The facilitator; where nobody facilitates, whoever opened the table. */
  #runsTable(memberId: MemberId): boolean {
    const facilitator = this.#kept.table.state.members.find(({ role }) => role === 'facilitator');
    return facilitator === undefined ? memberId === FIRST_MEMBER : memberId === facilitator.id;
  }

  #handOverKey(memberId: MemberId): void {
    for (const [client, line] of this.#lines) if (line.memberId === memberId) client.send('runKey', this.#runKey);
  }

  #closeOtherLine(memberId: MemberId): void {
    for (const [client, line] of this.#lines) {
      if (line.memberId !== memberId) continue;
      this.#lines.delete(client);
      client.leave(CLOSE_CODES.openedElsewhere, 'This place was opened in another window.');
    }
  }

  /** Who was removed loses line and place. */
  #sendAway(memberId: MemberId): void {
    for (const [client, line] of this.#lines) {
      if (line.memberId !== memberId) continue;
      this.#lines.delete(client);
      client.leave(CLOSE_CODES.removed, 'You were removed from this table.');
    }
    this.#forget(memberId);
  }

  #drop(memberId: MemberId): void {
    tellLine(this.#kept, memberId, 'dropped');
    this.#away.set(memberId, this.#steps);
  }

  /** Gives up the place of whoever has been away for the stated time of the clock on the wall. */
  #forgetAbsent(): void {
    const kept = Math.ceil((this.#services.seatKeptSeconds * 1000) / TICK_MS);
    for (const [memberId, since] of this.#away) {
      if (this.#steps - since < kept) continue;
      tellLine(this.#kept, memberId, 'left');
      this.#forget(memberId);
    }
  }

  #forget(memberId: MemberId): void {
    this.#away.delete(memberId);
    this.#allowances.forget(memberId);
    this.#places.forget(memberId);
    this.state.papers.delete(memberId);
  }

  #step(): void {
    // a late ticker may owe more steps than one
    if (this.#isClosed) return;
    try {
      this.#steps += 1;
      this.#passed += paceNow(this.#kept.table.state);
      if (this.#passed >= 1) {
        this.#passed -= 1;
        this.#events.push(...stepKeptTable(this.#kept));
      }
      this.#forgetAbsent();
      if (this.#steps % STEPS_PER_PATCH === 0) this.#send();
      this.#forks.look(this.#kept.table);
      if (this.#isDeserted()) {
        this.#journal.end();
        this.#close(CloseCode.CONSENTED);
      } else if (this.#isIdle()) {
        this.end();
      }
    } catch (error) {
      // what a step left half done cannot be played on
      this.#report(error, 'step');
      this.#journal.end();
      this.#close(CLOSE_CODES.fault);
    }
  }

  /** Everybody who sat here has left or was given up, or nobody ever came. */
  #isDeserted(): boolean {
    if (this.#places.size > 0) return false;
    return this.isJoined || this.#steps > FIRST_MEMBER_STEPS;
  }

  #isIdle(): boolean {
    return (this.#steps - this.#askedAt) * TICK_MS > this.#services.idleMinutes * 60_000;
  }

  #send(): void {
    const { table } = this.#kept;
    if (this.#lines.size > 0) writeCommon(this.state, viewCommon(table));
    const isDue = this.#ownReadings.due(table.state, this.#steps);
    for (const { memberId } of this.#lines.values()) {
      const member = table.state.members.find(({ id }) => id === memberId);
      const paper = this.state.papers.get(memberId);
      if (paper !== undefined && member !== undefined && isDue(member)) writeOwn(paper, viewOwn(table, memberId));
    }
    if (this.#events.length > 0) {
      this.broadcast('events', this.#events, { afterNextPatch: true });
      this.#events = [];
    }
    this.broadcastPatch();
  }

  #close(code: number): void {
    this.#isClosed = true;
    this.#stopTicking?.();
    this.#dropReservations();
    this.disconnect(code).catch((error: unknown) => this.#report(error, 'disconnect'));
  }

  /** The library would wait for everybody who asked for a place and has not come. */
  #dropReservations(): void {
    // private to the library by their types alone
    for (const timeout of Object.values<NodeJS.Timeout>(this['_reservedSeatTimeouts'])) clearTimeout(timeout);
    for (const sessionId of Object.keys(this['_reservedSeats'])) delete this['_reservedSeats'][sessionId];
  }
}

const TOO_MANY_FROM_THERE = 'Too many people joined this table from your network. Ask for a place at the table.';

/** Asked where the table is opened, which may be another process than the one that was asked. */
function refuseTooMany(registry: TableRegistry, address = ''): void {
  const refusal = registry.refusalFor(address);
  if (refusal === 'all in use') throw new ServerError(JOIN_CODES.noTableFree, ALL_IN_USE);
  if (refusal !== undefined) throw new ServerError(JOIN_CODES.tooMany, TOO_MANY_TABLES);
}
