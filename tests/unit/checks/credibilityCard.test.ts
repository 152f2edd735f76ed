import { describe, expect, it } from 'vitest';
import { namesOf } from '../../../engine/condition/index.ts';
import {
  achievedError,
  CHECKED_RANGES,
  credibilityCard,
  formatCard,
  landerShape,
  outsideCheckedRange,
  RANGED_MODELS,
  rangedShape,
  runChecks,
} from '../../../engine/checks/index.ts';
import { CAUTION } from '../../../engine/constants.ts';
import { PHYSICS_REVISION } from '../../../engine/world/index.ts';
import { ringLander } from '../../support/ringLander.ts';
import { readSource } from '../../support/sources.ts';

const checks = runChecks();
const card = credibilityCard(checks);

describe('the credibility card', () => {
  it('[CK6] in engine/CREDIBILITY.md is the one that the shipped engine makes; `node server/cli/writeCredibility.ts` writes it anew', () => {
    expect(readSource('engine/CREDIBILITY.md')).toBe(`${formatCard(card)}\n\n${CAUTION}\n`);
  });

  it('[CK6] lists every check with its source, every factor with a reason, and what is simplified', () => {
    const words = formatCard(card);
    for (const { name, source } of checks) {
      expect(words).toContain(`| ${name} |`);
      expect(words).toContain(source);
    }
    expect(card.factors).toHaveLength(8);
    for (const { level, why } of card.factors) {
      expect([0, 1, 2, 3, 4]).toContain(level);
      expect(why.length).toBeGreaterThan(20);
    }
    expect(card.simplifications.length).toBeGreaterThan(4);
  });

  it('[CK6] shows the error of a value, and of a bound the value computed', () => {
    const bound = checks.find(({ relation }) => relation === 'atMost')!;
    const value = checks.find(({ relation }) => relation === 'equals')!;
    expect(achievedError({ ...value, relativeError: 0.000123 })).toBe('1.2e-4');
    expect(achievedError({ ...bound, computed: 0.0351234 })).toBe('computed 0.03512');
    expect(formatCard(card)).toContain(`| ${bound.name} | at most ${bound.printed} | ${achievedError(bound)} |`);
  });

  it('[CK9] says what a kind of check means, how far the models may be off, and calls no limit cautious', () => {
    const words = formatCard(card);
    expect(words).toContain('which verifies the code and does not validate the model');
    expect(words).not.toMatch(/cautious/i);
    for (const { words: uncertainty } of card.uncertainties) expect(words).toContain(uncertainty);
  });

  it('[CK8] lists what was never checked', () => {
    expect(formatCard(card)).toContain(
      'Not checked from outside in the touchdown simulation: missing legs; soft legs; ',
    );
  });

  it('[CK6] claims no approval', () => {
    expect(formatCard(card)).not.toMatch(/validated|\bqualified (?!authority)|\bsafe\b/i);
  });

  it('[CK6] changes its version with any result', () => {
    const [first, ...rest] = checks;
    const other = credibilityCard([{ ...first!, computed: first!.computed * (1 + 1e-15) }, ...rest]);
    const [revision, hash] = card.version.split('-');
    expect(revision).toBe(String(PHYSICS_REVISION));
    expect(hash).toMatch(/^[0-9a-f]{16}$/);
    expect(other.version).not.toBe(card.version);
    expect(credibilityCard(checks).version).toBe(card.version);
  });
});

describe('the checked range', () => {
  it.each(RANGED_MODELS)('[CK7] of %s says nothing at its own ends, and names each input just beyond them', (model) => {
    expect(CHECKED_RANGES[model].length).toBeGreaterThan(0);
    for (const { fields, words, least, most } of CHECKED_RANGES[model]) {
      expect(least).toBeLessThan(most);
      for (const name of fields.flatMap(namesOf)) {
        expect(outsideCheckedRange(model, { [name]: [least, most] })).toEqual([]);
        for (const beyond of [least - 0.01, most + 0.01]) {
          const [line = '', ...rest] = outsideCheckedRange(model, { [name]: beyond });
          expect(line.startsWith(`${words} `)).toBe(true);
          expect(rest).toEqual([]);
        }
      }
    }
  });

  it('[CK7] takes the shape of a body from its stance, height and inertia', () => {
    const body = { mass: 1000, halfStance: 1.5, centerHeight: 2, inertia: 1500 };
    expect(rangedShape(body)).toEqual({ stanceOverHeight: 0.75, inertiaShare: 0.24 });
  });

  it('[CK7] takes the shape of a lander over its narrowest edge, and has none for one that does not stand', () => {
    const lander = ringLander({
      mass: 1000,
      inertia: [1500, 1500, 1500],
      centerHeight: 2,
      legCount: 4,
      radius: 1.5 * Math.SQRT2,
      crushForce: 10_000,
    });
    const { stanceOverHeight, inertiaShare } = landerShape(lander) ?? { stanceOverHeight: NaN, inertiaShare: NaN };
    expect(stanceOverHeight).toBeCloseTo(0.75, 12);
    expect(inertiaShare).toBeCloseTo(0.24, 12);
    expect(landerShape(lander, [0, 1, 2])).toBeUndefined();
  });

  it('[CK7] has nothing to say inside, and names each input outside with its range', () => {
    expect(outsideCheckedRange('trip limit', { gravity: 1.62422, slopeDeg: 5, descentRate: null })).toEqual([]);
    expect(outsideCheckedRange('trip limit', { gravity: 24.8, slopeDeg: -20 })).toEqual([
      'gravity 24.8 m/s^2, checked from 1.62 to 9.81',
      'slope -20 deg, checked from -12 to 12',
    ]);
  });

  it('[CK7] looks at what a distribution draws', () => {
    const slopeDeg = { kind: 'rayleigh', scale: 3, high: 15 };
    const descentRate = { kind: 'normal', mean: 2, deviation: 0.5 };
    const friction = { kind: 'uniform', low: 0.5, high: 1 };
    expect(outsideCheckedRange('touchdown simulation', { slopeDeg, descentRate, friction })).toEqual([
      'descent rate 3.5 m/s, checked from 0 to 3.05',
    ]);
  });

  it('[CK7] looks at both ends of a stretch', () => {
    const inputs = { horizontalSpeed: { from: -1, to: 6, count: 3 }, descentRate: { from: 0, to: 3, count: 3 } };
    expect(outsideCheckedRange('touchdown simulation', inputs)).toEqual([
      'horizontal speed 6 m/s, checked from -4 to 4',
    ]);
  });
});
