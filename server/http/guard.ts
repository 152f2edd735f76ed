import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import type { BlockList, Socket } from 'node:net';
import type { Duplex } from 'node:stream';
import { LINE_PATHS } from '../messages/index.ts';
import { createTokenBuckets } from '../tokenBucket.ts';
import { clientAddress, isTrusted, peerAddress } from './clientAddress.ts';
import { isFromHere } from './networkOrigins.ts';
import { setSecurityHeaders } from './securityHeaders.ts';
import { createTally, type Tally } from './tally.ts';

/** Largest request body [bytes]: a name, a code and a token fit many times. */
export const LARGEST_BODY = 2048;

/** Requests that have a body, or look at the logbook, from one address: far more than anybody needs, and cheap to answer. What they ask for has limits of its own. */
const REQUEST_RATE = { burst: 300, perSecond: 30 } as const;

/** Keys of the logbook from one address: whoever guesses does not get far. */
export const RUNS_RATE = { burst: 60, perSecond: 2 } as const;

/** Sockets from one address that is no proxy of ours, with or without a line. */
const SOCKETS_BEYOND_LINES = 60;

/** How long a request may take to come in, and its headers [ms]. */
const REQUEST_MS = 15_000;
const HEADERS_MS = 8000;

/** Ways into a table: a new one, or one whose code is known. */
const MATCHMAKING = /^\/matchmake\/(create|join)\/table$/;

/** The runs of the logbook: what is asked of one needs its key, and whoever guesses does not get far either. */
const RUNS = /^\/api\/runs(\/|$)/;
const CHANGES_OF_RUNS = /^\/api\/runs\/[a-z0-9]{1,24}\/(keep|forget|plan|delete)$/;

/** Lines over plain requests: a new one, and what is said on it, which its own rules bound. */
const { open: OPEN_LINE, ...ON_LINE } = LINE_PATHS;
const ON_LINES = Object.values(ON_LINE).map((path) => `/${path}`);
const LINES = [`/${OPEN_LINE}`, ...ON_LINES];

/** Votes of a hall: a new one, its question, the votes of phones, a flight and its landings. */
const VOTES = /^\/api\/votes(\/(ask|cast|begin|land))?$/;

/**
 * Stands before every other listener of the server: sets the security headers, and turns away what none of them should
 * see. The matchmaking behind it would read a body of any size, answer any number of attempts and allow any origin. What is behind it finds the address of
 * the client in `x-real-ip`, whatever came there. `lines`: what counts them for each address.
 */
export function guardServer(server: Server, options: GuardOptions, lines: Tally): void {
  const attempts = { bodies: createTokenBuckets(REQUEST_RATE), runs: createTokenBuckets(RUNS_RATE) };
  server.requestTimeout = REQUEST_MS;
  server.headersTimeout = HEADERS_MS;
  boundSockets(server, options);
  const behind = server.listeners('request');
  server.removeAllListeners('request');
  server.on('request', (request: IncomingMessage, response: ServerResponse) => {
    setSecurityHeaders(response);
    const elsewhere = stripBasePath(request, options);
    if (elsewhere !== undefined) {
      response.writeHead(308, { Location: elsewhere, 'Content-Length': 0 }).end();
      return;
    }
    const refusal = refusalOf(request, options) ?? tooMany(request, attempts, tellAddress(request, options));
    if (refusal !== undefined) {
      turnAway(request, response, refusal);
      return;
    }
    for (const listener of behind) listener.call(server, request, response);
  });
  guardUpgrades(server, options, lines);
}

interface GuardOptions {
  readonly trustedProxies: BlockList;
  /** Names under which browsers reach the server; none: any. */
  readonly hosts: readonly string[];
  readonly linesPerAddress: number;
  /** Path below which the server lies for browsers; some proxies leave it in the address. */
  readonly basePath: string;
}

/** Takes the path away below which the server lies. Returns where the page is for who left the slash out: what it names lies beside it. */
function stripBasePath(request: IncomingMessage, { basePath }: GuardOptions): string | undefined {
  const { url = '' } = request;
  if (basePath === '' || !url.startsWith(basePath)) return undefined;
  const rest = url.slice(basePath.length);
  if (rest === '' || rest.startsWith('?')) return `${basePath}/${rest}`;
  if (rest.startsWith('/')) request.url = rest;
  return undefined;
}

/** Says to what is behind where the request came from, and takes away what others may have said of it. */
function tellAddress(request: IncomingMessage, { trustedProxies }: GuardOptions): string {
  const address = clientAddress(request, trustedProxies);
  // several proxies leave a list there, which what is behind takes for a part of a URL
  delete request.headers['x-forwarded-proto'];
  request.headers['x-real-ip'] = address;
  return address;
}

function guardUpgrades(server: Server, options: GuardOptions, lines: Tally): void {
  const behind = server.listeners('upgrade');
  server.removeAllListeners('upgrade');
  server.on('upgrade', (request: IncomingMessage, socket: Duplex, head: Buffer) => {
    stripBasePath(request, options);
    // what the transport cannot parse would end up as an unhandled rejection there
    if (!isParsable(request)) {
      socket.destroy();
      return;
    }
    const refusal = strangeHost(request, options) ?? nameOfNoRoom(request);
    if (refusal !== undefined) socket.end(`HTTP/1.1 ${refusal.status} Refused\r\nConnection: close\r\n\r\n`);
    else if (!lines.add(tellAddress(request, options), socket))
      socket.end('HTTP/1.1 429 Too Many Requests\r\nConnection: close\r\n\r\n');
    else for (const listener of behind) listener.call(server, request, socket, head);
  });
}

/** So many sockets from one address that is no proxy of ours, whatever they do. */
function boundSockets(server: Server, { trustedProxies, linesPerAddress }: GuardOptions): void {
  const sockets = createTally(linesPerAddress + SOCKETS_BEYOND_LINES);
  server.on('connection', (socket: Socket) => {
    const address = peerAddress(socket);
    if (!isTrusted(address, trustedProxies) && !sockets.add(address, socket)) socket.destroy();
  });
}

interface HttpRefusal {
  readonly status: number;
  readonly reason: string;
}

function refusalOf(request: IncomingMessage, options: GuardOptions): HttpRefusal | undefined {
  const { method } = request;
  if (!isParsable(request)) return { status: 400, reason: 'The address of the request cannot be read.' };
  if (method !== 'GET' && method !== 'HEAD' && method !== 'POST')
    return { status: 405, reason: 'Only GET, HEAD and POST are answered here.' };
  const strange = strangeHost(request, options);
  if (strange !== undefined || method !== 'POST') return strange;
  if (
    ![MATCHMAKING, CHANGES_OF_RUNS, VOTES].some((way) => way.test(pathOf(request))) &&
    !LINES.includes(pathOf(request))
  )
    return { status: 404, reason: 'Nothing takes a POST at this address.' };
  const type = ON_LINES.includes(pathOf(request)) ? 'application/octet-stream' : 'application/json';
  // a page of another site may send neither without being asked about it
  if (!new RegExp(`^${type}\\b`, 'i').test(request.headers['content-type'] ?? ''))
    return { status: 415, reason: `The body has to be ${type}.` };
  const length = request.headers['content-length'];
  if (length === undefined) return { status: 411, reason: 'The length of the body has to be stated.' };
  if (Number(length) > LARGEST_BODY) {
    return { status: 413, reason: `The body has ${length} bytes; at most ${LARGEST_BODY} are taken.` };
  }
  return undefined;
}

type Attempts = Readonly<Record<'bodies' | 'runs', ReturnType<typeof createTokenBuckets>>>;

function tooMany(request: IncomingMessage, attempts: Attempts, address: string): HttpRefusal | undefined {
  if (ON_LINES.includes(pathOf(request))) return undefined;
  const isOfRuns = RUNS.test(pathOf(request).toLowerCase());
  if (request.method !== 'POST' && !isOfRuns) return undefined;
  if (attempts[isOfRuns ? 'runs' : 'bodies'].draw(address, performance.now())) return undefined;
  return { status: 429, reason: 'Too many attempts from this address. Wait a few seconds, then try again.' };
}

/** What every object has is no room: what is behind looks rooms up by name. */
function nameOfNoRoom(request: IncomingMessage): HttpRefusal | undefined {
  const names = pathOf(request).split('/');
  return names.some((name) => name in Object.prototype)
    ? { status: 404, reason: 'There is no line at this address.' }
    : undefined;
}

/** A page of another site, or a name that is not ours: what a browser would be tricked with. */
function strangeHost(request: IncomingMessage, { hosts }: GuardOptions): HttpRefusal | undefined {
  const asked = nameOf(`http://${request.headers.host ?? ''}`);
  // who looks after the server looks from the machine itself
  if (hosts.length > 0 && !hosts.includes(asked) && !isFromHere(request))
    return { status: 421, reason: 'This server has another name.' };
  const { origin } = request.headers;
  const isOwn = origin === undefined || nameOf(origin) === asked || hosts.includes(nameOf(origin));
  if (request.method === 'GET' && request.headers.upgrade === undefined) return undefined;
  return isOwn ? undefined : { status: 403, reason: 'Pages of other sites are not answered here.' };
}

function nameOf(origin: string): string {
  return URL.canParse(origin) ? new URL(origin).hostname : '';
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
