import { describe, expect, it } from 'vitest';
import { yawDirections } from '../../../engine/envelope/index.ts';
import { classOf, spreadOrder, touchdownToward, worstDirection } from '../../../engine/envelope/worstDirection.ts';
import { drawnRegion, plainQuestion } from '../../support/plainEnvelope.ts';

describe('the worst of the directions', () => {
  it('[EN5] is looked for in an order that spreads out: each power of two of looks is even', () => {
    expect(spreadOrder(8)).toEqual([0, 4, 2, 6, 1, 5, 3, 7]);
    for (const count of [1, 2, 5, 24, 100]) {
      expect(spreadOrder(count).toSorted((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
    }
  });

  it('[EN5] stops at the first that tips, since nothing is worse, and goes through all otherwise', () => {
    const question = plainQuestion({ directions: yawDirections(24) });
    const speeds = { horizontalSpeed: 1, descentRate: 1 };
    const half = drawnRegion((_v, _w, yaw) => (yaw > 3 ? 'tipped downhill' : 'upright'));
    const verdict = worstDirection(question, speeds, half);
    expect(verdict).toMatchObject({ class: 'tip downhill', direction: 16, runs: 2, leastMargin: -1 });
    const calm = drawnRegion(() => 'upright');
    expect(worstDirection(question, speeds, calm)).toMatchObject({ class: 'inside', runs: 24, leastMargin: 1 });
  });

  it('[EN5] ranks tipping over timing out over crush over load over clearance', () => {
    const answer = { leastMargin: { value: 0, time: 0 } };
    expect(classOf({ ...answer, outcome: 'upright', limitsHit: [] })).toBe('inside');
    expect(classOf({ ...answer, outcome: 'upright', limitsHit: ['clearance'] })).toBe('clearance');
    expect(classOf({ ...answer, outcome: 'overloaded', limitsHit: ['load', 'clearance'] })).toBe('load');
    expect(classOf({ ...answer, outcome: 'overloaded', limitsHit: ['crush exhausted', 'load'] })).toBe(
      'crush exhausted',
    );
    expect(classOf({ ...answer, outcome: 'timed out', limitsHit: ['load'] })).toBe('timed out');
    expect(classOf({ ...answer, outcome: 'tipped uphill', limitsHit: ['tip uphill', 'crush exhausted'] })).toBe(
      'tip uphill',
    );
  });

  it('can be looked at closely: the touchdown of a pair of speeds toward a direction', () => {
    const question = plainQuestion({
      directions: [{ yaw: 0 }, { yaw: 1, travelAzimuth: 2 }],
      conditions: { ...plainQuestion().conditions, state: { pitch: 0.1 } },
    });
    const { state, lander, gravity } = touchdownToward(question, { horizontalSpeed: -1, descentRate: 2 }, 1);
    expect(state).toEqual({ horizontalSpeed: -1, descentRate: 2, yaw: 1, travelAzimuth: 2, pitch: 0.1 });
    expect(lander).toBe(question.lander);
    expect(gravity).toBe(1.62422);
  });
});
