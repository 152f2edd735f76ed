/** What the network between this page and its server lets through. */
export interface NetworkCheck {
  /** The server answers a request; how long it took [ms]. */
  readonly request: Outcome;
  /** A line is opened, and something comes back on it; how long that took [ms]. */
  readonly line: Outcome;
}

export type Outcome = { readonly ok: true; readonly tookMs: number } | { readonly ok: false };

/** Past this it counts as blocked [ms]. */
const LONGEST_MS = 6000;

/** Of the room library's protocol: whatever is sent on a line for no table is answered with this. */
const PING = 18;

/** Tries both ways to the server; never rejects. */
export async function checkNetwork(origin: string): Promise<NetworkCheck> {
  const request = await timed(tryRequest(origin));
  return { request, line: await timed(tryLine(origin)) };
}

async function timed(work: Promise<void>): Promise<Outcome> {
  const startMs = performance.now();
  return work.then(
    () => ({ ok: true, tookMs: performance.now() - startMs }),
    () => ({ ok: false }),
  );
}

async function tryRequest(origin: string): Promise<void> {
  const answer = await fetch(`${origin}/api/health`, { cache: 'no-store', signal: AbortSignal.timeout(LONGEST_MS) });
  // a page in which some network says why it blocks is an answer too
  const health: unknown = await answer.json();
  if (typeof health !== 'object' || health === null || !('tables' in health)) throw new Error('another answer');
}

function tryLine(origin: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const socket = new WebSocket(origin.replace(/^http/, 'ws'));
    const tooLate = setTimeout(() => end(false), LONGEST_MS);
    const end = (isAnswered: boolean) => {
      clearTimeout(tooLate);
      if (isAnswered) resolve();
      else reject(new Error('no line'));
      socket.close();
    };
    socket.addEventListener('open', () => socket.send(new Uint8Array([PING])));
    socket.addEventListener('message', () => end(true));
    socket.addEventListener('close', () => end(false));
  });
}
