import { createServer, request as ask, type IncomingMessage } from 'node:http';
import { createConnection, type Socket } from 'node:net';

/** A proxy before several servers: each request to the next one, but for those to a path of one server's own (`/p1234/...`), which go there without it. */
export interface Spreader {
  readonly origin: string;
  /** A server at this port of this machine. */
  add(port: number): void;
  remove(port: number): void;
  close(): Promise<void>;
}

/** `under`: a path below which it has them; it takes that away. */
export async function openSpreader(under = ''): Promise<Spreader> {
  const ports: number[] = [];
  const sockets = new Set<Socket>();
  let turn = 0;
  const routeOf = ({ url: asked = '/' }: IncomingMessage) => {
    const url = asked.startsWith(`${under}/`) ? asked.slice(under.length) : '/nothing';
    const own = /^\/p(\d+)(\/.*)$/.exec(url);
    if (own !== null) return { port: Number(own[1]), path: own[2] ?? '/' };
    turn += 1;
    return { port: ports[turn % Math.max(1, ports.length)] ?? 0, path: url };
  };
  const server = createServer((request, response) => {
    const { port, path } = routeOf(request);
    const { method, headers } = request;
    const onward = ask({ host: '127.0.0.1', port, path, method, headers }, (answer) => {
      response.writeHead(answer.statusCode ?? 502, answer.headers);
      answer.pipe(response);
    });
    onward.on('error', () => response.writeHead(502).end());
    request.pipe(onward);
  });
  server.on('upgrade', (request: IncomingMessage, near: Socket) => {
    const { port, path } = routeOf(request);
    const far = createConnection({ port, host: '127.0.0.1' }, () => {
      const headers = request.rawHeaders.map((text, i) => (i % 2 === 0 ? `${text}: ` : `${text}\r\n`)).join('');
      far.write(`GET ${path} HTTP/1.1\r\n${headers}\r\n`);
      near.pipe(far).pipe(near);
    });
    const end = () => {
      near.destroy();
      far.destroy();
    };
    for (const socket of [near, far]) socket.on('error', end).on('close', end);
  });
  server.on('connection', (socket) => {
    sockets.add(socket);
    socket.once('close', () => sockets.delete(socket));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  return {
    origin: `http://127.0.0.1:${typeof address === 'object' && address !== null ? address.port : 0}`,
    add: (port) => void ports.push(port),
    remove: (port) => void ports.splice(ports.indexOf(port), 1),
    async close() {
      for (const socket of sockets) socket.destroy();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
