import { describe, expect, it, vi } from 'vitest';
import type * as Checks from '../../../engine/checks/index.ts';
import { WORLDS } from '../../../engine/worlds.ts';
import { callKilter } from './runKilter.ts';

// the shipped checks on worlds whose gravity is off by one percent
vi.mock('../../../engine/checks/index.ts', async (importOriginal) => {
  const checks = await importOriginal<typeof Checks>();
  const heavier = WORLDS.map((world) => ({ ...world, gravity: world.gravity * 1.01 }));
  return { ...checks, runChecks: () => checks.runChecks(heavier) };
});

describe('kilter check with wrong gravity', () => {
  it('ends with exit code 1 and names the rows that fail', async () => {
    const ran = await callKilter(['check']);
    expect(ran.status).toBe(1);
    expect(ran.err).toBe('');
    expect(ran.out).toMatch(/^FAIL +trip limit on level ground, Moon /m);
    expect(ran.out).toMatch(/^pass +gravity scaling of static tilt/m);
    expect(ran.out).not.toContain(' 0 failed');
  });

  it('says so in JSON as well', async () => {
    const ran = await callKilter(['check', '--json']);
    const found = JSON.parse(ran.out) as { failed: number; checks: readonly { pass: boolean }[] };
    expect(ran.status).toBe(1);
    expect(found.failed).toBeGreaterThanOrEqual(10);
    expect(found.checks.filter(({ pass }) => !pass)).toHaveLength(found.failed);
  });
});
