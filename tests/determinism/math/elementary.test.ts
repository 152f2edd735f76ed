import { describe, expect, it } from 'vitest';
import { sin } from '../../../engine/math/trig.ts';
import { GOLDEN_ELEMENTARY_HASH, hashElementaryFunctions } from '../../support/elementarySample.ts';

describe('elementary functions', () => {
  it('[MA2] give the golden bits', () => {
    expect(hashElementaryFunctions()).toBe(GOLDEN_ELEMENTARY_HASH);
    // read one back: sin 1 = 0.8414709848078965 (0x3feaed548f090cee)
    expect(sin(1)).toBe(0.8414709848078965);
  });

  it('[MA2] keep their bits while the compiler warms up', () => {
    const hashes = Array.from({ length: 5 }, hashElementaryFunctions);
    expect(new Set(hashes).size).toBe(1);
  });
});
