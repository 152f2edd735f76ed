import { Protocol } from '@colyseus/core';
import { WebSocket } from 'ws';
import { createTokenBucket } from '../tokenBucket.ts';
import { createBacklogWatch } from './backlog.ts';
import { isPlainFrame } from './frame.ts';

/** Frames of one line: four times what is ever answered. Past this it is cut. */
const FRAME_RATE = { burst: 160, perSecond: 120 } as const;

/** How long a line may take to join the table that it came for [ms]. */
const JOIN_MS = 5000;

/** How long the other end has to take its leave when it is cut [ms]. */
const FAREWELL_MS = 500;

/** A rule of this server was broken; our own client comes back. */
const POLICY = 1008;

type Data = Parameters<WebSocket['send']>[0];
type SendOptions = Parameters<WebSocket['send']>[1];
type Sent = Parameters<WebSocket['send']>[2];

/** The socket of one client. Whatever it does, it costs little: too much, too dear or nothing at all ends it. */
export class ClientSocket extends WebSocket {
  readonly #frames = createTokenBucket(FRAME_RATE);
  readonly #joining = setTimeout(() => this.#cut('Nothing was joined.'), JOIN_MS).unref();
  #isCut = false;
  readonly #isChoked = createBacklogWatch();

  /** Everything that comes in passes here, before anybody looks into it. */
  override emit(event: string | symbol, ...given: readonly unknown[]): boolean {
    if (event === 'close') clearTimeout(this.#joining);
    if (event !== 'message') return super.emit(event, ...given);
    const [frame, isBinary] = given;
    if (this.#isCut || !(frame instanceof Uint8Array)) return false;
    if (!this.#frames.draw(performance.now())) return this.#cut('Too many messages.');
    if (isBinary !== true || !isPlainFrame(frame)) return this.#cut('Not understood.');
    if (frame[0] === Protocol.JOIN_ROOM) clearTimeout(this.#joining);
    return super.emit(event, ...given);
  }

  override send(data: Data, sent?: Sent): void;
  override send(data: Data, options: SendOptions, sent?: Sent): void;
  override send(data: Data, options: SendOptions | Sent, sent?: Sent): void {
    if (this.#isCut) return;
    if (this.#isChoked(this.bufferedAmount, performance.now())) {
      // nothing is read at the other end: it would not read a farewell either
      this.#isCut = true;
      this.terminate();
      return;
    }
    if (typeof options === 'object') super.send(data, options, sent);
    else super.send(data, options);
  }

  #cut(reason: string): false {
    this.#isCut = true;
    this.close(POLICY, reason);
    setTimeout(() => this.terminate(), FAREWELL_MS).unref();
    return false;
  }
}
