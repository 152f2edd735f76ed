import { describe, expect, it } from 'vitest';
import { runCheck } from '../../../engine/checks/outsideCheck.ts';
import { CHECK_KINDS, OUTSIDE_CHECKS, runChecks, type CheckResult } from '../../../engine/checks/index.ts';
import { WORLDS } from '../../../engine/worlds.ts';

const results = runChecks();

/** The shipped worlds with the gravity of one of them, or of all, off by a share. */
function worldsOff(share: number, only?: string): typeof WORLDS {
  return WORLDS.map((world) =>
    only === undefined || world.id === only ? { ...world, gravity: world.gravity * (1 + share) } : world,
  );
}

function byName(list: readonly CheckResult[]): ReadonlyMap<string, CheckResult> {
  return new Map(list.map((result) => [result.name, result]));
}

describe('outside checks', () => {
  it.each(results)('[CK1] $name: expected $expected, $source', (result) => {
    expect(result.pass, `computed ${result.computed}, error ${result.relativeError}`).toBe(true);
  });

  it('[CK2] are as many as the table of the design asks for, each under a name of its own', () => {
    expect(results.length).toBeGreaterThanOrEqual(57);
    expect(new Set(results.map(({ name }) => name)).size).toBe(results.length);
    expect(results.length).toBe(OUTSIDE_CHECKS.length);
  });

  it('[CK2] state finite numbers, a source, a unit and a reason for the tolerance', () => {
    for (const { expected, computed, relativeError, tolerance, ...words } of results) {
      expect([expected, computed, relativeError, tolerance].every(Number.isFinite)).toBe(true);
      expect(expected).not.toBe(0);
      expect(words.source.length).toBeGreaterThan(10);
      expect(words.unit).not.toBe('');
      expect(words.toleranceReason.length).toBeGreaterThan(10);
      expect(CHECK_KINDS).toContain(words.kind);
    }
  });

  it('[CK3] never claim to have seen a publication that was quoted from memory', () => {
    const published = results.filter(({ kind }) => kind === 'published' || kind === 'measurement');
    expect(published.length).toBeGreaterThan(5);
    expect(published.filter(({ seen }) => seen)).toEqual([]);
    expect(results.filter(({ kind, seen }) => kind === 'derived' && !seen)).toEqual([]);
  });

  it('[CK2] take tolerances from the printed digits: none passes an error of one part in a thousand', () => {
    const loose = results.filter(({ relation, tolerance }) => relation === 'equals' && tolerance > 1e-3);
    expect(loose).toEqual([]);
  });
});

describe('outside checks catch a wrong engine', () => {
  it.each([
    { share: 0.01, only: 'moon', least: 8 },
    { share: -0.01, only: 'moon', least: 8 },
    { share: 0.01, only: 'earth', least: 10 },
    { share: 0.01, only: 'mars', least: 1 },
  ])('[CK4] gravity of $only off by $share fails every check whose value moves with it', ({ share, only, least }) => {
    const before = byName(results);
    const moved = runChecks(worldsOff(share, only)).filter(
      ({ name, computed, relation }) => relation === 'equals' && computed !== before.get(name)?.computed,
    );
    expect(moved.length).toBeGreaterThanOrEqual(least);
    expect(moved.filter(({ pass }) => pass)).toEqual([]);
  });

  it('[CK4] leaves ratios of two worlds and static tilt alone when all gravity is off by the same share', () => {
    const names = runChecks(worldsOff(0.01))
      .filter(({ pass }) => pass)
      .map(({ name }) => name);
    expect(names).toContain('gravity scaling of speed, Earth over Moon');
    expect(names).toContain('gravity scaling of static tilt, Earth over Moon');
    expect(names).not.toContain('trip limit on level ground, Moon');
  });

  it.each(['equals', 'atMost', 'atLeast'] as const)('[CK5] fails %s on a number that is not finite', (relation) => {
    const [row] = OUTSIDE_CHECKS;
    for (const wrong of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      const check = { ...row!, relation, compute: () => wrong };
      expect(runCheck(check, () => 1).pass).toBe(false);
    }
  });

  it('takes the side of a bound and the last printed place of a value seriously', () => {
    const [row] = OUTSIDE_CHECKS;
    const verdict = (relation: 'equals' | 'atMost' | 'atLeast', computed: number): boolean =>
      runCheck({ ...row!, expected: '2.50', relation, compute: () => computed }, () => 1).pass;
    expect([verdict('equals', 2.5049), verdict('equals', 2.4951)]).toEqual([true, true]);
    expect([verdict('equals', 2.5051), verdict('equals', 2.4949)]).toEqual([false, false]);
    expect([verdict('atMost', 2.49), verdict('atMost', 2.51)]).toEqual([true, false]);
    expect([verdict('atLeast', 2.49), verdict('atLeast', 2.51)]).toEqual([false, true]);
  });

  it('refuses to run without the worlds it needs', () => {
    expect(() => runChecks(WORLDS.filter(({ id }) => id !== 'moon'))).toThrow("the checks need the world 'moon'");
  });
});
