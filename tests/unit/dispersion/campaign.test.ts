import { describe, expect, it } from 'vitest';
import { campaignAxes, campaignFactors, createDrawer, touchdownOf } from '../../../engine/dispersion/campaign.ts';
import { plainCampaign } from '../../support/plainCampaign.ts';

describe('a campaign', () => {
  it('[DI8] draws a case from its index alone, whatever was drawn before', () => {
    const campaign = plainCampaign({ method: 'latin' });
    const straight = createDrawer(campaign);
    const inOrder = [0, 1, 2, 3, 4].map((i) => straight(i));
    expect(createDrawer(campaign)(3)).toEqual(inOrder[3]);
    expect([4, 3, 2, 1, 0].map((i) => createDrawer(campaign)(i)).toReversed()).toEqual(inOrder);
  });

  it('[DI8] gives the same cases however the inputs are sorted in its document', () => {
    const campaign = plainCampaign();
    const sorted = Object.fromEntries(Object.entries(campaign.inputs).toReversed());
    const shuffled = plainCampaign({ inputs: sorted });
    expect(Object.keys(shuffled.inputs)).not.toEqual(Object.keys(campaign.inputs));
    for (const i of [0, 17, 1999]) expect(createDrawer(shuffled)(i)).toEqual(createDrawer(campaign)(i));
  });

  it('spends a coordinate on what varies and none on what does not', () => {
    const kinds = campaignAxes(plainCampaign()).map((axis) => (axis.kind === 'input' ? axis.input : axis.kind));
    expect(kinds).toEqual(['horizontalSpeed', 'descentRate', 'slopeDeg']);
    const sound = { weight: 1, value: [] } as const;
    const lost = { weight: 1, value: [{ leg: 0, kind: 'missing' }] } as const;
    const counts = [[lost], [sound, lost]].map((gear) => campaignAxes(plainCampaign({ gear })).length);
    expect(counts).toEqual([3, 4]);
  });

  it.each([-0.7, 0, 0.5])('draws a pair with the means, deviations and correlation it is given: %d', (correlation) => {
    const pair = {
      inputs: ['downhillSpeed', 'crossSpeed'],
      means: [0.2, -0.1],
      deviations: [0.3, 0.5],
      correlation,
    } as const;
    const draw = createDrawer(
      plainCampaign({ pairs: [pair], inputs: { descentRate: { kind: 'constant', value: 1 } } }),
    );
    const drawn = Array.from({ length: 2000 }, (_, i) => draw(i).values);
    const scaled = pair.inputs.map((input, n) => drawn.map((v) => (v[input]! - pair.means[n]!) / pair.deviations[n]!));
    const mean = (of: (i: number) => number): number => drawn.reduce((sum, _, i) => sum + of(i), 0) / drawn.length;
    const [down, cross] = [scaled[0]!, scaled[1]!];
    // five standard errors of 1 / sqrt(2000), of the squares sqrt(2) times that
    for (const one of [down, cross]) {
      expect(Math.abs(mean((i) => one[i]!))).toBeLessThan(0.112);
      expect(Math.abs(mean((i) => one[i]! ** 2) - 1)).toBeLessThan(0.159);
    }
    expect(Math.abs(mean((i) => down[i]! * cross[i]!) - correlation)).toBeLessThan(0.159);
  });

  it('counts a correlated pair as one factor of two coordinates, and the gear as one', () => {
    const pair = {
      inputs: ['downhillSpeed', 'crossSpeed'],
      means: [0, 0],
      deviations: [1, 1],
      correlation: 0.5,
    } as const;
    const gear = [
      { value: [], weight: 9 },
      { value: [{ leg: 1, kind: 'missing' }], weight: 1 },
    ] as const;
    const campaign = plainCampaign({
      inputs: { descentRate: { kind: 'uniform', low: 1, high: 2 } },
      pairs: [pair],
      gear,
    });
    expect(campaignFactors(campaign)).toEqual({
      names: ['downhillSpeed + crossSpeed', 'descentRate', 'gear'],
      factorOf: [0, 0, 1, 2],
    });
  });

  it('turns drawn inputs into a touchdown in SI, with components of speed as speed and azimuth', () => {
    const campaign = plainCampaign({ soil: { kind: 'bearing', stiffness: 1e5, strength: 2e4 }, padLeg: 2 });
    const { ground, state, legs } = touchdownOf(campaign, {
      values: {
        downhillSpeed: 0.6,
        crossSpeed: -0.8,
        descentRate: 1.5,
        slopeDeg: 180 / 18,
        friction: 0.7,
        yawDeg: 90,
        pitchRateDegPerS: 18,
        padHeight: -0.2,
        bearingStrength: 3e4,
      },
      gear: [],
    });
    expect(state.horizontalSpeed).toBeCloseTo(1, 14);
    expect(state.travelAzimuth).toBeCloseTo(Math.atan2(-0.8, 0.6), 14);
    expect(state.yaw).toBeCloseTo(Math.PI / 2, 14);
    expect(state.rates?.[1]).toBeCloseTo(Math.PI / 10, 14);
    expect(ground.shape).toEqual({ kind: 'plane', slope: (10 * Math.PI) / 180 });
    expect(ground.soil).toEqual({ kind: 'bearing', stiffness: 1e5, strength: 3e4 });
    expect(ground.underPad).toEqual([{ leg: 2, height: -0.2 }]);
    expect(legs).toEqual([]);
  });

  it('applies a common crush factor to every leg that crushes, on top of a leg that is soft anyway', () => {
    const { legs } = touchdownOf(plainCampaign(), {
      values: { crushForceFactor: 0.5, descentRate: 1, friction: 1 },
      gear: [
        { leg: 0, kind: 'missing' },
        { leg: 2, kind: 'soft', factor: 0.6 },
      ],
    });
    expect(legs).toEqual([
      { leg: 0, kind: 'missing' },
      { leg: 1, kind: 'soft', factor: 0.5 },
      { leg: 2, kind: 'soft', factor: 0.3 },
      { leg: 3, kind: 'soft', factor: 0.5 },
    ]);
  });

  it('has no case outside its runs', () => {
    const draw = createDrawer(plainCampaign());
    for (const index of [-1, 2000, 1.5, Number.NaN]) expect(() => draw(index)).toThrow(/no case/);
  });
});
