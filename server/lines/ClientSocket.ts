import { WebSocket } from 'ws';
import { createLineRules, FAREWELL_MS, POLICY } from './lineRules.ts';

type Data = Parameters<WebSocket['send']>[0];
type SendOptions = Parameters<WebSocket['send']>[1];
type Sent = Parameters<WebSocket['send']>[2];

/** The socket of one client. Whatever it does, it costs little: too much, too dear or nothing at all ends it. */
export class ClientSocket extends WebSocket {
  readonly #rules = createLineRules((reason) => void this.#cut(reason));
  #isCut = false;

  /** Everything that comes in passes here, before anybody looks into it. */
  override emit(event: string | symbol, ...given: readonly unknown[]): boolean {
    if (event === 'close') this.#rules.end();
    if (event !== 'message') return super.emit(event, ...given);
    const [frame, isBinary] = given;
    if (this.#isCut || !(frame instanceof Uint8Array)) return false;
    const offence = isBinary === true ? this.#rules.offence(frame) : 'Not understood.';
    return offence === undefined ? super.emit(event, ...given) : this.#cut(offence);
  }

  override send(data: Data, sent?: Sent): void;
  override send(data: Data, options: SendOptions, sent?: Sent): void;
  override send(data: Data, options: SendOptions | Sent, sent?: Sent): void {
    if (this.#isCut) return;
    if (this.#rules.isChoked(this.bufferedAmount)) {
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
