import type { IncomingMessage } from 'node:http';
import type { NetworkInterfaceInfo } from 'node:os';

type Interfaces = Readonly<
  Record<string, readonly Pick<NetworkInterfaceInfo, 'address' | 'family' | 'internal'>[] | undefined>
>;

/**
 * The addresses under which other machines of the network reach a server of this one, given where it listens. None for one
 * that listens to this machine alone. Version 4 alone: version 6 addresses are not for typing, and often do not last.
 */
export function networkOrigins(
  interfaces: Interfaces,
  listening: { readonly address: string; readonly port: number },
): readonly string[] {
  const { address, port } = listening;
  const outside = Object.values(interfaces)
    .flatMap((list) => list ?? [])
    .filter((one) => one.family === 'IPv4' && !one.internal)
    .map((one) => one.address);
  const reached = address === '0.0.0.0' || address === '::' ? outside : outside.filter((one) => one === address);
  return reached.map((one) => `http://${one}:${port}`);
}

/** Whether a request came from a browser on this very machine: by its socket, and by the name it asked for. */
export function isFromHere(request: IncomingMessage): boolean {
  const from = request.socket.remoteAddress ?? '';
  const asked = request.headers.host ?? '';
  // a proxy on this machine speaks for others
  if (request.headers['x-forwarded-for'] !== undefined || request.headers['forwarded'] !== undefined) return false;
  return /^(::ffff:)?127\.|^::1$/.test(from) && /^(localhost|127\.[\d.]+|\[::1\])(:\d+)?$/.test(asked);
}
