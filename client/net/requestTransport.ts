import { LENGTH_BYTES, packFrames, unpackFrames } from '../../server/messages/packet.ts';
import {
  LARGEST_WRITE,
  LINE_ENDS,
  LINE_HEADERS,
  LINE_PATHS,
  LONGEST_READ_MS,
  type LineOpening,
  type OpenedLine,
} from '../../server/messages/requestLine.ts';

/** What hears of a line: as of a WebSocket. */
export interface LineEvents {
  onopen?: ((event: object) => unknown) | null;
  onmessage?: ((event: { readonly data: ArrayBuffer }) => unknown) | null;
  onclose?: ((event: { readonly code: number; readonly reason: string }) => unknown) | null;
}

/** Past the longest time that the server lets a read wait, and for any other request [ms]. */
const PATIENCE_MS = 6000;

/** A line to a table over plain requests, with the face of the room library's WebSocket. Where a request fails, something is lost, and the line ends. */
export class RequestTransport {
  isOpen = false;
  readonly #events: LineEvents;
  readonly #turns = { read: 0, write: 0 };
  readonly #abort = new AbortController();
  #base = '';
  #line = '';
  #unsent: Uint8Array[] = [];
  #isWriting = false;
  #hasEnded = false;

  constructor(events: LineEvents) {
    this.#events = events;
  }

  /** `address`: of a WebSocket to the same place. */
  connect(address: string): void {
    this.#open(new URL(address)).catch(() => this.#end(LINE_ENDS.vanished));
  }

  send(frame: Uint8Array): void {
    // the library uses its buffers again
    this.#unsent.push(frame.slice());
    if (!this.#isWriting) this.#write().catch(() => this.#end(LINE_ENDS.vanished));
  }

  sendUnreliable(frame: Uint8Array): void {
    this.send(frame);
  }

  close(code: number = LINE_ENDS.noCode, reason = ''): void {
    if (this.#hasEnded) return;
    // it may outlive the page
    if (this.isOpen) void this.#ask('end', { keepalive: true }).catch(() => undefined);
    this.#end(code, reason);
  }

  async #open({ protocol, host, pathname, searchParams }: URL): Promise<void> {
    const [, before = pathname, room] = /^(.*)\/([\w-]+\/[\w-]+)$/.exec(pathname) ?? [];
    this.#base = `${protocol === 'wss:' ? 'https:' : 'http:'}//${host}${before.replace(/\/$/, '')}/`;
    const opening: LineOpening = room === undefined ? {} : { room, session: searchParams.get('sessionId') ?? '' };
    const answer = await fetch(this.#base + LINE_PATHS.open, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(opening),
      signal: AbortSignal.any([this.#abort.signal, AbortSignal.timeout(PATIENCE_MS)]),
    });
    if (!answer.ok) throw new Error(`refused with ${answer.status}`);
    // our own server's answer
    // eslint-disable-next-line typescript/no-unsafe-type-assertion -- a line of another name leads nowhere
    this.#line = ((await answer.json()) as OpenedLine).line;
    if (this.#hasEnded) return;
    this.isOpen = true;
    this.#events.onopen?.({});
    await this.#readOn();
  }

  async #readOn(): Promise<void> {
    while (!this.#hasEnded) {
      const answer = await this.#ask('read', {
        headers: { [LINE_HEADERS.turn]: String(this.#turns.read) },
        patienceMs: LONGEST_READ_MS + PATIENCE_MS,
      });
      this.#turns.read += 1;
      const frames = unpackFrames(new Uint8Array(await answer.arrayBuffer()));
      if (frames === undefined) throw new Error('no packet');
      for (const { buffer } of frames)
        if (!this.#hasEnded && buffer instanceof ArrayBuffer) this.#events.onmessage?.({ data: buffer });
      const ended = answer.headers.get(LINE_HEADERS.ended);
      if (ended !== null) {
        const [code = '', reason = ''] = ended.split(' ');
        this.#end(Number(code), decodeURIComponent(reason));
      }
    }
  }

  /** One request at a time, so that what is said stays in order; what comes meanwhile goes along with the next one. */
  async #write(): Promise<void> {
    this.#isWriting = true;
    while (this.#unsent.length > 0 && !this.#hasEnded) {
      let bytes = 0;
      const fitting = this.#unsent.findIndex(({ length }) => (bytes += length + LENGTH_BYTES) > LARGEST_WRITE);
      // one that does not fit at all is for the server to refuse
      const frames = this.#unsent.splice(0, fitting === -1 ? this.#unsent.length : Math.max(1, fitting));
      await this.#ask('write', {
        headers: { [LINE_HEADERS.turn]: String(this.#turns.write) },
        body: packFrames(frames),
      });
      this.#turns.write += 1;
    }
    this.#isWriting = false;
  }

  async #ask(
    what: 'read' | 'write' | 'end',
    {
      headers,
      body,
      keepalive = false,
      patienceMs = PATIENCE_MS,
    }: {
      readonly headers?: Readonly<Record<string, string>>;
      readonly body?: Uint8Array<ArrayBuffer>;
      readonly keepalive?: boolean;
      readonly patienceMs?: number;
    },
  ): Promise<Response> {
    const late = AbortSignal.timeout(patienceMs);
    const answer = await fetch(this.#base + LINE_PATHS[what], {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream', [LINE_HEADERS.line]: this.#line, ...headers },
      body: body ?? new Uint8Array(),
      keepalive,
      cache: 'no-store',
      signal: keepalive ? late : AbortSignal.any([this.#abort.signal, late]),
    });
    if (!answer.ok) throw new Error(`refused with ${answer.status}`);
    return answer;
  }

  #end(code: number, reason = ''): void {
    if (this.#hasEnded) return;
    this.#hasEnded = true;
    this.isOpen = false;
    this.#abort.abort();
    this.#events.onclose?.({ code, reason });
  }
}
