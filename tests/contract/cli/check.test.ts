import { describe, expect, it } from 'vitest';
import { runChecks, type CheckResult } from '../../../engine/index.ts';
import { jsonOf, runKilter } from './runKilter.ts';

describe('kilter check', () => {
  it('passes in the shipped engine, with every named field on every row', () => {
    const found = jsonOf(runKilter(['check', '--json'])) as {
      checks: readonly CheckResult[];
      passed: number;
      failed: number;
    };
    expect(found.failed).toBe(0);
    expect(found.passed).toBe(found.checks.length);
    expect(found.checks).toEqual(structuredClone(runChecks()));
    for (const check of found.checks) {
      expect(check).toMatchObject({ pass: true, name: expect.any(String), source: expect.any(String) });
      expect([check.expected, check.computed, check.relativeError].every(Number.isFinite)).toBe(true);
    }
  });

  it('prints a row a check, the sources and the count, and ends with the caution', () => {
    const ran = runKilter(['check']);
    const rows = ran.out.split('\n').filter((line) => line.startsWith('pass  '));
    expect(ran.status).toBe(0);
    expect(rows).toHaveLength(runChecks().length);
    expect(ran.out).toContain(`${rows.length} checks, ${rows.length} passed, 0 failed`);
    expect(ran.out).toMatch(/Follow your own qualified authority and local rules\.\n$/);
  });
});
