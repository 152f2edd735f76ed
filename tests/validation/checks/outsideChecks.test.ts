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
    const quoted = results.filter(({ kind }) => kind !== 'derived');
    const documented = quoted.filter(({ seen }) => seen === 'yes').map(({ source }) => source);
    expect(quoted.length).toBeGreaterThan(5);
    // one example in a program's documentation; of model tests and measurements no more than abstracts
    expect(new Set(documented)).toEqual(new Set(['SciPy documentation of binomtest, Clopper-Pearson interval']));
    expect(results.filter(({ kind, seen }) => kind === 'derived' && seen !== 'yes')).toEqual([]);
  });

  it('[CK9] tell figures that somebody measured or printed from forms that we evaluated ourselves', () => {
    const kindOf = (name: string) => results.find((result) => result.name.startsWith(name))?.kind;
    for (const form of [
      'trip limit on level',
      'critical sliding velocity',
      'rocking',
      'impact restitution of a rectangle',
    ])
      expect(kindOf(form)).toBe('form');
    expect(
      results.filter(({ source, kind }) => /Housner|Abramson|NHTSA|Physics Teacher/.test(source) && kind !== 'form'),
    ).toEqual([]);
    expect(kindOf('slosh across a lying cylinder')).toBe('printed');
    expect(kindOf('sinkage of a footpad')).toBe('measured');
  });

  it('[CK9] hold no computed number against two ends of a range in two rows', () => {
    const keys = results
      .filter(({ relation }) => relation !== 'equals')
      .map(({ computed, source }) => `${computed} ${source}`);
    const twice = keys.filter((key, i) => key !== '' && keys.indexOf(key) !== i);
    expect(twice).toEqual([]);
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

  it.each(['equals', 'atMost', 'atLeast', 'within'] as const)(
    '[CK5] fails %s on a number that is not finite',
    (relation) => {
      const [row] = OUTSIDE_CHECKS;
      for (const wrong of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
        const check = { ...row!, expected: '1 to 2', relation, compute: () => wrong };
        expect(runCheck(check, () => 1).pass).toBe(false);
      }
    },
  );

  it('takes the side of a bound and the last printed place of a value seriously', () => {
    const [row] = OUTSIDE_CHECKS;
    const verdict = (relation: 'equals' | 'atMost' | 'atLeast', computed: number): boolean =>
      runCheck({ ...row!, expected: '2.50', relation, compute: () => computed }, () => 1).pass;
    expect([verdict('equals', 2.5049), verdict('equals', 2.4951)]).toEqual([true, true]);
    expect([verdict('equals', 2.5051), verdict('equals', 2.4949)]).toEqual([false, false]);
    expect([verdict('atMost', 2.49), verdict('atMost', 2.51)]).toEqual([true, false]);
    expect([verdict('atLeast', 2.49), verdict('atLeast', 2.51)]).toEqual([false, true]);
  });

  it('takes both ends of a range seriously, and measures the error from the nearer one', () => {
    const [row] = OUTSIDE_CHECKS;
    const result = (computed: number) =>
      runCheck({ ...row!, expected: '2 to 5', relation: 'within', compute: () => computed }, () => 1);
    expect([1.99, 2, 3, 5, 5.01].map((computed) => result(computed).pass)).toEqual([false, true, true, true, false]);
    expect([1, 3, 6].map((computed) => result(computed).relativeError)).toEqual([0.5, 0, 0.2]);
    expect(result(3)).toMatchObject({ expected: 2, upTo: 5, printed: '2 to 5' });
  });

  it('refuses to run without the worlds it needs', () => {
    expect(() => runChecks(WORLDS.filter(({ id }) => id !== 'moon'))).toThrow("the checks need the world 'moon'");
  });
});
