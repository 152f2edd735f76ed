import { RequestTransport, type LineEvents } from './requestTransport.ts';

/** What the network between this page and its server lets through. */
export interface NetworkCheck {
  /** The server answers a request; how long it took [ms]. */
  readonly request: Outcome;
  /** A line is opened, and something comes back on it; how long that took [ms]. */
  readonly line: Outcome;
  /** The same over plain requests, which takes its place where it is blocked. */
  readonly requestLine: Outcome;
}

export type Outcome = { readonly ok: true; readonly tookMs: number } | { readonly ok: false };

/** Past this it counts as blocked [ms]. */
const LONGEST_MS = 6000;

/** Of the room library's protocol: whatever is sent on a line for no table is answered with this. */
const PING = 18;

/** Tries all ways to the server; never rejects. `base`: its address, with a slash at the end. */
export async function checkNetwork(base: string): Promise<NetworkCheck> {
  const request = await timed(tryRequest(base));
  const address = base.replace(/^http/, 'ws');
  const line = await timed(tryLine((events) => openSocket(address, events)));
  return { request, line, requestLine: await timed(tryLine((events) => openRequests(address, events))) };
}

async function timed(work: Promise<void>): Promise<Outcome> {
  const startMs = performance.now();
  return work.then(
    () => ({ ok: true, tookMs: performance.now() - startMs }),
    () => ({ ok: false }),
  );
}

async function tryRequest(base: string): Promise<void> {
  const answer = await fetch(`${base}api/health`, { cache: 'no-store', signal: AbortSignal.timeout(LONGEST_MS) });
  // a page in which some network says why it blocks is an answer too
  const health: unknown = await answer.json();
  if (typeof health !== 'object' || health === null || !('tables' in health)) throw new Error('another answer');
}

/** Sends something on a line, and waits for the answer. */
function tryLine(open: (events: LineEvents) => Line): Promise<void> {
  return new Promise((resolve, reject) => {
    const tooLate = setTimeout(() => end(false), LONGEST_MS);
    const end = (isAnswered: boolean) => {
      clearTimeout(tooLate);
      if (isAnswered) resolve();
      else reject(new Error('no line'));
      line.close();
    };
    const line = open({
      onopen: () => line.send(new Uint8Array([PING])),
      onmessage: () => end(true),
      onclose: () => end(false),
    });
  });
}

interface Line {
  send(frame: Uint8Array<ArrayBuffer>): void;
  close(): void;
}

function openSocket(address: string, events: LineEvents): Line {
  const socket = new WebSocket(address);
  socket.addEventListener('open', (event) => events.onopen?.(event));
  socket.addEventListener('message', (event) => events.onmessage?.(event));
  socket.addEventListener('close', (event) => events.onclose?.(event));
  return socket;
}

function openRequests(address: string, events: LineEvents): Line {
  const transport = new RequestTransport(events);
  transport.connect(address);
  return transport;
}
