import { matchMaker } from '@colyseus/core';
import type { RedisDriver } from '@colyseus/redis-driver';
import type { RedisPresence } from '@colyseus/redis-presence';

/** Which tables the processes have that serve one name together. A process that is alone has its own, and asks nobody. */
export interface Processes {
  /** Draws codes until there is one that no process has, and takes it for this room. */
  claim(draw: () => string, roomId: string): Promise<string>;
  /** The table with this code is in this room now: its process ended, and this one has taken it up. */
  move(code: string, roomId: string): Promise<void>;
  /** Which room of any process has this code. */
  find(code: string): Promise<string | undefined>;
  release(code: string, roomId: string): Promise<void>;
  /** False where there ought to be others, and they cannot be reached. */
  canReach(): boolean;
  /** Through which the room library reaches the other processes. */
  readonly library: Library;
}

interface Library {
  readonly presence?: RedisPresence;
  readonly driver?: RedisDriver;
  readonly publicAddress?: string;
  readonly selectProcessIdToCreateRoom?: (roomName: string, options: unknown) => Promise<string>;
}

/** Of each code the room, in Redis: no name, no token and no record is kept there. */
const CODES = 'kilter:codes';

/** How long Redis may take to answer at the start [ms]. */
const CONNECT_MS = 5000;

export const ALONE: Processes = {
  claim: (draw) => Promise.resolve(draw()),
  move: () => Promise.resolve(),
  find: () => Promise.resolve(undefined),
  release: () => Promise.resolve(),
  canReach: () => true,
  library: {},
};

/** Rejects where nothing answers at that address. What it takes is loaded here alone. */
export async function joinProcesses(options: {
  /** Such as redis://127.0.0.1:6379. */
  readonly redis: string;
  /** Under which browsers reach this process. */
  readonly publicAddress: string;
}): Promise<Processes> {
  const [{ Redis }, driver, presence] = await Promise.all([
    import('ioredis'),
    import('@colyseus/redis-driver'),
    import('@colyseus/redis-presence'),
  ]);
  const redis = new Redis(options.redis, { lazyConnect: true, connectTimeout: CONNECT_MS });
  // told by `canReach`; without a listener it would end the process
  redis.on('error', () => undefined);
  try {
    await redis.connect();
  } catch (error) {
    redis.disconnect();
    throw new Error('KILTER_REDIS: nothing answers there', { cause: error });
  }
  return {
    async claim(draw, roomId) {
      let code = draw();
      while ((await redis.hsetnx(CODES, code, roomId)) === 0) code = draw();
      return code;
    },
    move: async (code, roomId) => void (await redis.hset(CODES, code, roomId)),
    find: async (code) => (await redis.hget(CODES, code)) ?? undefined,
    async release(code, roomId) {
      // another process may have taken the table up
      if (redis.status === 'ready' && (await redis.hget(CODES, code)) === roomId) await redis.hdel(CODES, code);
    },
    canReach: () => redis.status === 'ready',
    library: {
      presence: new presence.RedisPresence(redis),
      driver: new driver.RedisDriver(redis),
      publicAddress: options.publicAddress,
      selectProcessIdToCreateRoom: (_name, given) => selectProcess(given),
    },
  };
}

/** A table that is taken up stays with who takes it; a new one goes where the fewest are. */
async function selectProcess(options: unknown): Promise<string> {
  const own = matchMaker.processId;
  if (typeof options === 'object' && options !== null && 'takeUp' in options) return own;
  const all = await matchMaker.stats.fetchAll();
  return all.toSorted((a, b) => a.roomCount - b.roomCount)[0]?.processId ?? own;
}
