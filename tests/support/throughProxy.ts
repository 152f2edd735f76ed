import { createConnection, createServer, type Server, type Socket } from 'node:net';

/** A relay in front of a server whose lines a test can cut, freeze and refuse, as networks do. */
export interface Relay {
  readonly origin: string;
  /** Ends every line at once, without a closing word. */
  cut(): void;
  /** Takes no new lines until `accept`. */
  refuse(): void;
  accept(): void;
  /** Takes new lines and lets nothing through on them, until `accept`: all of them, or those that ask for a WebSocket. */
  swallow(which: 'all' | 'upgrades'): void;
  /** Ends whatever asks for a WebSocket, until `accept`. */
  cutUpgrades(): void;
  /** Lets nothing through on the open lines, and closes none of them. */
  freeze(): void;
  close(): Promise<void>;
}

/** `hear` gets every byte that the server sends. `from`: address of this machine from which the server sees everybody come. */
export async function openRelay(port: number, hear?: (bytes: Buffer) => void, from = '127.0.0.1'): Promise<Relay> {
  const pairs = new Set<readonly [Socket, Socket]>();
  const swallowed = new Set<Socket>();
  let refusing = false;
  let swallowing: 'all' | 'upgrades' | undefined;
  let isCuttingUpgrades = false;
  const server: Server = createServer((near) => {
    if (refusing) {
      near.destroy();
      return;
    }
    if (swallowing === 'all') {
      swallowed.add(near.on('error', () => undefined));
      return;
    }
    if (swallowing === 'upgrades' || isCuttingUpgrades) near.once('data', (bytes) => takeIn(near, bytes));
    else connect(near);
  });
  const takeIn = (near: Socket, bytes: Buffer) => {
    if (asksForLine(bytes) && isCuttingUpgrades) {
      near.destroy();
      return;
    }
    if (asksForLine(bytes)) {
      swallowed.add(near.on('error', () => undefined));
      return;
    }
    near.pause();
    near.unshift(bytes);
    connect(near);
  };
  const connect = (near: Socket) => {
    const far = createConnection({ port, host: '127.0.0.1', localAddress: from });
    const pair = [near, far] as const;
    pairs.add(pair);
    // a connection that was kept open for another request may ask for a line as well
    near.on('data', (bytes: Buffer) => {
      if (isCuttingUpgrades && asksForLine(bytes)) end();
    });
    near.pipe(far);
    far.pipe(near);
    if (hear !== undefined) far.on('data', hear);
    const end = () => {
      pairs.delete(pair);
      near.destroy();
      far.destroy();
    };
    for (const socket of pair) socket.on('error', end).on('close', end);
  };
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  const own = typeof address === 'object' && address !== null ? address.port : 0;
  const cut = () => {
    for (const pair of Array.from(pairs)) for (const socket of pair) socket.destroy();
    for (const socket of swallowed) socket.destroy();
    swallowed.clear();
  };
  return {
    origin: `http://127.0.0.1:${own}`,
    cut,
    refuse: () => void (refusing = true),
    accept() {
      refusing = false;
      swallowing = undefined;
      isCuttingUpgrades = false;
    },
    cutUpgrades: () => void (isCuttingUpgrades = true),
    swallow: (which) => void (swallowing = which),
    freeze() {
      for (const [near, far] of pairs) {
        near.unpipe(far);
        far.unpipe(near);
        near.pause();
        far.pause();
      }
    },
    async close() {
      cut();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

function asksForLine(bytes: Buffer): boolean {
  return /^upgrade:/im.test(bytes.toString('latin1'));
}
