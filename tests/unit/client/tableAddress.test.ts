import { describe, expect, it } from 'vitest';
import { codeInAddress, tableHash } from '../../../client/tableAddress.ts';

describe('the address of a table', () => {
  it('has its code where browsers send it to nobody', () => {
    const address = new URL(`https://kilter.test/${tableHash('HKT VRQ')}`);
    expect([address.pathname, address.search]).toEqual(['/', '']);
    expect(codeInAddress(address)).toBe('HKTVRQ');
  });

  it.each([
    ['#table=HKTVRQ', 'HKTVRQ'],
    ['?table=HKTVRQ', 'HKTVRQ'],
    ['?table=BBBBBB#table=HKTVRQ', 'HKTVRQ'],
    ['?start=low', undefined],
    ['?workbench#eyJuYW1lIjoiVHJpdmV0In0.', undefined],
  ])('is read from "%s" as %s', (end, code) => {
    expect(codeInAddress(new URL(end, 'https://kilter.test/'))).toBe(code);
  });
});
