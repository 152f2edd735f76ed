import { describe, expect, it } from 'vitest';
import { simulateTouchdown } from '../../../engine/touchdown/index.ts';
import { findLander } from '../../../levels/index.ts';
import { readLanding, type LandingOptions } from '../../../server/cli/landingOptions.ts';
import { readState } from '../../../server/cli/stateOptions.ts';
import { touchdownText } from '../../../server/cli/touchdownText.ts';

const lander = findLander('trivet')!;

function textOf(options: LandingOptions, unsettledReturns = 0): string {
  const landing = readLanding(lander, options);
  const found = simulateTouchdown({ lander, ...landing.conditions, state: readState({}, 0) });
  if (!found.ok) throw new Error('refused');
  return touchdownText(lander, options, landing, { ...found.value, unsettledReturns });
}

describe('a touchdown in words', () => {
  it('says that it cannot be relied on where the force of a leg did not settle', () => {
    expect(textOf({}, 3)).toMatch(
      /^Accuracy: 3 times the force of a leg did not settle .*; do not rely on this result\.$/m,
    );
    expect(textOf({}, 1)).toMatch(/^Accuracy: Once the force/m);
    expect(textOf({})).not.toContain('Accuracy');
  });

  it('gives no share of its stroke to a leg that folds', () => {
    expect(textOf({ unlatched: [2] })).toMatch(/^ +2 +\d\.\d+ +folds /m);
    expect(textOf({ unlatched: [2] })).toMatch(/^ +1 +\d\.\d+ +\d+ /m);
  });
});
