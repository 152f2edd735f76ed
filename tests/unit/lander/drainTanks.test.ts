import { describe, expect, it } from 'vitest';
import { drainTanks, massRange } from '../../../engine/lander/index.ts';
import { findLander } from '../../../levels/index.ts';

const TRIVET = findLander('trivet');
if (TRIVET === undefined) throw new Error('no Trivet');

describe('draining tanks to a mass', () => {
  it('takes a full lander for full whose mass was added up in another order', () => {
    const { full } = massRange(TRIVET);
    // one unit in the last place over it, as an arrival with nothing burned has it
    expect(drainTanks(TRIVET, full * (1 + 2 ** -52))).toBe(TRIVET);
  });

  it('refuses one that is heavier than full by more than rounding', () => {
    expect(() => drainTanks(TRIVET, massRange(TRIVET).full * (1 + 1e-9))).toThrow(/mass lies between/);
  });
});
