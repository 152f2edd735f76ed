import { describe, expect, it } from 'vitest';
import { codeHash, codeInAddress } from '../../../client/codeAddress.ts';

describe('the address of a table, or of a vote', () => {
  it.each(['table', 'vote'] as const)('has the code of a %s where browsers send it to nobody', (opens) => {
    const address = new URL(`https://kilter.test/${codeHash(opens, 'HKT VRQ')}`);
    expect([address.pathname, address.search]).toEqual(['/', '']);
    expect(codeInAddress(opens, address)).toBe('HKTVRQ');
    // a code opens what it is for
    expect(codeInAddress(opens === 'table' ? 'vote' : 'table', address)).toBeUndefined();
  });

  it.each([
    ['#table=HKTVRQ', 'HKTVRQ'],
    ['?table=HKTVRQ', 'HKTVRQ'],
    ['?table=BBBBBB#table=HKTVRQ', 'HKTVRQ'],
    ['?start=low', undefined],
    ['?workbench#eyJuYW1lIjoiVHJpdmV0In0.', undefined],
  ])('is read from "%s" as %s', (end, code) => {
    expect(codeInAddress('table', new URL(end, 'https://kilter.test/'))).toBe(code);
  });

  it('is read from older links to a vote', () => {
    expect(codeInAddress('vote', new URL('https://kilter.test/?vote=HKTVRQ'))).toBe('HKTVRQ');
  });
});
