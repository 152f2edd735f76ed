import type { IncomingMessage } from 'node:http';
import { WebSocketTransport, type TransportOptions } from '@colyseus/ws-transport';
import { ClientSocket } from './ClientSocket.ts';
import type { PolledSocket } from './PolledSocket.ts';

/** Largest message from a client [bytes]; the longest command is under 100. Past this the line is cut. */
const LARGEST_MESSAGE = 2048;

/** How often a line is tried, and after how many misses it counts as dropped: 8 s at the latest. */
const HEARTBEAT = { pingInterval: 4000, pingMaxRetries: 1 } as const;

/** Hands lines to the rooms: WebSockets, and those over plain requests. */
export class TableTransport extends WebSocketTransport {
  constructor(server: NonNullable<TransportOptions['server']>) {
    super({ server, WebSocket: ClientSocket, maxPayload: LARGEST_MESSAGE, ...HEARTBEAT });
  }

  /** `request`: its address is that of a WebSocket to the same place. */
  takeIn(line: PolledSocket, request: IncomingMessage): void {
    this.wss.emit('connection', line, request);
  }
}
