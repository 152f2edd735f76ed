import { ServerError, matchMaker } from '@colyseus/core';
import { JOIN_CODES, parseEntering, type EnteringOptions, type JoinOptions } from '../messages/index.ts';
import { createTokenBucket, createTokenBuckets } from '../tokenBucket.ts';
import { ALONE, type Processes } from './processes.ts';
import type { TableRegistry } from './tableRegistry.ts';

/** Attempts to open or join a table from one address: a class behind one router joins at once. Coming back to a place is free. */
export const ENTERING_RATE = { burst: 60, perSecond: 2 } as const;

/** Codes that no table has, from one address, and from all together: with 60 tables open it takes days to find one. */
export const GUESS_RATES = { ofAddress: { burst: 20, perSecond: 0.2 }, ofAll: { burst: 300, perSecond: 5 } } as const;

/** What the room is made and joined with. */
export interface Entering {
  readonly join: JoinOptions;
  readonly address: string;
}

/** The ways into a table, with what keeps strangers from taking all tables, or finding one that is not theirs. */
export interface Entrance {
  /** For the room library, which calls it with what came and with where it came from. */
  invokeMethod(
    method: string,
    roomName: string,
    options: unknown,
    context?: { readonly ip?: string | undefined },
  ): Promise<unknown>;
}

export function createEntrance(options: {
  readonly registry: TableRegistry;
  readonly processes?: Processes;
  /** The server is about to end. */
  readonly isDraining: () => boolean;
  readonly now?: () => number;
}): Entrance {
  const { registry, processes = ALONE, isDraining, now = () => performance.now() } = options;
  const attempts = createTokenBuckets(ENTERING_RATE);
  const guesses = createTokenBuckets(GUESS_RATES.ofAddress);
  const allGuesses = createTokenBucket(GUESS_RATES.ofAll);

  /** The room at whose table the token that came has a place. */
  const placeOf = async ({ code = '', join: { resume } }: EnteringOptions): Promise<string | undefined> => {
    if (resume === undefined) return undefined;
    const table = registry.find(code);
    if (table !== undefined) return table.hasPlace(resume) ? table.roomId : undefined;
    const roomId = await processes.find(code);
    return roomId !== undefined && (await askElsewhere(roomId, 'hasPlace', resume)) ? roomId : undefined;
  };

  const enter = async (code: string, entering: Entering) => {
    const { address } = entering;
    // asked before the code is looked at: an answer of any kind tells a guesser something
    if (!registry.isKnown(address) && !(allGuesses.has(now()) && guesses.has(address, now())))
      throw new ServerError(JOIN_CODES.tooMany, TOO_MANY_CODES);
    const roomId = registry.find(code)?.roomId ?? (await processes.find(code));
    if (roomId === undefined) {
      allGuesses.draw(now());
      guesses.draw(address, now());
      throw new ServerError(JOIN_CODES.unknownCode, 'No open table has this code.');
    }
    return reserve(roomId, entering);
  };

  return {
    async invokeMethod(method, roomName, given, context) {
      const address = context?.ip ?? '';
      const parsed = parseEntering(given);
      const place = parsed.ok ? await placeOf(parsed.value) : undefined;
      if (place === undefined && !attempts.draw(address, now()))
        throw new ServerError(JOIN_CODES.tooMany, TOO_MANY_ATTEMPTS);
      if (!parsed.ok) throw new ServerError(JOIN_CODES.malformed, parsed.error.reason);
      const { code, join } = parsed.value;
      if (roomName !== 'table' || (method === 'join') !== (code !== undefined))
        throw new ServerError(JOIN_CODES.malformed, NO_WAY_IN);
      if (isDraining()) throw new ServerError(JOIN_CODES.noTableFree, RESTARTING);
      const entering = { join, address };
      if (place !== undefined) return reserve(place, entering);
      return code === undefined ? open(entering) : enter(code, entering);
    },
  };
}

function open(entering: Entering) {
  return matchMaker.create('table', entering).catch((error: unknown) => {
    throw refusalFromElsewhere(error) ?? error;
  });
}

/** Of a table that another process has. Where that one has just ended, its table comes back in a moment. */
async function askElsewhere(roomId: string, what: 'hasPlace', token: string): Promise<boolean> {
  try {
    return (await matchMaker.remoteRoomCall(roomId, what, [token])) === true;
  } catch {
    throw new ServerError(JOIN_CODES.noTableFree, RESTARTING);
  }
}

async function reserve(roomId: string, entering: Entering) {
  try {
    return await matchMaker.joinById(roomId, entering);
  } catch (error) {
    if (matchMaker.getLocalRoomById(roomId) !== undefined) throw error;
    throw new ServerError(JOIN_CODES.noTableFree, RESTARTING);
  }
}

/** From another process only the words of a refusal come back. */
function refusalFromElsewhere(error: unknown): ServerError | undefined {
  if (error instanceof ServerError || !(error instanceof Error)) return undefined;
  if (error.message === ALL_IN_USE) return new ServerError(JOIN_CODES.noTableFree, ALL_IN_USE);
  return error.message === TOO_MANY_TABLES ? new ServerError(JOIN_CODES.tooMany, TOO_MANY_TABLES) : undefined;
}

export const ALL_IN_USE = 'All tables of this server are in use. Try again later.';
export const TOO_MANY_TABLES = 'Too many tables were opened from this address. Leave one of them, then try again.';
const TOO_MANY_ATTEMPTS = 'Too many attempts from this address. Wait a few seconds, then try again.';
const TOO_MANY_CODES = 'Too many wrong codes came in. Wait a minute, then try again.';
const NO_WAY_IN = 'Nothing is entered in this way.';
const RESTARTING = 'This server is being restarted. Try again in a moment.';
