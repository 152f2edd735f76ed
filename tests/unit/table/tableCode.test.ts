import { describe, expect, it } from 'vitest';
import { TABLE_CODE_ALPHABET, formatTableCode, parseTableCode } from '../../../engine/table/index.ts';

describe('a table code', () => {
  it('[TA4] uses the base-20 letters of RFC 8628 section 6.1', () => {
    // quoted from memory
    expect(TABLE_CODE_ALPHABET).toBe('BCDFGHJKLMNPQRSTVWXZ');
    expect(new Set(TABLE_CODE_ALPHABET).size).toBe(20);
  });

  it('[TA4] is shown as two groups of three', () => {
    expect(formatTableCode('HKTVRQ')).toBe('HKT VRQ');
  });

  it.each(['HKTVRQ', 'hktvrq', 'HKT VRQ', ' hkt-vrq ', 'h k t v r q', 'HKT–VRQ', 'HKT.VRQ', 'hKt\u00A0vRq'])(
    '[TA4] is understood when typed as "%s"',
    (typed) => {
      expect(parseTableCode(typed)).toEqual({ ok: true, value: 'HKTVRQ' });
    },
  );

  it.each(['', 'HKTVR', 'HKTVRQB', 'HKTVRA', 'HKTVR1', 'HKT/VRQ', 'ḦKTVRQ', '__proto__'])(
    '[TA4] is refused when typed as "%s"',
    (typed) => {
      expect(parseTableCode(typed)).toMatchObject({ ok: false, error: { code: 'table/code' } });
    },
  );

  it('[TA4] survives being shown and typed again', () => {
    expect(parseTableCode(formatTableCode('BXZQWC'))).toEqual({ ok: true, value: 'BXZQWC' });
  });
});
