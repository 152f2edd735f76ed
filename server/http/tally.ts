/** Whatever is open until it says that it is closed. */
interface Open {
  once(event: 'close', act: () => void): unknown;
  destroy(): void;
}

/** Counts what is open from each address. */
export interface Tally {
  /** Counts one until it is closed; false, and nothing is counted, where that is too many. */
  add(address: string, socket: Open): boolean;
  /** Ends all of them. */
  end(): void;
}

export function createTally(most: number): Tally {
  const open = new Map<string, Set<Open>>();
  return {
    add(address, socket) {
      const known = open.get(address) ?? new Set();
      if (known.size >= most) return false;
      open.set(address, known.add(socket));
      socket.once('close', () => {
        known.delete(socket);
        if (known.size === 0 && open.get(address) === known) open.delete(address);
      });
      return true;
    },
    end() {
      for (const sockets of open.values()) for (const socket of sockets) socket.destroy();
    },
  };
}
