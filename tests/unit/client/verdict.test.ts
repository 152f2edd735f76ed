import { describe, expect, it } from 'vitest';
import { decidingContact, isCrash, verdictOf } from '../../../client/panels/verdict.ts';
import { CARD_OUTCOMES, type JudgedContact, type Scorecard } from '../../../engine/table/index.ts';
import type { Arrival } from '../../../engine/world/index.ts';
import { PLAIN_TOUCHDOWN } from '../../support/plainTouchdown.ts';

const LIMIT = { tip: 1.54, tolerance: 0.01, upTo: 4, friction: 0.9, first: 'tip', closedForm: 2 } as const;

function contactOf(
  arrival: Partial<Arrival>,
  { limit, ...more }: Partial<Omit<JudgedContact, 'limit'>> & { readonly limit?: Partial<JudgedContact['limit']> } = {},
): JudgedContact {
  return {
    arrival: { ...PLAIN_TOUCHDOWN, after: 'first', ...arrival },
    band: 'desired',
    callout: 'inside',
    limit: { ...LIMIT, ...limit },
    ...more,
  };
}

const STANDS = { angle: 0, vx: 0, vy: 0, height: 0 };
const LIES = { ...STANDS, angle: 1.6 };
const OUTSIDE = { band: 'outside', callout: 'outside' } as const;

function cardOf(outcome: Scorecard['outcome'], ...contacts: readonly JudgedContact[]): Scorecard {
  return {
    outcome,
    contacts,
    contactCount: contacts.length,
    restTilt: 0,
    strokeUsed: [0.1, 0.2],
    propellantLeft: 90,
    crew: [],
    physics: 1,
  };
}

function headline(outcome: 'tipped downhill' | 'tipped uphill', slope: number, vx: number): string {
  return verdictOf(cardOf(outcome, contactOf({ slope, vx }, OUTSIDE)), LIES).headline;
}

describe('the verdict', () => {
  it('names the speed it had and that from which it would have tipped', () => {
    const { headline: words, why } = verdictOf(cardOf('upright inside limit', contactOf({})), STANDS);
    expect(words).toBe('Landed upright');
    expect(why).toMatch(/0\.87.m\/s.*1\.54.m\/s/);
    const thin = contactOf({ vx: 1.5 }, { band: 'thin', callout: 'close' });
    expect(verdictOf(cardOf('upright inside limit', thin), STANDS).headline).toBe('Landed upright, only just');
  });

  it('says that nothing tips it up to the speed that was looked at, never a limit that was not found', () => {
    const { tip: _, ...none } = LIMIT;
    const contact = { ...contactOf({}), limit: none };
    expect(verdictOf(cardOf('upright inside limit', contact), STANDS).why).toMatch(/not even 4\.0.m\/s tips it over/);
  });

  it('does not call a landing over the limit a success', () => {
    const card = cardOf('upright outside limit', contactOf({}, { ...OUTSIDE, limit: { tip: 0.5 } }));
    expect(verdictOf(card, STANDS).headline).toBe('Stands, but by luck');
    expect(verdictOf(card, STANDS).why).toContain('do not count on it');
  });

  it('says what turned it over, and where it could have stood', () => {
    const tipped = contactOf({}, { ...OUTSIDE, limit: { tip: 0.5 } });
    expect(verdictOf(cardOf('tipped downhill', tipped), LIES).why).toMatch(
      /^Its feet caught while it moved sideways at 0\.87.m\/s; on this slope it tips from 0\.50.m\/s on\.$/,
    );
    const always = contactOf({ angle: 0.3 }, { ...OUTSIDE, limit: { tip: 0 } });
    expect(verdictOf(cardOf('tipped downhill', always), LIES).why).toMatch(/leaning 17°.*however slowly/);
  });

  it('says a hop and a flight anew, and speaks of the contact that decided', () => {
    const first = contactOf({ vx: 0.3 });
    const second = contactOf({ vx: 1.2, descentRate: 1.5, after: 'hop' });
    const card = cardOf('upright inside limit', first, second);
    expect(verdictOf(card, STANDS).headline).toBe('Landed upright, after a bounce');
    expect(verdictOf(card, STANDS).why).toMatch(
      /^It came down at .*and bounced\. At its second contact it moved sideways at only 1\.20.m\/s/,
    );
    const flown = { ...second, arrival: { ...second.arrival, after: 're-light' as const } };
    expect(verdictOf(cardOf('upright inside limit', first, flown), STANDS).headline).toContain(
      'engine lifted it again',
    );
    const fell = cardOf(
      'tipped downhill',
      first,
      { ...second, ...OUTSIDE },
      contactOf({ vx: 0.2, after: 'hop' }, OUTSIDE),
    );
    expect(decidingContact(fell)?.index).toBe(1);
  });

  it('has no word for the rocking of a lander that settles', () => {
    const card = cardOf('upright inside limit', contactOf({}), contactOf({ vx: 0.4, descentRate: 0.2, after: 'hop' }));
    expect(verdictOf(card, STANDS).headline).toBe('Landed upright');
    expect(decidingContact(card)?.index).toBe(0);
  });

  it('speaks of a slow contact that came nearer to its limit than desired', () => {
    const near = contactOf({ vx: 1.1, descentRate: 0.32, after: 'hop' }, { band: 'thin', callout: 'close' });
    const thin = cardOf('upright inside limit', contactOf({ vx: 0.08 }), { ...near, limit: { ...LIMIT, tip: 1.16 } });
    expect(decidingContact(thin)?.index).toBe(1);
    expect(verdictOf(thin, STANDS).headline).toBe('Landed upright, only just, after a bounce');
    expect(verdictOf(thin, STANDS).why).toMatch(/1\.10.m\/s.*1\.16.m\/s/);
    const adequate = contactOf(
      { vx: 0.78, descentRate: 0.32, after: 'hop' },
      { band: 'adequate', limit: { tip: 1.16 } },
    );
    expect(decidingContact(cardOf('upright inside limit', contactOf({ vx: 0.08 }), adequate))?.index).toBe(1);
  });

  it('gives the fall of a crash as its reason, from its hardest contact', () => {
    const hard = contactOf({ descentRate: 17.2 }, { ...OUTSIDE, limit: { tip: 0, gear: 0 } });
    const card = cardOf('gear overload', hard, contactOf({ descentRate: 2, after: 'hop' }));
    expect(verdictOf(card, STANDS).headline).toBe('Crashed: its legs gave way, but it still stands');
    expect(verdictOf(card, LIES).headline).toBe('Crashed: its legs gave way, and it fell over');
    // called while it still flies about, it says nothing of how it will lie
    expect(verdictOf(card, { ...STANDS, angle: 0.3, vx: 1, vy: 4 }).headline).toBe(
      'Crashed: its legs gave way on impact',
    );
    const turned = { ...card, outcome: 'tipped downhill' as const, strokeUsed: [1, 1] };
    expect(verdictOf(turned, LIES).headline).toMatch(/^Crashed/);
    expect(verdictOf(card, STANDS).why).toMatch(/17\.2.m\/s: faster than its legs can take up/);
    const askew = contactOf({ descentRate: 7.6, vx: -7.3, angle: 0.52 }, { ...OUTSIDE, limit: { tip: 0, gear: 0 } });
    expect(verdictOf(cardOf('gear overload', askew), LIES).why).toMatch(
      /7\.6.m\/s down and 7\.3.m\/s sideways, leaning 30°: harder/,
    );
  });

  it('holds nothing against a tip limit where a fall on dry tanks used the legs up', () => {
    const hard = contactOf({ descentRate: 8.8 }, { ...OUTSIDE, limit: { tip: 0.03, gear: 0 } });
    const card = { ...cardOf('propellant exhausted', hard), strokeUsed: [1, 1] };
    expect(isCrash(card)).toBe(true);
    expect(verdictOf(card, STANDS)).toMatchObject({
      headline: 'Crashed: out of propellant, but it still stands',
      why: expect.stringMatching(/^Its tanks ran dry.*8\.8.m\/s, harder than its legs can take\.$/),
    });
    // whole legs: what a tip limit says of this contact still counts
    expect(isCrash({ ...card, strokeUsed: [0.4, 0.9] })).toBe(false);
  });

  it('says how far up a lander left the site that never came down', () => {
    expect(verdictOf(cardOf('off site'), { ...STANDS, height: 6792 }).why).toMatch(/^It never came down: 6792.m up/);
    // still on its way up: then that is what was wrong
    expect(verdictOf(cardOf('off site'), { ...STANDS, vy: 30, height: 6792 }).why).toMatch(/^It climbed.*6792.m up/);
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

  it.each(CARD_OUTCOMES)('has plain words for "%s", with and without a contact', (outcome) => {
    const { limit: _, ...beyond } = contactOf({}, OUTSIDE);
    for (const card of [cardOf(outcome, contactOf({})), cardOf(outcome, beyond), cardOf(outcome)]) {
      const { headline: words, why } = verdictOf(card, STANDS);
      expect(words.length).toBeGreaterThan(5);
      expect(why).toMatch(/^[A-Z].*\.$/);
      expect(`${words} ${why}`).not.toMatch(/undefined|NaN|Infinity|cautious|gained|used/);
    }
  });
});
