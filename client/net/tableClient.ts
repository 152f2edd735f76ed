import { Client, type Room } from '@colyseus/sdk';
import type { EnteringBody } from '../../server/messages/index.ts';
import type { TablePapers } from '../../server/schema/index.ts';

export type TableRoom = Room<unknown, TablePapers>;

/** How long a request, and then the line, may take [ms]. A dead network answers neither with yes nor with no. */
const REQUEST_MS = 4000;
const LINE_MS = 4000;

/** How late a network may still deliver what was given up [ms]. */
const STRAY_MS = 60_000;

/** The room library's client, which by itself waits for ever. */
export class TableClient extends Client {
  #coming: Room | undefined;
  #giveUp: (() => void) | undefined;
  #waiting: ReturnType<typeof setTimeout> | undefined;
  #gaveUpMs = Number.NEGATIVE_INFINITY;

  constructor(origin: string) {
    super(origin, { fetchFn: (url, init) => fetch(url, { ...init, signal: AbortSignal.timeout(REQUEST_MS) }) });
  }

  /** Whether a line that was given up may still reach the server: it would close the one that took its place. */
  get hasStray(): boolean {
    return performance.now() - this.#gaveUpMs < STRAY_MS;
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
      this.#coming?.connection?.close();
      this.#gaveUpMs = performance.now();
      throw error;
    } finally {
      clearTimeout(this.#waiting);
      this.#coming = undefined;
    }
  }

  protected override createRoom<State>(roomName: string): Room<unknown, State> {
    const room = super.createRoom<State>(roomName);
    this.#coming = room;
    this.#waiting = setTimeout(() => this.#giveUp?.(), LINE_MS);
    return room;
  }
}
