import { describe, expect, it } from 'vitest';
import { campaignStackUp } from '../../../engine/dispersion/campaignStackUp.ts';
import { simulatedStackUp } from '../../../engine/dispersion/simulatedStackUp.ts';
import { hasTipped, prepareTouchdown, runTouchdown } from '../../../engine/touchdown/index.ts';
import { findLander } from '../../../levels/index.ts';
import { plainCampaign } from '../../support/plainCampaign.ts';

const steeple = findLander('steeple')!;
const SPEED = 1;
const slopes = { kind: 'uniform', low: 6, high: 10 } as const;
const campaign = plainCampaign({
  lander: steeple,
  inputs: {
    horizontalSpeed: { kind: 'constant', value: SPEED },
    descentRate: { kind: 'constant', value: 1.5 },
    slopeDeg: slopes,
    friction: { kind: 'constant', value: 1 },
  },
});
const DEGREE = Math.PI / 180;

function tipsAt(slopeDeg: number, yawDeg: number): boolean {
  const prepared = prepareTouchdown(steeple);
  if (!prepared.ok) throw new Error('no simulator');
  return hasTipped(
    runTouchdown(prepared.value, {
      gravity: campaign.gravity,
      ground: { shape: { kind: 'plane', slope: slopeDeg * DEGREE }, friction: 1 },
      state: { horizontalSpeed: SPEED, descentRate: 1.5, yaw: yawDeg * DEGREE },
    }),
  );
}

describe('the stack-up of a campaign by simulation', () => {
  it(
    '[DI11] is not milder than a point inside the box that tips at every yaw, as the closed form is',
    { timeout: 120_000 },
    () => {
      const yaws = Array.from({ length: 12 }, (_, i) => 30 * i);
      // the middle of the box, and the lander falls however it is turned
      expect(yaws.every((yaw) => tipsAt(8, yaw))).toBe(true);
      expect(campaignStackUp(campaign)?.atWorstCorner).toBeGreaterThan(0);
      const stack = simulatedStackUp(campaign)!;
      expect(stack.worstMargin).toBeLessThan(0);
      expect(stack.azimuths).toBe(24);
      expect(stack.contributions.map(({ input }) => input)).toEqual(['slopeDeg']);
      expect(stack.contributions[0]?.end).toBeCloseTo(6 + 4 * 0.99865, 12);
      // one input alone: its worse end is the corner, and the root sum square has one loss
      expect(stack.worstLimit).toBeCloseTo(
        (stack.nominalLimit ?? Number.NaN) - (stack.contributions[0]?.loss ?? Number.NaN),
        12,
      );
      expect(stack.rootSumSquare).toBeCloseTo(stack.worstMargin ?? Number.NaN, 12);
    },
  );
});
