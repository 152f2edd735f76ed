import { describe, expect, it } from 'vitest';
import { judgeWildTouchdowns } from '../../support/wildVerdicts.ts';

describe('verdicts on landers that nobody would build', () => {
  it('[TD11] [TD12] last when they are simulated on, and are the same when asked for tipping only', () => {
    const verdicts = judgeWildTouchdowns(31, 40);
    expect(verdicts).toMatchObject({ tippedThatStand: [], staysThatLie: [], otherwise: [] });
    expect(verdicts.tipped).toBeGreaterThan(10);
    expect(verdicts.stays).toBeGreaterThan(10);
    expect(verdicts.timedOut).toBeLessThan(8);
  });
});
