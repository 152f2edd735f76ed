import { describe, expect, it } from 'vitest';
import { formatLander, parseLander, type Lander } from '../../../engine/lander/index.ts';
import { LANDERS } from '../../../levels/index.ts';
import { LANDER_FILES, spoiled, type Step } from '../../support/landerFile.ts';

const { trivet } = LANDER_FILES;

function parsed(json: unknown): Lander {
  const result = parseLander(json);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

/** Problems of Trivet with one value replaced. */
function problemsOf(path: readonly Step[], value: unknown) {
  const result = parseLander(spoiled(trivet, path, value));
  return result.ok ? [] : result.error;
}

describe('a lander file', () => {
  it('[LA4] places round legs at equal angles, hips above their spokes, to the last bit as its mirror image', () => {
    const { legs } = parsed(trivet);
    const side = 2.14 * Math.SQRT1_2;
    expect(legs.map(({ footpad }) => footpad)).toEqual([
      [side, side, 0],
      [-side, side, 0],
      [-side, -side, 0],
      [side, -side, 0],
    ]);
    expect(legs[0]?.hip).toEqual([1.05 * Math.SQRT1_2, 1.05 * Math.SQRT1_2, 1.45]);
  });

  it('[LA4] places legs at any first azimuth', () => {
    for (const first of [-360, -95, -1, 0, 12.5, 44.9, 45, 45.1, 90, 133, 270, 359, 360]) {
      const { legs } = parsed(spoiled(trivet, ['legs', 'firstAzimuthDeg'], first));
      legs.forEach(({ footpad }, index) => {
        const azimuth = ((first + 90 * index) * Math.PI) / 180;
        expect(footpad[0]).toBeCloseTo(2.14 * Math.cos(azimuth), 12);
        expect(footpad[1]).toBeCloseTo(2.14 * Math.sin(azimuth), 12);
      });
    }
  });

  it('[LA4] places listed legs where it says', () => {
    const { legs } = parsed(LANDER_FILES.bolster);
    expect(legs).toHaveLength(6);
    expect(legs[3]).toMatchObject({ footpad: [-1.9, 3.6, 0], hip: [-1.2, 3.6, 1.7] });
  });

  it('[LA5] is deep-frozen once parsed, and shares nothing with the document', () => {
    const json = structuredClone(trivet) as { hull: number[][] };
    const lander = parsed(json);
    const visit = (value: unknown): void => {
      if (typeof value !== 'object' || value === null) return;
      expect(Object.isFrozen(value)).toBe(true);
      Object.values(value).forEach(visit);
    };
    visit(lander);
    json.hull[0] = [9, 9, 9];
    expect(lander.hull[0]).toEqual([0.38, 0, 0.55]);
  });

  it.each(LANDERS.map((lander) => [lander.id, lander] as const))(
    '[LA5] of %s is read back from its format to the last bit',
    (_, lander) => {
      const again = parsed(JSON.parse(JSON.stringify(formatLander(lander))));
      expect(again).toEqual(lander);
      // toEqual tells 0 from -0
      expect(formatLander(again)).toEqual(formatLander(lander));
    },
  );

  it('[LA5] reads -0 as 0', () => {
    const lander = parsed(spoiled(trivet, ['parts', 0, 'center', 0], -0));
    expect(Object.is(lander.parts[0]?.center[0], 0)).toBe(true);
  });

  it('[LA4] keeps the lateral strut out when there is none', () => {
    const lander = parsed(spoiled(trivet, ['legs', 'secondary'], undefined));
    expect(lander.legs.every((leg) => !('secondary' in leg))).toBe(true);
    expect(parsed(formatLander(lander))).toEqual(lander);
  });
});

describe('a problem in a lander file', () => {
  it('[LA6] names path, expectation and what it got', () => {
    expect(problemsOf(['tanks', 1, 'fill'], 27)).toEqual([
      { code: 'lander/out-of-range', path: 'tanks[1].fill', expected: 'a number from 0 to 1', came: '27' },
    ]);
    expect(problemsOf(['parts', 0, 'mass'], '410 kg')).toEqual([
      {
        code: 'lander/wrong-type',
        path: 'parts[0].mass',
        expected: expect.stringContaining('[kg]'),
        came: 'text "410 kg"',
      },
    ]);
  });

  it('[LA6] is listed with all others of the same pass', () => {
    let json = spoiled(trivet, ['id'], 'Trivet');
    json = spoiled(json, ['engine', 'lag'], undefined);
    json = spoiled(json, ['legs', 'count'], 4.5);
    json = spoiled(json, ['parts', 2, 'shape', 'kind'], 'sphere');
    const result = parseLander(json);
    const found = result.ok ? [] : result.error.map(({ code, path }) => [code, path]);
    expect(found).toEqual([
      ['lander/bad-text', 'id'],
      ['lander/not-a-choice', 'parts[2].shape.kind'],
      ['lander/out-of-range', 'legs.count'],
      ['lander/missing-field', 'engine.lag'],
    ]);
  });

  it('[LA6] suggests the nearest legal name for an unknown field, or lists the legal ones', () => {
    const [typo, missing] = problemsOf(['engine'], {
      maxTrust: 9600,
      minThrust: 960,
      specificImpulse: 312,
      lag: 0.12,
      attitudeTorque: 420,
    });
    expect(typo).toMatchObject({ code: 'lander/unknown-field', path: 'engine.maxTrust' });
    expect(typo?.expected).toContain('did you mean maxThrust?');
    expect(missing).toMatchObject({ code: 'lander/missing-field', path: 'engine.maxThrust' });
    const [stranger] = problemsOf(['engine', 'color'], 'red');
    expect(stranger?.expected).toContain('one of maxThrust, minThrust');
    expect(problemsOf(['parts', 0, 'kind'], 'dri')[0]?.expected).toContain('did you mean "dry"?');
  });

  it('[LA6] of another format is the only one told', () => {
    expect(problemsOf(['format'], 'kilter-lander/2')).toEqual([
      { code: 'lander/unknown-format', path: 'format', expected: '"kilter-lander/1"', came: 'text "kilter-lander/2"' },
    ]);
  });

  it('[LA6] says when legs are described both ways, or in neither', () => {
    expect(problemsOf(['legs', 'footpads'], [[1, 1]])[0]?.code).toBe('lander/mixed-legs');
    expect(problemsOf(['legs', 'radius'], undefined)).toMatchObject([
      { code: 'lander/missing-field', path: 'legs.radius' },
    ]);
  });

  it('[LA6] says when hips and footpads do not pair', () => {
    const json = spoiled(LANDER_FILES.bolster, ['legs', 'hips', 5], undefined) as { legs: { hips: unknown[] } };
    json.legs.hips.length = 5;
    const result = parseLander(json);
    expect(result).toMatchObject({ ok: false, error: [{ code: 'lander/wrong-count', path: 'legs.hips' }] });
  });
});
