import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../../client/panels/verdict.ts';
import type { Scorecard } from '../../../engine/table/index.ts';
import { OUTCOMES } from '../../../engine/world/index.ts';
import { PLAIN_TOUCHDOWN } from '../../support/plainTouchdown.ts';

function cardOf(card: Partial<Scorecard>): Scorecard {
  return { outcome: 'stopped', strokeUsed: [0.1, 0.2], propellantLeft: 90, touchdown: PLAIN_TOUCHDOWN, ...card };
}

function headline(outcome: 'tipped downhill' | 'tipped uphill', slope: number, vx: number): string {
  return verdictOf(cardOf({ outcome, touchdown: { ...PLAIN_TOUCHDOWN, slope, vx } }), 1.6).headline;
}

describe('the verdict', () => {
  it('names what there is to spare when it stayed upright inside the limit', () => {
    const card = cardOf({
      outcome: 'upright inside limit',
      limit: { plastic: 1.54 },
      speedMargin: 0.67,
      utilisation: 0.565,
    });
    expect(verdictOf(card, 0).headline).toMatch(/^Stayed upright, with 0\.67.m\/s to spare$/);
    expect(verdictOf(card, 0).why).toMatch(/0\.87.m\/s.*1\.54.m\/s/);
  });

  it('does not call a landing over the limit a success', () => {
    const card = cardOf({
      outcome: 'upright outside limit',
      limit: { plastic: 0.5 },
      speedMargin: -0.37,
      utilisation: 1.7,
    });
    expect(verdictOf(card, 0).headline).toContain('over the tip limit');
  });

  it('says what would have made the difference when it tipped', () => {
    const card = cardOf({ outcome: 'tipped downhill', limit: { plastic: 0.5 }, speedMargin: -0.37, utilisation: 1.7 });
    expect(verdictOf(card, 0).why).toMatch(/At 0\.50.m\/s or less it would have stayed upright/);
  });

  it('says downhill and uphill where the ground falls, and the way of travel where it is level', () => {
    expect(headline('tipped downhill', -0.05, 3)).toBe('Tipped over, downhill');
    expect(headline('tipped uphill', -0.05, 3)).toBe('Tipped over, uphill');
    // level to the eye, though the outcome goes by the last thousandth of a slope
    expect(headline('tipped downhill', 0, 3)).toBe('Tipped over, the way it was moving');
    expect(headline('tipped downhill', -0.003, 3)).toBe('Tipped over, the way it was moving');
    expect(headline('tipped uphill', -0.003, -3)).toBe('Tipped over, the way it was moving');
    expect(headline('tipped uphill', 0, -3)).toBe('Tipped over, against the way it was moving');
    expect(headline('tipped downhill', 0.003, 3)).toBe('Tipped over, against the way it was moving');
    expect(headline('tipped downhill', 0.003, 0.01)).toBe('Tipped over');
  });

  it.each(OUTCOMES)('has words for "%s", with and without a contact', (outcome) => {
    const { touchdown: _, ...untouched } = cardOf({ outcome });
    for (const card of [cardOf({ outcome }), untouched]) {
      const { headline, why } = verdictOf(card, 0);
      expect(headline.length).toBeGreaterThan(5);
      expect(why).toMatch(/^[A-Z].*\.$/);
      expect(`${headline} ${why}`).not.toMatch(/undefined|NaN|Infinity/);
    }
  });
});
