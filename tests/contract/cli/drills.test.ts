import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { DRILLS } from '../../../levels/index.ts';
import { drillJson } from '../../support/drillFile.ts';
import { callJson, callKilter } from './runKilter.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'kilter-drills-'));
afterAll(() => rmSync(folder, { recursive: true }));

function fileOf(name: string, drill: unknown): string {
  const file = path.join(folder, name);
  writeFileSync(file, typeof drill === 'string' ? drill : JSON.stringify(drill, undefined, 2));
  return file;
}

describe('kilter drill', () => {
  it('lists the drills that come with the program', async () => {
    const listed = await callKilter(['drill', 'list']);
    expect(listed).toMatchObject({ status: 0, err: '' });
    expect(listed.out).toContain(CAUTION);
    for (const { id, title } of DRILLS) expect(listed.out).toMatch(new RegExp(`^${id} .*${title}`, 'm'));
    expect(await callJson(['drill'])).toMatchObject({ drills: DRILLS.map(({ id, plan }) => ({ id, plan })) });
  });

  it('says what is in a drill file', async () => {
    const checked = await callKilter(['drill', 'check', 'levels/drills/falseFootfall.json']);
    expect(checked).toMatchObject({ status: 0, err: '' });
    expect(checked.out).toContain('False footfall (false-footfall): level 3, 25 min');
    expect(checked.out).toContain('picks one course of 2: light-too-soon, engine-burns-on');
    expect(checked.out).toContain('engine-is-off: contingency, 2 s after false-light');
  });

  it('says every problem of a wrong one with its line and field, with exit code 1', async () => {
    const lines = JSON.stringify({ ...drillJson(), minutes: 0, courses: ['one'] }, undefined, 2).split('\n');
    const wrong = fileOf('wrong.json', lines.join('\n'));
    const checked = await callKilter(['drill', 'check', wrong]);
    expect(checked).toMatchObject({ status: 1, err: '' });
    const lineOf = (field: string) => lines.findIndex((line) => line.startsWith(`  "${field}"`)) + 1;
    expect(checked.out).toContain(
      `line ${lineOf('minutes')}, minutes: expected a whole number from 1 to 240 [min], got 0`,
    );
    expect(checked.out).toContain(`line ${lineOf('courses')}, courses: expected a list of 2 to 6 courses`);
    expect(checked.out).toContain('2 problems');
    const json = await callKilter(['drill', 'check', wrong, '--json']);
    expect(json.status).toBe(1);
    expect(JSON.parse(json.out)).toMatchObject({ problems: [{ path: 'minutes', line: lineOf('minutes') }, {}] });
  });

  it.each([
    { args: ['drill', 'check'], says: 'expected a drill file with check' },
    { args: ['drill', 'list', 'some.json'], says: 'and none with list' },
    { args: ['drill', 'check', 'none.json'], says: "no file 'none.json'" },
    { args: ['drill', 'make'], says: 'Allowed choices are list, check' },
    { args: ['descend', '--drill', 'quiet-altimetre'], says: 'the drills are saddlers-bench, quiet-altimeter' },
    { args: ['descend', '--drill', 'coombe-ledge', '--lander', 'trivet'], says: 'got --lander too' },
    { args: ['descend', 'plan.json', '--drill', 'coombe-ledge'], says: "got 'plan.json' too" },
    { args: ['descend', '--stand-ins', 'asleep'], says: 'expected a descent by instruments' },
    { args: ['descend', '--stand-ins', 'up'], says: 'Allowed choices are awake, asleep' },
    {
      args: ['descend', '--drill', 'coombe-ledge', '--stand-ins', 'asleep', '--record', 'x.jsonl'],
      says: 'expected --record or --stand-ins asleep, got both',
    },
  ])('$args is refused: $says', async ({ args, says }) => {
    const refused = await callKilter(args);
    expect(refused).toMatchObject({ status: 2, out: '' });
    expect(refused.err).toContain(says);
    expect(refused.err.trimEnd().split('\n')).toHaveLength(1);
  });

  it('is flown by descend, from its file too, and its record replays where nobody has the file', async () => {
    const file = fileOf('own.json', { ...drillJson(), id: 'one-of-my-own', title: 'One of my own' });
    const record = path.join(folder, 'own.jsonl');
    const flown = await callJson(['descend', '--drill', file, '--seed', '4', '--record', record]);
    expect(flown).toMatchObject({
      inputs: { drill: 'one-of-my-own', seed: 4 },
      outcome: 'upright inside limit',
      injects: [{ id: 'silent', state: 'sent' }, {}, {}, { id: 'flicker', state: 'sent' }, {}],
    });
    rmSync(file);
    expect(await callJson(['replay', record])).toMatchObject({ divergence: null, inputs: { choice: { seed: 4 } } });
  });

  it('ends otherwise where the stand-ins are asleep', async () => {
    const flown = await callJson(['descend', '--drill', 'quiet-altimeter', '--seed', '4', '--stand-ins', 'asleep']);
    expect(flown).toMatchObject({ outcome: 'gear overload' });
  });
});
