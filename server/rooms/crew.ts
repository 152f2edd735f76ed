import type { Client } from '@colyseus/core';
import { tellLine, type KeptTable } from '../../engine/record/index.ts';
import type { MemberId } from '../../engine/table/index.ts';
import { CLOSE_CODES } from '../messages/index.ts';
import { TICK_MS } from './ticker.ts';

/** What the lines of a table need of it. */
interface Parts {
  readonly kept: () => KeptTable;
  /** That the room has made so far: sixty a second of the clock on the wall. */
  readonly steps: () => number;
  /** How long the place of a member whose line dropped is kept [s]. */
  readonly seatKeptSeconds: number;
  /** A place was given up. */
  readonly onGone: (memberId: MemberId) => void;
}

/** Who is at a table over which line, and who is away. A place belongs to a member, not to a line; each member has one at most. */
export class Crew {
  readonly #parts: Parts;
  readonly #lines = new Map<Client, MemberId>();
  /** Step at which the line of each member who is away dropped. */
  readonly #away = new Map<MemberId, number>();

  constructor(parts: Parts) {
    this.#parts = parts;
  }

  /** How many have a line. */
  get lines(): number {
    return this.#lines.size;
  }

  /** Who have a line. */
  get present(): Iterable<MemberId> {
    return this.#lines.values();
  }

  /** Whose line it is; undefined: the same place was opened elsewhere, or is no more. */
  memberOf(client: Client): MemberId | undefined {
    return this.#lines.get(client);
  }

  /** A line for a member, in the place of the one that there was. */
  join(client: Client, memberId: MemberId): void {
    this.#cut(memberId, CLOSE_CODES.openedElsewhere, 'This place was opened in another window.');
    this.#lines.set(client, memberId);
    this.#away.delete(memberId);
  }

  /** The line has ended; `isLeaving`: its member meant to leave. Whether it was still anybody's. */
  leave(client: Client, isLeaving: boolean): boolean {
    const memberId = this.#lines.get(client);
    if (memberId === undefined) return false;
    this.#lines.delete(client);
    if (isLeaving) this.#giveUp(memberId);
    else this.#drop(memberId);
    return true;
  }

  tell(memberId: MemberId, type: string, message: unknown): void {
    for (const [client, other] of this.#lines) if (other === memberId) client.send(type, message);
  }

  /** Who was removed loses line and place. */
  sendAway(memberId: MemberId): void {
    this.#cut(memberId, CLOSE_CODES.removed, 'You were removed from this table.');
    this.#forget(memberId);
  }

  /** The process before this one ended: nobody is there yet, and what ran stands still until somebody is. */
  loseAll(): void {
    const { members } = this.#parts.kept().table.state;
    const [first] = members;
    if (first !== undefined) tellLine(this.#parts.kept(), first.id, 'interrupted');
    for (const { id, absentSince } of members) {
      if (absentSince === undefined) this.#drop(id);
      // how long somebody was away before is not known: the time begins anew
      else this.#away.set(id, this.#parts.steps());
    }
  }

  /** Gives up the place of whoever has been away for the stated time of the clock on the wall. */
  forgetAbsent(): void {
    const kept = Math.ceil((this.#parts.seatKeptSeconds * 1000) / TICK_MS);
    for (const [memberId, since] of this.#away) if (this.#parts.steps() - since >= kept) this.#giveUp(memberId);
  }

  #cut(memberId: MemberId, code: number, reason: string): void {
    for (const [client, other] of this.#lines) {
      if (other !== memberId) continue;
      this.#lines.delete(client);
      client.leave(code, reason);
    }
  }

  #drop(memberId: MemberId): void {
    tellLine(this.#parts.kept(), memberId, 'dropped');
    this.#away.set(memberId, this.#parts.steps());
  }

  #giveUp(memberId: MemberId): void {
    tellLine(this.#parts.kept(), memberId, 'left');
    this.#forget(memberId);
  }

  #forget(memberId: MemberId): void {
    this.#away.delete(memberId);
    this.#parts.onGone(memberId);
  }
}
