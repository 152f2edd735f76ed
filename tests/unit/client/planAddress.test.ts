import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addressOf, choiceInAddress, withoutChoice } from '../../../client/planAddress.ts';
import { formatProblem } from '../../../engine/result.ts';
import { flyableChoice } from '../../support/flyableChoice.ts';
import { choiceOf } from '../../support/planChoice.ts';

function problems(search: string): string {
  const named = choiceInAddress(search);
  return named === undefined || named.ok ? '' : named.error.map(formatProblem).join('; ');
}

describe('a choice in an address', () => {
  it('comes back as it was, beside whatever else stands there', () => {
    fc.assert(
      fc.property(flyableChoice, (choice) => {
        expect(choiceInAddress(addressOf(choice))).toEqual({ ok: true, value: choice });
        const beside = addressOf(choice, '?letters=off&seed=9');
        expect(choiceInAddress(beside)).toEqual({ ok: true, value: choice });
        expect(withoutChoice(beside)).toBe('?letters=off');
      }),
      { seed: 26_1130, numRuns: 100 },
    );
  });

  it('is none in an address that names nothing of it', () => {
    expect(choiceInAddress('')).toBeUndefined();
    expect(choiceInAddress('?table=HKTVRQ')).toBeUndefined();
    expect(withoutChoice('?lander=trivet')).toBe('');
  });

  it('may be named in part: the rest is as in the first landing', () => {
    expect(choiceInAddress('?seed=7')).toEqual({ ok: true, value: choiceOf({ seed: 7 }) });
    expect(choiceInAddress('?lander=bolster')).toEqual({ ok: true, value: choiceOf({ lander: 'bolster' }) });
  });

  it('is refused with the field where a word is wrong', () => {
    expect(problems('?lander=tripet')).toMatch(/lander: expected one of "trivet"/);
    expect(problems('?seed=-3')).toMatch(/seed: expected a whole number from 0/);
    expect(problems('?seed=1e3')).toMatch(/seed/);
    expect(problems('?seed=')).toMatch(/seed/);
    expect(problems('?seed=99999999999999999999')).toMatch(/seed: expected a whole number/);
    expect(problems('?world=Moon')).toMatch(/world: expected one of "moon"/);
  });
});
