import { describe, expect, it } from 'vitest';
import { networkOrigins } from '../../../server/http/index.ts';

/** Addresses set aside for documents. */
const INTERFACES = {
  lo: [{ address: '127.0.0.1', family: 'IPv4', internal: true }],
  eth0: [
    { address: '2001:db8::7', family: 'IPv6', internal: false },
    { address: '192.0.2.7', family: 'IPv4', internal: false },
  ],
  wlan0: [{ address: '198.51.100.3', family: 'IPv4', internal: false }],
} as const;

describe('where other machines find the server', () => {
  it('is every outside address of this one when it listens to all', () => {
    for (const address of ['0.0.0.0', '::'])
      expect(networkOrigins(INTERFACES, { address, port: 2567 })).toEqual([
        'http://192.0.2.7:2567',
        'http://198.51.100.3:2567',
      ]);
  });

  it('is the one address to which it listens', () => {
    expect(networkOrigins(INTERFACES, { address: '192.0.2.7', port: 80 })).toEqual(['http://192.0.2.7:80']);
  });

  it('is nowhere when it listens to this machine alone', () => {
    expect(networkOrigins(INTERFACES, { address: '127.0.0.1', port: 80 })).toEqual([]);
  });
});
