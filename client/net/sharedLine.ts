import { CloseCode } from '@colyseus/sdk';
import { accept, refuse, type Result } from '../../engine/result.ts';
import { formatTableCode, type Command, type PlanChoice, type Refusal } from '../../engine/table/index.ts';
import type { DescentEvent } from '../../engine/world/index.ts';
import { CLOSE_CODES } from '../../server/messages/closeCodes.ts';
import type { Welcome } from '../../server/messages/index.ts';
import { readPapers } from '../../server/schema/index.ts';
import { LINE_DOWN, NO_ANSWER, readAnswer, readJoinRefusal } from './answers.ts';
import { createLinkCore, type LinkCore } from './linkCore.ts';
import type { Place, PlaceStore } from './place.ts';
import { keepRunKey } from './runKeys.ts';
import type { TableClient, TableRoom } from './tableClient.ts';
import type { TableLink } from './tableLink.ts';

/**
 * The line to a table on the server, through however many sockets it takes.
 *
 * Coming back is done in one way only, whatever closed the socket: join again with the token from the `Welcome`. (The
 * room library's own reconnection is switched off: it does not help after a reload, waits for a server that has not
 * noticed the drop, and leaves a room that restarted unexplained.)
 */
export interface SharedLine {
  readonly client: TableClient;
  readonly store: PlaceStore;
  readonly name: string;
  readonly core: LinkCore;
  room: TableRoom | undefined;
  place: Place | undefined;
  /** How long the server keeps the place after a drop [ms]. */
  keptMs: number;
  timer: ReturnType<typeof setTimeout> | undefined;
  /** The server has said that it ends, and that the table goes on when it is there again. */
  isRestarting: boolean;
}

/** Pauses before the attempts to come back; the last one repeats [ms]. */
const RETRY_MS = [50, 250, 500, 1000, 2000, 4000] as const;

/** How often the line is tried while it seems to be up; without an answer by the next time it counts as down [ms]. */
const HEARTBEAT_MS = 3000;

/** How long a command waits for its answer [ms]. */
const ANSWER_MS = 5000;

/** Pauses before a text is asked for again that the table would not give yet [ms]. */
const PUT_OFF_MS = [1000, 2000, 4000, 8000] as const;

/** How long the first view may take after the server has let us in [ms]. */
const FIRST_VIEW_MS = 10_000;

export function createSharedLine(parts: {
  readonly client: TableClient;
  readonly store: PlaceStore;
  readonly name: string;
}): SharedLine {
  const core = createLinkCore('connecting');
  return { ...parts, core, room: undefined, place: undefined, keptMs: 0, timer: undefined, isRestarting: false };
}

export function comeBack(client: TableClient, { code, name, resume }: Place): Promise<TableRoom> {
  return client.enter({ code, name, resume });
}

/** Takes a freshly joined room as the line's own; resolves once its first view and its welcome are here. */
export function adoptRoom(line: SharedLine, room: TableRoom): Promise<void> {
  const { core } = line;
  room.reconnection.enabled = false;
  line.room = room;
  return new Promise((resolve, reject) => {
    const tooLate = setTimeout(() => {
      reject(new Error('no view came'));
      void room.leave(false);
    }, FIRST_VIEW_MS);
    room.onStateChange((state) => {
      // the server sends this client one paper besides the common one: its own
      const [paper] = state.papers.values();
      if (paper === undefined || line.room !== room) return;
      core.view = readPapers(state.common, paper);
      if (core.state === 'connected') core.tell([]);
    });
    room.onMessage('events', (events: readonly DescentEvent[]) => core.tell(events));
    room.onMessage('runKey', (key: string) => keepKey(line, key));
    room.onMessage('welcome', ({ code, resume, seatKeptSeconds, runKey }: Welcome) => {
      clearTimeout(tooLate);
      line.place = { code, resume, name: line.name };
      line.keptMs = seatKeptSeconds * 1000;
      line.store.save(line.place);
      if (runKey !== undefined) keepKey(line, runKey);
      core.state = 'connected';
      watch(line, room);
      core.tell([]);
      resolve();
    });
    room.onLeave((code, reason) => {
      clearTimeout(tooLate);
      reject(new Error('the line closed'));
      if (line.room === room) lineClosed(line, code, reason);
    });
  });
}

/** Whoever runs the table finds its run in the logbook of this browser. */
function keepKey({ core, place }: SharedLine, key: string): void {
  const title = core.view?.plan.title ?? '';
  keepRunKey({ key, code: place?.code ?? '', title, openedMs: Date.now() });
}

/** What the rest of the client holds. */
export function linkOf(line: SharedLine): TableLink {
  const { core } = line;
  return {
    kind: 'shared',
    get state() {
      return core.state;
    },
    get view() {
      return core.view;
    },
    get code() {
      return formatTableCode(line.place?.code ?? '');
    },
    get isRestarting() {
      return line.isRestarting;
    },
    get closedBecause() {
      return core.closedBecause;
    },
    subscribe: (listener) => core.subscribe(listener),
    command: (command) => ask(line, 'command', command),
    choose: (choice) => ask(line, 'choose', choice),
    recordText: () => askForText(line, 'record'),
    drillText: () => askForText(line, 'drill'),
    leave: () => leave(line),
  };
}

/** Asks for something to be done. */
async function ask(
  line: SharedLine,
  type: 'command' | 'choose',
  message: Command | PlanChoice,
): Promise<Result<void, Refusal>> {
  const answer = await request(line, type, message);
  return answer.ok ? accept(undefined) : answer;
}

/** A whole crew asks at once when it comes to rest, and the table gives so many a second: whoever is put off asks again. */
async function askForText(line: SharedLine, of: 'record' | 'drill'): Promise<Result<string, Refusal>> {
  let answer = await request(line, of, {});
  for (const pause of PUT_OFF_MS) {
    if (answer.ok || answer.error.code !== 'table/too-fast') break;
    await new Promise((resolve) => setTimeout(resolve, pause));
    answer = await request(line, of, {});
  }
  if (!answer.ok) return answer;
  return typeof answer.value === 'string' ? accept(answer.value) : refuse(NO_ANSWER);
}

/** Sends a request and reads its answer. */
async function request(
  { core, room }: SharedLine,
  type: 'command' | 'choose' | 'record' | 'drill',
  message: object,
): Promise<Result<unknown, Refusal>> {
  if (core.state !== 'connected' || room === undefined) {
    return refuse(core.state === 'closed' ? { code: 'table/closed', reason: 'You have left this table.' } : LINE_DOWN);
  }
  try {
    return readAnswer(await room.request<object, unknown>(type, message, { timeout: ANSWER_MS }));
  } catch {
    return refuse(core.state === 'connected' ? NO_ANSWER : LINE_DOWN);
  }
}

function leave(line: SharedLine): void {
  const { core, room } = line;
  if (core.state === 'closed') return;
  close(line, undefined);
  line.store.clear();
  void room?.leave(true);
}

/** What is said of a line that is not to come back by itself, where the server gave no reason. */
const ENDED: Readonly<Record<number, string>> = {
  [CLOSE_CODES.openedElsewhere]: 'The server closed this table.',
  [CLOSE_CODES.fault]: 'The server closed this table.',
  [CLOSE_CODES.removed]: 'The server closed this table.',
  [CLOSE_CODES.idle]: 'Nobody did anything at this table for a long time, so the server closed it.',
};

function lineClosed(line: SharedLine, code: number, reason: string | undefined): void {
  if (line.core.state === 'closed') return;
  if (code === CLOSE_CODES.removed || code === CLOSE_CODES.idle) line.store.clear();
  if (code in ENDED && !(code === CLOSE_CODES.openedElsewhere && line.client.hasStray)) {
    close(line, reason === undefined || reason === '' ? ENDED[code] : reason);
  } else if (code === CloseCode.CONSENTED) {
    line.store.clear();
    close(line, 'This table was closed.');
  } else {
    lineDropped(line, code === CLOSE_CODES.restarting);
  }
}

/** The socket is gone, the place is not: tries to come back until it would be given up. */
function lineDropped(line: SharedLine, isRestarting = false): void {
  const { core, place } = line;
  // before the first welcome there is no place to come back to; the one who opens the table is told by the promise
  if (place === undefined) return;
  clearTimeout(line.timer);
  line.room = undefined;
  line.isRestarting = isRestarting;
  core.state = 'reconnecting';
  core.tell([]);
  tryAgain(line, { place, attempts: 0, droppedMs: performance.now() });
}

interface Drop {
  readonly place: Place;
  readonly attempts: number;
  readonly droppedMs: number;
}

function tryAgain(line: SharedLine, drop: Drop): void {
  const pause = RETRY_MS[Math.min(drop.attempts, RETRY_MS.length - 1)];
  line.timer = setTimeout(() => void attempt(line, drop), pause);
}

async function attempt(line: SharedLine, drop: Drop): Promise<void> {
  const { core } = line;
  try {
    const room = await comeBack(line.client, drop.place);
    if (core.state === 'closed') await room.leave(true);
    else await adoptRoom(line, room);
  } catch (error) {
    if (core.state !== 'reconnecting') return;
    if (goneForGood(error) || performance.now() - drop.droppedMs > line.keptMs) {
      line.store.clear();
      close(line, lossReason(error));
    } else {
      tryAgain(line, { ...drop, attempts: drop.attempts + 1 });
    }
  }
}

/** Whether trying again cannot help: the table or the place is not there any more. */
function goneForGood(error: unknown): boolean {
  const { code } = readJoinRefusal(error);
  return code === 'table/no-table' || code === 'table/no-place';
}

function lossReason(error: unknown): string {
  const { code, reason } = readJoinRefusal(error);
  return code === 'table/no-table' ? 'This table is no longer open.' : reason;
}

function close(line: SharedLine, because: string | undefined): void {
  clearTimeout(line.timer);
  line.room = undefined;
  line.core.state = 'closed';
  line.core.closedBecause = because;
  line.core.tell([]);
}

/** Tries the line from this side: a network that vanished without a word closes no socket for minutes. */
function watch(line: SharedLine, room: TableRoom): void {
  let isAnswered = true;
  const beat = () => {
    if (line.room !== room || line.core.state !== 'connected') return;
    if (!isAnswered) {
      lineDropped(line);
      room.connection.close();
      return;
    }
    isAnswered = false;
    room.ping(() => {
      isAnswered = true;
    });
    line.timer = setTimeout(beat, HEARTBEAT_MS);
  };
  beat();
}
