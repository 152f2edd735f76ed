import { describe, expect, it } from 'vitest';
import { deviationOf, parseCampaign, type Campaign } from '../../../engine/dispersion/index.ts';
import { parseLander } from '../../../engine/lander/index.ts';
import {
  enterSensitivity,
  planSensitivities,
  sensitivityDrawing,
  sensitivityLines,
  sensitivityPoint,
  sensitivityRows,
  sensitivitySteps,
  sensitivityTable,
  standardCampaign,
  type Sensitivities,
} from '../../../engine/study/index.ts';
import { formatLander } from '../../../engine/lander/index.ts';
import { studiedCase } from '../../support/studiedCase.ts';

const ASKED = studiedCase({ horizontalSpeed: -0.5 });

const SURE = { kind: 'constant', value: 0.8 };

function campaign(inputs: Readonly<Record<string, unknown>>, runs = 8): Campaign {
  const document = {
    ...standardCampaign(formatLander(ASKED.lander)),
    world: 'earth',
    inputs: { friction: SURE, ...inputs },
    runs,
  };
  const read = parseCampaign(document, parseLander);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

const DRAWN = campaign({
  horizontalSpeed: { kind: 'rayleigh', scale: 0.4 },
  descentRate: { kind: 'normal', mean: 1, deviation: 0.1 },
  friction: { kind: 'uniform', low: 0.5, high: 1 },
  yawDeg: { kind: 'uniform', low: 0, high: 360 },
  pitchDeg: { kind: 'constant', value: 2 },
});

/** Names of the bars, from the top. */
const names = (markup: string) => [...markup.matchAll(/>([a-z ]+) \+- /g)].map((match) => match[1]);

describe('the deviation of an input', () => {
  it('[DI14] is that of its distribution, by formula or to half a percent, and none where it is always the same', () => {
    expect(deviationOf(DRAWN, 'descentRate')).toBe(0.1);
    expect(deviationOf(DRAWN, 'friction')! / (0.5 / Math.sqrt(12))).toBeCloseTo(1, 2);
    expect(deviationOf(DRAWN, 'horizontalSpeed')! / (0.4 * Math.sqrt(2 - Math.PI / 2))).toBeCloseTo(1, 2);
    expect(deviationOf(DRAWN, 'pitchDeg')).toBeUndefined();
    expect(deviationOf(DRAWN, 'slopeDeg')).toBeUndefined();
  });
});

describe('sensitivities', () => {
  it('[SY6] change each input by its deviation where it is drawn, else by a tenth, and leave out what would not change', () => {
    const { inputs, runs } = planSensitivities(ASKED, DRAWN);
    expect(runs).toBe(8);
    const by = new Map(inputs.map((input) => [input.name, input]));
    expect(by.get('descentRate')).toMatchObject({ by: 0.1, rule: 'deviation', present: 1 });
    expect(by.get('mass')).toMatchObject({ by: expect.closeTo(150, 9) as number, rule: 'share', unit: 'kg' });
    // drawn all round; level ground that is not drawn; no tanks to speak of a tenth of; always two degrees, not asked about
    for (const name of ['yawDeg', 'slopeDeg', 'pitchDeg'] as const) expect(by.has(name)).toBe(false);
    expect(planSensitivities(ASKED, DRAWN, ['mass']).inputs.map(({ name }) => name)).toEqual(['mass']);
  });

  it('[SY6] take from the margin what the speed of the arrival grows by, whichever way it goes', () => {
    const still = campaign(
      { horizontalSpeed: { kind: 'constant', value: 0 }, descentRate: { kind: 'constant', value: 0.5 } },
      2,
    );
    const now = sensitivityPoint(ASKED, still);
    const faster = sensitivityPoint(ASKED, still, { name: 'horizontalSpeed', change: -0.1 });
    expect(now.upright).toBe(2);
    expect(now.margin! - faster.margin!).toBeCloseTo(0.1, 12);
  });

  it('[SY6] have no figure where there is no such case: nothing is pulled back into its range', () => {
    expect(sensitivityPoint(ASKED, DRAWN, { name: 'descentRate', change: -50 })).toEqual({
      margin: undefined,
      upright: undefined,
    });
    expect(sensitivityPoint(ASKED, DRAWN, { name: 'mass', change: -1499 })).toEqual({
      margin: undefined,
      upright: undefined,
    });
    // a length that is drawn has no sign
    const slope = campaign({
      slopeDeg: { kind: 'rayleigh', scale: 2, high: 8 },
      descentRate: { kind: 'constant', value: 1 },
      horizontalSpeed: { kind: 'constant', value: 0 },
    });
    expect(sensitivityPoint(ASKED, slope, { name: 'slopeDeg', change: -1.3 })).toEqual({
      margin: undefined,
      upright: undefined,
    });
  });

  it('[SY6] are differences from the case as it is, the largest drawn first, and said in words', () => {
    const plan = planSensitivities(ASKED, DRAWN, ['mass', 'descentRate']);
    const points = [
      { margin: 2, upright: 8 },
      { margin: 2.25, upright: 8 },
      { margin: 1.75, upright: 6 },
      { margin: undefined, upright: 8 },
      { margin: 1, upright: 7 },
    ];
    const steps = sensitivitySteps(plan);
    expect(steps).toHaveLength(points.length);
    const found = points.reduce<Sensitivities>((known, point, i) => enterSensitivity(known, steps[i]!, point), plan);
    expect(
      sensitivityRows(found).map(({ less, more }) => [less.margin, more.margin, less.upright, more.upright]),
    ).toEqual([
      [0.25, -0.25, 0, -25],
      [undefined, -1, 0, -12.5],
    ]);
    expect(sensitivityLines(found)).toEqual([
      'Takes most of the margin: more descent rate, by 0.1 m/s: 1.00 m/s.',
      'Fells most of the arrivals drawn: more mass with propellant, by 150 kg: 25.0 percentage points of 8.',
    ]);
    expect(names(sensitivityDrawing(found, 'margin')!.markup)).toEqual(['descent rate', 'mass with propellant']);
    expect(names(sensitivityDrawing(found, 'upright')!.markup)).toEqual(['mass with propellant', 'descent rate']);
    // nothing is drawn where nothing changes
    expect(sensitivityDrawing(plan, 'margin')).toBeUndefined();
    expect(sensitivityTable(found).rows[1]).toEqual([
      'descentRate',
      'm/s',
      1,
      0.1,
      'deviation',
      undefined,
      -1,
      0,
      -12.5,
      8,
    ]);
  });
});
