import { describe, expect, it } from 'vitest';
import { credibilityCard, runChecks, type CheckResult } from '../../../engine/checks/index.ts';
import { readSource } from '../../support/sources.ts';
import { callJson, callKilter, CONTROL_CHARACTERS, jsonOf, runKilter } from './runKilter.ts';

const SHIPPED = runChecks();

describe('kilter check', () => {
  it('passes in the shipped engine, with every named field on every row', () => {
    const ran = runKilter(['check', '--json']);
    expect(ran.out).not.toMatch(CONTROL_CHARACTERS);
    const found = jsonOf(ran) as {
      checks: readonly CheckResult[];
      passed: number;
      failed: number;
    };
    expect(found.failed).toBe(0);
    expect(found.passed).toBe(found.checks.length);
    expect(found.checks).toEqual(structuredClone(SHIPPED));
    for (const check of found.checks) {
      expect(check).toMatchObject({ pass: true, name: expect.any(String), source: expect.any(String) });
      expect([check.expected, check.computed, check.relativeError].every(Number.isFinite)).toBe(true);
    }
  });

  it('prints a row a check, the sources, from memory or not, and the count, and ends with the caution', () => {
    const ran = runKilter(['check']);
    const rows = ran.out.split('\n').filter((line) => line.startsWith('pass  '));
    expect(ran).toMatchObject({ status: 0, err: '' });
    expect(ran.out).not.toMatch(CONTROL_CHARACTERS);
    expect(ran.out).toContain('[Rogers1972] (from memory)');
    expect(ran.out).not.toContain('common practice, no source (from memory)');
    expect(rows).toHaveLength(SHIPPED.length);
    expect(ran.out).toContain(`${rows.length} checks, ${rows.length} passed, 0 failed`);
    expect(ran.out).toMatch(/Follow your own qualified authority and local rules\.\n$/);
  });
});

describe('kilter check --card', () => {
  it('is shown with the lines that are run here', async () => {
    const { out } = await callKilter(['check', '--help']);
    const shown = [...out.matchAll(/^ {2}kilter (.+)$/gm)].map(([, line]) => line);
    expect(shown).toEqual(['check', 'check --json', 'check --card', 'check --card --markdown']);
    expect(readSource('engine/CREDIBILITY.md')).not.toMatch(CONTROL_CHARACTERS);
  });

  it('[CK6] prints as Markdown just what engine/CREDIBILITY.md holds', async () => {
    expect(await callKilter(['check', '--card', '--markdown'])).toEqual({
      status: 0,
      out: readSource('engine/CREDIBILITY.md'),
      err: '',
    });
  });

  it('[CK6] gives machines the whole card', async () => {
    expect(await callJson(['check', '--card'])).toMatchObject({ card: structuredClone(credibilityCard(SHIPPED)) });
  });

  it('[CK6] shows people every factor, simplification and check, and the caution', async () => {
    const { status, out, err } = await callKilter(['check', '--card']);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).not.toMatch(CONTROL_CHARACTERS);
    const { version, factors, simplifications, checks, permittedUse } = credibilityCard(SHIPPED);
    const wanted = [version, permittedUse, ...simplifications, ...checks.map(({ name }) => name)];
    for (const words of [...wanted, ...factors.map(({ factor, level }) => `${factor}, level ${level}`)])
      expect(out).toContain(words);
    expect(out).not.toContain('| --- |');
    expect(out).toMatch(/Follow your own qualified authority and local rules\.\n$/);
  });

  it.each([
    [['check', '--markdown'], '--markdown goes with --card'],
    [['check', '--card', '--markdown', '--json'], 'expected --json or --markdown, got both'],
  ])('refuses %j with one clear line', async (args, message) => {
    expect(await callKilter(args)).toEqual({ status: 2, out: '', err: `kilter: ${message}\n` });
  });
});
