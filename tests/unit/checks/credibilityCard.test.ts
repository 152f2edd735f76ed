import { describe, expect, it } from 'vitest';
import { CAUTION, credibilityCard, formatCard, outsideCheckedRange, runChecks } from '../../../engine/index.ts';
import { readSource } from '../../support/sources.ts';

const checks = runChecks();
const card = credibilityCard(checks);

describe('the credibility card', () => {
  it('[CK6] in engine/CREDIBILITY.md is the one that the shipped engine makes; `npx kilter check --card` writes it anew', () => {
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

  it('[CK6] claims no approval', () => {
    expect(formatCard(card)).not.toMatch(/validated|\bqualified (?!authority)|\bsafe\b/i);
  });

  it('[CK6] changes its version with any result', () => {
    const [first, ...rest] = checks;
    const other = credibilityCard([{ ...first!, computed: first!.computed * (1 + 1e-15) }, ...rest]);
    expect(card.version).toMatch(/^[0-9a-f]{16}$/);
    expect(other.version).not.toBe(card.version);
    expect(credibilityCard(checks).version).toBe(card.version);
  });
});

describe('the checked range', () => {
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
