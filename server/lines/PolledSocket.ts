import { EventEmitter } from 'node:events';
import { WebSocket } from 'ws';
import { LINE_ENDS, LONGEST_READ_MS, type Reading } from '../messages/index.ts';
import { createLineRules, FAREWELL_MS, POLICY } from './lineRules.ts';

/** How long a line stays that nobody reads [ms]. */
const UNREAD_MS = 8000;

/**
 * The end of a line over plain requests, for networks that cut WebSockets: to the room library it is a socket like any other, and the same rules hold on it. Who
 * asks for more than one thing at a time, or not in turn, has lost something: such a line ends.
 */
export class PolledSocket extends EventEmitter {
  /** As of a WebSocket; the library asks for it. */
  readyState: number = WebSocket.OPEN;
  readonly #rules = createLineRules((reason) => this.close(POLICY, reason));
  #unread = this.#startUnread();
  #waiting: Uint8Array[] = [];
  #waitingBytes = 0;
  #answer: ((reading: Reading) => void) | undefined;
  readonly #turns = { read: 0, write: 0 };
  #ended: Reading['ended'];

  /** Waits to be read [byte]. */
  get bufferedAmount(): number {
    return this.#waitingBytes;
  }

  /** Takes what the room library sends. */
  send(data: Uint8Array, _options?: object, sent?: (error?: Error) => void): void {
    if (this.#ended !== undefined) return;
    if (this.#rules.isChoked(this.#waitingBytes)) {
      this.terminate();
      return;
    }
    // the library uses its buffers again
    this.#waiting.push(data.slice());
    this.#waitingBytes += data.length;
    sent?.();
    this.#tell();
  }

  /** Takes what a client has written. */
  write(turn: number, frames: readonly Uint8Array[] | undefined): void {
    if (this.#ended !== undefined) return;
    if (turn !== this.#turns.write || frames === undefined || frames.length === 0) {
      this.close(POLICY, 'Not understood.');
      return;
    }
    this.#turns.write += 1;
    for (const frame of frames) {
      const offence = this.#rules.offence(frame);
      if (offence !== undefined) this.close(POLICY, offence);
      if (this.#ended !== undefined) return;
      this.emit('message', Buffer.from(frame), true);
    }
  }

  /** Resolves with what there is, as soon as there is something, or after a while with nothing. */
  read(turn: number): Promise<Reading> {
    if (this.#answer !== undefined || turn !== this.#turns.read) this.close(POLICY, 'Not understood.');
    this.#turns.read += 1;
    clearTimeout(this.#unread);
    return new Promise((resolve) => {
      const enough = setTimeout(() => this.#tell(true), LONGEST_READ_MS).unref();
      this.#answer = (reading) => {
        clearTimeout(enough);
        resolve(reading);
      };
      this.#tell();
    });
  }

  /** Ends it; whoever reads is told. */
  close(code: number = LINE_ENDS.noCode, reason = ''): void {
    if (this.#ended !== undefined) return;
    this.#ended = { code, reason };
    this.readyState = WebSocket.CLOSING;
    this.#tell();
    // told to the reader who waits, or to the next one if there is one soon
    setTimeout(() => this.terminate(), FAREWELL_MS).unref();
  }

  /** Ends it at once, and for good. */
  terminate(): void {
    if (this.readyState === WebSocket.CLOSED) return;
    const { code, reason } = (this.#ended ??= { code: LINE_ENDS.vanished, reason: '' });
    this.readyState = WebSocket.CLOSED;
    clearTimeout(this.#unread);
    this.#rules.end();
    this.#tell();
    this.#waiting = [];
    this.emit('close', code, Buffer.from(reason));
  }

  /** As of any other stream. */
  destroy(): void {
    this.terminate();
  }

  #startUnread(): NodeJS.Timeout {
    return setTimeout(() => this.terminate(), UNREAD_MS).unref();
  }

  /** Answers whoever reads, where there is something to say. */
  #tell(evenNothing = false): void {
    const answer = this.#answer;
    if (answer === undefined || !(evenNothing || this.#waiting.length > 0 || this.#ended !== undefined)) return;
    this.#answer = undefined;
    this.#unread = this.#startUnread();
    const frames = this.#waiting;
    this.#waiting = [];
    this.#waitingBytes = 0;
    answer({ frames, ...(this.#ended && { ended: this.#ended }) });
  }
}
