import type { IncomingMessage } from 'node:http';
import { isIP, isIPv6, type BlockList, type Socket } from 'node:net';

/**
 * Where a request came from: the first address, from this server outwards, that is none of a trusted proxy. What anybody else says of it is not believed.
 * One network of version 6 counts as one address, since whoever has one address there has them all.
 */
export function clientAddress(request: IncomingMessage, trusted: BlockList): string {
  let address = peerAddress(request.socket);
  const told = String(request.headers['x-forwarded-for'] ?? '')
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');
  while (isTrusted(address, trusted)) {
    const next = withoutPort(told.pop() ?? '');
    if (isIP(next) === 0) break;
    address = plainAddress(next);
  }
  return isIPv6(address) ? networkOf(address) : address;
}

/** What is at the other end of a socket. */
export function peerAddress(socket: Socket): string {
  return plainAddress(socket.remoteAddress ?? '');
}

export function isTrusted(address: string, trusted: BlockList): boolean {
  const version = isIP(address);
  return version !== 0 && trusted.check(address, version === 4 ? 'ipv4' : 'ipv6');
}

/** An address of version 4 as such, also where the socket is of version 6. */
function plainAddress(address: string): string {
  return /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(address)?.[1] ?? address;
}

function withoutPort(text: string): string {
  return /^\[([^\]]+)\](:\d+)?$/.exec(text)?.[1] ?? /^(\d+\.\d+\.\d+\.\d+):\d+$/.exec(text)?.[1] ?? text;
}

/** The first half of the eight groups, as each site gets it. */
function networkOf(address: string): string {
  const [before = '', after] = address.split('%')[0]?.split('::') ?? [];
  const head = before.split(':').filter((group) => group !== '');
  const tail = (after ?? '').split(':').filter((group) => group !== '');
  const gap = after === undefined ? 0 : 8 - head.length - tail.length;
  const groups = [...head, ...Array.from({ length: gap }, () => '0'), ...tail];
  return `${groups
    .slice(0, 4)
    .map((group) => Number.parseInt(group, 16).toString(16))
    .join(':')}::/64`;
}
