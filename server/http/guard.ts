import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import type { Duplex } from 'node:stream';
import { createTokenBuckets } from '../tokenBucket.ts';
import { setSecurityHeaders } from './securityHeaders.ts';

/** Largest request body [bytes]: a name, a code and a token fit many times. */
export const LARGEST_BODY = 2048;

/** Attempts to open or join a table from one address: a class behind one router joins at once, a guesser of codes does not get far. */
export const MATCHMAKING_RATE = { burst: 60, perSecond: 2 } as const;

/** Ways into a table: a new one, or one whose code is known. */
const MATCHMAKING = /^\/matchmake\/(create|joinById)\/[A-Za-z]{1,16}$/;

/** The runs of the logbook: what is asked of one needs its key, and whoever guesses does not get far either. */
const RUNS = /^\/api\/runs(\/|$)/;
const CHANGES_OF_RUNS = /^\/api\/runs\/[a-z0-9]{1,24}\/(keep|forget|plan|delete)$/;

/**
 * Stands before every other listener of the server: sets the security headers, and turns away what none of them should
 * see. The matchmaking behind it would read a body of any size, answer any number of attempts and allow any origin.
 */
export function guardServer(server: Server): void {
  const attempts = { tables: createTokenBuckets(MATCHMAKING_RATE), runs: createTokenBuckets(MATCHMAKING_RATE) };
  const behind = server.listeners('request');
  server.removeAllListeners('request');
  server.on('request', (request: IncomingMessage, response: ServerResponse) => {
    setSecurityHeaders(response);
    const refusal = refusalOf(request) ?? tooMany(request, attempts);
    if (refusal !== undefined) {
      turnAway(request, response, refusal);
      return;
    }
    for (const listener of behind) listener.call(server, request, response);
  });
  server.prependListener('upgrade', (request: IncomingMessage, socket: Duplex) => {
    // what the transport cannot parse would end up as an unhandled rejection there
    if (!isParsable(request)) socket.destroy();
  });
}

interface HttpRefusal {
  readonly status: number;
  readonly reason: string;
}

function refusalOf(request: IncomingMessage): HttpRefusal | undefined {
  const { method } = request;
  if (!isParsable(request)) return { status: 400, reason: 'The address of the request cannot be read.' };
  if (method === 'GET' || method === 'HEAD') return undefined;
  if (method !== 'POST') return { status: 405, reason: 'Only GET, HEAD and POST are answered here.' };
  if (!MATCHMAKING.test(pathOf(request)) && !CHANGES_OF_RUNS.test(pathOf(request)))
    return { status: 404, reason: 'Nothing takes a POST at this address.' };
  if (!/^application\/json\b/i.test(request.headers['content-type'] ?? '')) {
    return { status: 415, reason: 'The body has to be application/json.' };
  }
  const length = request.headers['content-length'];
  if (length === undefined) return { status: 411, reason: 'The length of the body has to be stated.' };
  if (Number(length) > LARGEST_BODY) {
    return { status: 413, reason: `The body has ${length} bytes; at most ${LARGEST_BODY} are taken.` };
  }
  return undefined;
}

type Attempts = Readonly<Record<'tables' | 'runs', ReturnType<typeof createTokenBuckets>>>;

function tooMany(request: IncomingMessage, attempts: Attempts): HttpRefusal | undefined {
  const isOfRuns = RUNS.test(pathOf(request).toLowerCase());
  if (request.method !== 'POST' && !isOfRuns) return undefined;
  if (attempts[isOfRuns ? 'runs' : 'tables'].draw(request.socket.remoteAddress ?? '', performance.now()))
    return undefined;
  return { status: 429, reason: 'Too many attempts from this address. Wait a few seconds, then try again.' };
}

function turnAway(request: IncomingMessage, response: ServerResponse, { status, reason }: HttpRefusal): void {
  const body = JSON.stringify({ code: status, error: reason });
  const headers = {
    'Content-Type': 'application/json',
    'Content-Length': Buffer.byteLength(body),
    Connection: 'close',
  };
  response.writeHead(status, headers);
  response.end(request.method === 'HEAD' ? undefined : body);
}

function pathOf(request: IncomingMessage): string {
  return request.url?.split('?')[0] ?? '';
}

/** Whether path and host of the request make a URL, as everything behind takes for granted. */
function isParsable(request: IncomingMessage): boolean {
  const url = request.url ?? '';
  return url.startsWith('/') && URL.canParse(`http://${request.headers.host ?? ''}${url}`);
}
