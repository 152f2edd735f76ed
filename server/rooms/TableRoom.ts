import { CloseCode, Room, ServerError, type Client } from '@colyseus/core';
import { Encoder } from '@colyseus/schema';
import { nanoid } from 'nanoid';
import { paceNow } from '../../engine/table/index.ts';
import type { DescentEvent } from '../../engine/world/index.ts';
import { CLOSE_CODES, type Welcome } from '../messages/index.ts';
import { TablePapers } from '../schema/index.ts';
import { admit, hasJoined, refuseTooMany, runsTable } from './admission.ts';
import type { Entering } from './entrance.ts';
import { dropReservations, RESERVED_SECONDS } from './reservations.ts';
import { RoomClock } from './roomClock.ts';
import { openRoomParts, type RoomParts } from './roomParts.ts';
import type { RoomServices } from './roomServices.ts';
import type { OpenTable } from './tableRegistry.ts';

/** What the papers of a full crew fill, with a log and a debrief [byte]: the library grows a smaller buffer by itself, and complains in the log of the server. */
Encoder.BUFFER_SIZE = 128 * 1024;

/** Steps between two sendings: papers go out 20 times a second. */
export const STEPS_PER_PATCH = 3;

/** How long a table is kept for its first member. */
const FIRST_MEMBER_STEPS = RESERVED_SECONDS * 60;

/** What a room is made with. */
type RoomOptions = { readonly services: RoomServices; readonly takeUp?: string } & Partial<Entering>;

/**
 * Wires one table to the network: what goes out when, and what the room library wants of a room. It decides nothing
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

  // a message the library validates and finds wrong would cut the line, so it is parsed by us and refused with a reason
  override messages = {
    command: (client: Client, message: unknown) => this.#parts.requests.command(client, message),
    choose: (client: Client, message: unknown) => this.#parts.requests.choose(client, message),
    record: (client: Client) => this.#parts.requests.record(client),
    drill: (client: Client) => this.#parts.requests.drill(client),
    '*': () => undefined,
  };

  #services!: RoomServices;
  #parts!: RoomParts;
  readonly #clock = new RoomClock();
  #stopTicking: (() => void) | undefined;
  #isClosed = false;
  /** In another process, or the next one. */
  #goesOn = false;
  #code = '';
  #events: DescentEvent[] = [];

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
    try {
      if (takenUp === undefined) refuseTooMany(registry, address);
      this.#parts = openRoomParts(
        { services, papers: this.state, clock: this.#clock, opener: address, code: () => this.#code },
        { join, takenUp },
      );
      this.#code = registry.open(this, code);
      if (takenUp !== undefined) await processes.move(this.#code, this.roomId);
    } catch (error) {
      await processes.release(code, this.roomId);
      throw error;
    }
    this.#stopTicking = services.ticker.add(() => this.#step());
  }

  get isJoined(): boolean {
    return hasJoined(this.#parts.recorded.kept);
  }

  hasPlace(token: string): boolean {
    return this.#parts.places.memberOf(token) !== undefined;
  }

  hasAddress(address: string): boolean {
    return this.#parts.places.isKnown(address);
  }

  /** Another table needs the room. */
  end(): void {
    this.#parts.recorded.journal.end();
    this.#close(CLOSE_CODES.idle);
  }

  override onJoin(client: Client, entering: Entering): void {
    const { recorded, places, crew, showing } = this.#parts;
    const { kept, runKey } = recorded;
    const { registry, seatKeptSeconds } = this.#services;
    const [memberId, resume] = admit(entering, { kept, places, registry });
    crew.join(client, memberId);
    showing.lay(client, kept.table, memberId);
    const isRunner = runsTable(kept, memberId);
    const welcome: Welcome = { memberId, resume, code: this.#code, seatKeptSeconds, ...(isRunner && { runKey }) };
    this.desertedSinceMs = undefined;
    client.send('welcome', welcome);
  }

  override onLeave(client: Client, code?: number): void {
    client.view?.dispose();
    if (!this.#parts.crew.leave(client, code === CloseCode.CONSENTED)) return;
    if (this.#parts.crew.lines === 0) this.desertedSinceMs = performance.now();
  }

  /** The process is about to end: the table is taken up as it is now. */
  override onBeforeShutdown(): void {
    this.#goesOn = true;
    this.#parts.recorded.mark();
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

  /** Without this, one throwing handler would end the process and every table in it. */
  override onUncaughtException(error: Error, where: string): void {
    // a refusal to join is thrown on purpose, and has told the client why
    if (error.cause instanceof ServerError) return;
    this.#services.onFault(error, where);
  }

  #report(error: unknown, where: string): void {
    this.#services.onFault(error instanceof Error ? error : new Error(String(error)), where);
  }

  #step(): void {
    // a late ticker may owe more steps than one
    if (this.#isClosed) return;
    try {
      const { recorded, crew } = this.#parts;
      if (this.#clock.step(paceNow(recorded.kept.table.state))) this.#events.push(...recorded.step());
      crew.forgetAbsent();
      if (this.#clock.steps % STEPS_PER_PATCH === 0) this.#send();
      recorded.lookForForks();
      if (this.#isDeserted()) {
        recorded.journal.end();
        this.#close(CloseCode.CONSENTED);
      } else if (this.#clock.idleMinutes > this.#services.idleMinutes) {
        this.end();
      }
    } catch (error) {
      // what a step left half done cannot be played on
      this.#report(error, 'step');
      this.#parts.recorded.journal.end();
      this.#close(CLOSE_CODES.fault);
    }
  }

  /** Everybody who sat here has left or was given up, or nobody ever came. */
  #isDeserted(): boolean {
    if (this.#parts.places.size > 0) return false;
    return this.isJoined || this.#clock.steps > FIRST_MEMBER_STEPS;
  }

  #send(): void {
    const { recorded, crew, showing } = this.#parts;
    if (crew.lines > 0) showing.write(recorded.kept.table, this.#clock.steps, crew.present);
    if (this.#events.length > 0) {
      this.broadcast('events', this.#events, { afterNextPatch: true });
      this.#events = [];
    }
    this.broadcastPatch();
  }

  #close(code: number): void {
    this.#isClosed = true;
    this.#stopTicking?.();
    dropReservations(this);
    this.disconnect(code).catch((error: unknown) => this.#report(error, 'disconnect'));
  }
}
