import { describe, expect, it } from 'vitest';
import { judge } from '../../../engine/dispersion/index.ts';
import { requirementText } from '../../../server/cli/requirementText.ts';

const WANTED = { fraction: 0.95, confidence: 0.95 };
const textOf = (successes: number, runs: number): string =>
  requirementText({
    ...WANTED,
    outcomes: ['upright'],
    verdict: judge({ successes, runs }, WANTED),
    assumptionHolds: true,
  });

describe('a requirement in words', () => {
  it('names the runs still needed once where none has failed', () => {
    const text = textOf(50, 50);
    expect(text).toContain('undecided.');
    expect(text.match(/\d+ more/g)).toEqual(['9 more']);
    expect(text).toMatch(/9 more runs without a failure would show it met\.$/);
  });

  it('names both numbers where they differ', () => {
    expect(textOf(96, 100)).toMatch(
      /\d+ more runs without a failure would show it met; at the rate so far \d+ more would show it met\.$/,
    );
    expect(textOf(94, 100)).toMatch(/at the rate so far \d+ more would show it not met\.$/);
  });

  it('says of a campaign stopped early what its verdict is worth', () => {
    const met = {
      ...WANTED,
      outcomes: ['upright'] as const,
      verdict: judge({ successes: 59, runs: 59 }, WANTED),
      assumptionHolds: true,
    };
    expect(requirementText(met, true)).toMatch(/fixed beforehand\.$/);
    expect(requirementText(met)).not.toContain('beforehand');
  });

  it('prints no lower bound that reaches what is required while the verdict does not: 298 of 299 for 99 % / 95 %', () => {
    const wanted = { fraction: 0.99, confidence: 0.95 };
    const verdict = judge({ successes: 298, runs: 298 }, wanted);
    const text = requirementText({ ...wanted, outcomes: ['upright'], verdict, assumptionHolds: true });
    // 0.05^(1/298) = 0.98999744...
    expect(text).toContain('at least 0.98999,');
    expect(text).toMatch(/undecided\.\n.*1 more run without a failure would show it met\.$/);
  });

  it('says on a line of its own that draws which are not independent prove no confidence', () => {
    const wanted = { ...WANTED, outcomes: ['upright'] as const };
    for (const [successes, kind] of [
      [59, 'met'],
      [40, 'not met'],
    ] as const) {
      const verdict = judge({ successes, runs: 59 }, WANTED);
      const lines = requirementText({ ...wanted, verdict, assumptionHolds: false }).split('\n');
      expect(lines[0]).toMatch(new RegExp(`: ${kind}\\.$`));
      expect(lines[2]).toMatch(/assume independent draws, which Sobol' and Latin hypercube draws are not/);
      expect(requirementText({ ...wanted, verdict, assumptionHolds: true })).not.toContain('Sobol');
    }
  });

  it('says so where the rate seen decides nothing', () => {
    expect(textOf(95, 100)).toMatch(/at the rate so far it would stay undecided\.$/);
  });

  it('speaks of no further runs once it is decided', () => {
    expect(textOf(59, 59)).toMatch(/: met\.\n59 of 59: /);
    expect(textOf(80, 100)).toMatch(/: not met\.\n/);
    for (const text of [textOf(59, 59), textOf(80, 100)]) expect(text).not.toContain('more');
  });
});
