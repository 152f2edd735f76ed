import { ServerError, matchMaker } from '@colyseus/core';
import { JOIN_CODES, parseEntering, type EnteringOptions, type JoinOptions } from '../messages/index.ts';
import { createTokenBucket, createTokenBuckets } from '../tokenBucket.ts';
import type { OpenTable, TableRegistry } from './tableRegistry.ts';

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
  /** The server is about to end. */
  readonly isDraining: () => boolean;
  readonly now?: () => number;
}): Entrance {
  const { registry, isDraining, now = () => performance.now() } = options;
  const attempts = createTokenBuckets(ENTERING_RATE);
  const guesses = createTokenBuckets(GUESS_RATES.ofAddress);
  const allGuesses = createTokenBucket(GUESS_RATES.ofAll);

  const open = (entering: Entering) => {
    const refusal = registry.refusalFor(entering.address);
    if (refusal === 'all in use') throw new ServerError(JOIN_CODES.noTableFree, ALL_IN_USE);
    if (refusal !== undefined) throw new ServerError(JOIN_CODES.tooMany, TOO_MANY_TABLES);
    return matchMaker.create('table', entering);
  };

  /** The table at which the token that came has a place. */
  const placeOf = ({ code, join: { resume } }: EnteringOptions): OpenTable | undefined => {
    const table = registry.find(code ?? '');
    return resume !== undefined && table?.hasPlace(resume) === true ? table : undefined;
  };

  const enter = (code: string, entering: Entering) => {
    const { address } = entering;
    // asked before the code is looked at: an answer of any kind tells a guesser something
    if (!registry.isKnown(address) && !(allGuesses.has(now()) && guesses.has(address, now())))
      throw new ServerError(JOIN_CODES.tooMany, TOO_MANY_CODES);
    const table = registry.find(code);
    if (table === undefined) {
      allGuesses.draw(now());
      guesses.draw(address, now());
      throw new ServerError(JOIN_CODES.unknownCode, 'No open table has this code.');
    }
    return matchMaker.joinById(table.roomId, entering);
  };

  return {
    async invokeMethod(method, roomName, given, context) {
      const address = context?.ip ?? '';
      const parsed = parseEntering(given);
      const place = parsed.ok ? placeOf(parsed.value) : undefined;
      if (place === undefined && !attempts.draw(address, now()))
        throw new ServerError(JOIN_CODES.tooMany, TOO_MANY_ATTEMPTS);
      if (!parsed.ok) throw new ServerError(JOIN_CODES.malformed, parsed.error.reason);
      const { code, join } = parsed.value;
      if (roomName !== 'table' || (method === 'join') !== (code !== undefined))
        throw new ServerError(JOIN_CODES.malformed, NO_WAY_IN);
      if (isDraining()) throw new ServerError(JOIN_CODES.noTableFree, RESTARTING);
      const entering = { join, address };
      if (place !== undefined) return matchMaker.joinById(place.roomId, entering);
      return code === undefined ? open(entering) : enter(code, entering);
    },
  };
}

export const ALL_IN_USE = 'All tables of this server are in use. Try again later.';
const TOO_MANY_TABLES = 'Too many tables were opened from this address. Leave one of them, then try again.';
const TOO_MANY_ATTEMPTS = 'Too many attempts from this address. Wait a few seconds, then try again.';
const TOO_MANY_CODES = 'Too many wrong codes came in. Wait a minute, then try again.';
const NO_WAY_IN = 'Nothing is entered in this way.';
const RESTARTING = 'This server is being restarted. Try again in a moment.';
