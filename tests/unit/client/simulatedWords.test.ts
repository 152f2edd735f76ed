import { describe, expect, it } from 'vitest';
import { simulatedWords } from '../../../client/panels/simulatedWords.ts';
import { TOUCHDOWN_OUTCOMES, type TouchdownOutcome } from '../../../engine/touchdown/index.ts';
import { OUTCOMES, type Outcome } from '../../../engine/world/index.ts';
import { plane, shippedLander, touchDown } from '../../support/touchDown.ts';

const RESULT = touchDown({
  lander: shippedLander('trivet'),
  gravity: 1.62422,
  ground: plane(0.8),
  state: { horizontalSpeed: 0.3, descentRate: 1 },
});

function words(simulated: TouchdownOutcome, played: Outcome) {
  return simulatedWords({ ...RESULT, outcome: simulated }, { outcome: played, strokeUsed: [], propellantLeft: 0 });
}

describe('the simulation beside the play', () => {
  it('gives the least margin where both stand', () => {
    expect(words('upright', 'upright inside limit').ending).toBe('stays upright');
    expect(words('upright', 'upright inside limit').note).toMatch(/^at least 1\.\d.m inside its feet$/);
  });

  it('says so where only one of them falls', () => {
    expect(words('tipped downhill', 'upright outside limit')).toEqual({
      ending: 'tips over',
      note: 'here it stood, on legs merged into two',
    });
    expect(words('upright', 'tipped uphill').note).toBe('here it fell, on legs merged into two');
    expect(words('tipped uphill', 'tipped uphill').note).toBe('as it did here');
  });

  it('has words for every pair of endings', () => {
    for (const simulated of TOUCHDOWN_OUTCOMES) {
      for (const played of OUTCOMES) {
        const { ending, note = '' } = words(simulated, played);
        expect(ending.length).toBeGreaterThan(5);
        expect(`${ending} ${note}`).not.toMatch(/undefined|NaN|Infinity/);
      }
    }
  });
});
