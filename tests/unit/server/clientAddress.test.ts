import type { IncomingMessage } from 'node:http';
import { describe, expect, it } from 'vitest';
import { parseConfig } from '../../../server/config.ts';
import { clientAddress } from '../../../server/http/clientAddress.ts';

/** Where a request came from by a server that trusts these proxies. */
function addressOf(remoteAddress: string, told: string | undefined, proxies: string): string {
  const config = parseConfig({ KILTER_TRUSTED_PROXIES: proxies });
  if (!config.ok) throw new Error(config.error.join('; '));
  const request = { socket: { remoteAddress }, headers: { 'x-forwarded-for': told } };
  return clientAddress(request as unknown as IncomingMessage, config.value.trustedProxies);
}

describe('the address of a client', () => {
  it.each([
    ['is that of its socket', '203.0.113.9', undefined, '', '203.0.113.9'],
    ['also where the socket is of version 6', '::ffff:203.0.113.9', undefined, '', '203.0.113.9'],
    ['whatever a stranger says', '203.0.113.9', '198.51.100.1', '', '203.0.113.9'],
    ['is what a trusted proxy says', '203.0.113.9', '198.51.100.1', '203.0.113.9', '198.51.100.1'],
    [
      'the last that is no proxy, of a chain',
      '203.0.113.9',
      '192.0.2.1, 198.51.100.1, 203.0.113.8',
      '203.0.113.0/24',
      '198.51.100.1',
    ],
    ['the proxy, where it says nothing', '203.0.113.9', undefined, '203.0.113.9', '203.0.113.9'],
    ['the proxy, where it says nonsense', '203.0.113.9', 'unknown', '203.0.113.9', '203.0.113.9'],
    ['without the port', '203.0.113.9', '198.51.100.1:4711', '203.0.113.9', '198.51.100.1'],
    ['of version 6 its network', '203.0.113.9', '[2001:db8:1:2:3:4:5:6]:4711', '203.0.113.9', '2001:db8:1:2::/64'],
    ['of a short form the same', '2001:db8::1', undefined, '', '2001:db8:0:0::/64'],
  ])('%s', (_what, socket, told, proxies, address) => {
    expect(addressOf(socket, told, proxies)).toBe(address);
  });

  it('is refused at start where a proxy is no address', () => {
    for (const wrong of ['proxy.example', '203.0.113.0/33', '203.0.113.0/', '1.2.3.4/8/8', '203.0.113.0/x'])
      expect(parseConfig({ KILTER_TRUSTED_PROXIES: wrong })).toEqual({
        ok: false,
        error: [`KILTER_TRUSTED_PROXIES: expected addresses or networks such as 203.0.113.0/24, got "${wrong}"`],
      });
  });
});
