import { Client, type Room } from '@colyseus/sdk';
import type { EnteringBody } from '../../server/messages/index.ts';
import type { TablePapers } from '../../server/schema/index.ts';
import { RequestTransport } from './requestTransport.ts';

export type TableRoom = Room<unknown, TablePapers>;

/** How long a request, and then the line, may take [ms]. A dead network answers neither with yes nor with no. */
const REQUEST_MS = 4000;
const LINE_MS = 4000;

/** How late a network may still deliver what was given up [ms]. */
const STRAY_MS = 60_000;

/** What lines are made of: a WebSocket, or, on networks that cut those, plain requests. */
type Way = 'socket' | 'requests';

/** The room library's client, which by itself waits for ever, and knows one way alone. */
export class TableClient extends Client {
  #way: Way = 'socket';
  #coming: Coming | undefined;
  #giveUp: (() => void) | undefined;
  #waiting: ReturnType<typeof setTimeout> | undefined;
  #gaveUpMs = Number.NEGATIVE_INFINITY;

  /** `origin`: of the server, with the path below which it lies, if any. */
  constructor(origin: string) {
    super(origin, { fetchFn: (url, init) => fetch(url, { ...init, signal: AbortSignal.timeout(REQUEST_MS) }) });
  }

  /** Whether a line that was given up may still reach the server: it would close the one that took its place. */
  get hasStray(): boolean {
    return performance.now() - this.#gaveUpMs < STRAY_MS;
  }

  /** What the next line is made of. */
  get way(): Way {
    return this.#way;
  }

  /** Opens a table, or with a code enters one; rejects when it takes too long, and then no line comes of it. */
  async enter(body: EnteringBody): Promise<TableRoom> {
    try {
      return await new Promise<TableRoom>((resolve, reject) => {
        this.#giveUp = () => reject(new Error('no answer in time'));
        const way = body.code === undefined ? 'create' : 'join';
        this[way]<TablePapers>('table', body).then(resolve, reject);
      });
    } catch (error) {
      this.#coming?.room.connection?.close();
      this.#gaveUpMs = performance.now();
      throw error;
    } finally {
      clearTimeout(this.#waiting);
      this.#coming = undefined;
    }
  }

  /** Takes the place that the server has reserved; where no line of one kind can be had, one of the other. */
  override async consumeSeatReservation<State>(
    ...given: Parameters<Client['consumeSeatReservation']>
  ): Promise<Room<unknown, State>> {
    try {
      return await super.consumeSeatReservation<State>(given[0]);
    } catch (error) {
      if (this.#coming?.isOpen !== false) throw error;
      this.#way = this.#way === 'socket' ? 'requests' : 'socket';
      // plain requests were the last resort: the next attempt begins anew
      if (this.#way === 'socket') throw error;
      return super.consumeSeatReservation<State>(given[0]);
    }
  }

  protected override createRoom<State>(roomName: string): Room<unknown, State> {
    const room = super.createRoom<State>(roomName);
    const coming: Coming = { room, isOpen: false };
    this.#coming = coming;
    let line: Room['connection'] | undefined;
    // the library makes the line and uses it in one go: this is where another can be put in its place
    Object.defineProperty(room, 'connection', {
      get: () => line,
      set: (made: Room['connection']) => {
        line = made;
        Object.assign(made.events, { onopen: () => void (coming.isOpen = true) });
        if (this.#way === 'requests') made.transport = new RequestTransport(made.events);
      },
    });
    clearTimeout(this.#waiting);
    this.#waiting = setTimeout(() => this.#tooLate(coming), LINE_MS);
    return room;
  }

  #tooLate({ room, isOpen }: Coming): void {
    // one that is not open yet ends with this, and the other way is tried
    if (!isOpen) room.connection?.close();
    else {
      // opened, and nothing comes through: not even the next one is to be of this kind
      this.#way = this.#way === 'socket' ? 'requests' : 'socket';
      this.#giveUp?.();
    }
  }
}

/** A line that is being opened. */
interface Coming {
  readonly room: Room;
  isOpen: boolean;
}
