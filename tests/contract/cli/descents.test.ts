import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { callEveryFormat, callJson, callKilter } from './runKilter.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'kilter-descents-'));
afterAll(() => rmSync(folder, { recursive: true }));

const file = (name: string) => path.join(folder, name);

describe('kilter descend and kilter replay', () => {
  it('fly a plan without a screen, record it, and play the record again without a difference', async () => {
    const flown = await callJson(['descend', '--start', 'low', '--seed', '5', '--record', file('quiet.jsonl')]);
    expect(flown).toMatchObject({ caution: CAUTION, outcome: 'upright inside limit', faults: [] });
    expect(readFileSync(file('quiet.jsonl'), 'utf8').split('\n')[0]).toContain(CAUTION);
    const replayed = await callJson(['replay', file('quiet.jsonl')]);
    expect(replayed).toMatchObject({ caution: CAUTION, descents: 1, outcome: 'upright', divergence: null });
    const { marks, ticks } = replayed as { marks: number; ticks: number };
    expect(marks).toBeGreaterThan(ticks / 30);
  });

  it('do the same for a descent by instruments, of which the record holds what was believed', async () => {
    const args = ['--start', 'low', '--seed', '6', '--sensor-trouble', 'seeded'];
    const flown = await callJson(['descend', ...args, '--record', file('trouble.jsonl')]);
    expect(flown).toMatchObject({ faults: [{ fromTick: expect.any(Number) as number }], scorecard: { belief: {} } });
    expect(await callJson(['replay', file('trouble.jsonl')])).toMatchObject({ divergence: null });
  });

  it('say whether a leak was noticed, and how long it took', async () => {
    // seeds whose engine trouble is a leak; what is answered, and when, is the scorecard's
    const args = ['descend', '--sensor-trouble', 'engine', '--seed', '1'];
    const { json, text } = await callEveryFormat(args);
    const { faults, scorecard } = json as {
      faults: readonly { kind: string }[];
      scorecard: { defects: readonly { answeredAfter: number }[] };
    };
    expect(faults.map(({ kind }) => kind)).toEqual(['leak']);
    const [answered = NaN] = scorecard.defects.map(({ answeredAfter }) => answeredAfter);
    expect(text).toContain(`noticed: leak, answered ${answered.toFixed(1)} s later`);
  });

  it('are by hand or by orders, as asked', async () => {
    const flown = await callJson(['descend', '--start', 'low', '--mode', 'by orders']);
    expect(flown).toMatchObject({ inputs: { mode: 'by orders' }, outcome: 'upright inside limit' });
    const refused = await callKilter(['descend', '--mode', 'by ear']);
    expect(refused.err).toMatch(/mode: expected one of "by hand", "by orders"/);
  });

  it('take a plan file, and say what is wrong with one', async () => {
    const plan = {
      format: 'kilter-plan/1',
      lander: 'trivet',
      site: 'pinfold-plain',
      world: 'moon',
      seed: 2,
      start: 'low',
    };
    writeFileSync(file('plan.json'), JSON.stringify({ ...plan, mode: 'by hand', pace: 1, sensorTrouble: 'none' }));
    expect(await callJson(['descend', file('plan.json')])).toMatchObject({ inputs: { site: 'pinfold-plain' } });
    writeFileSync(file('wrong.json'), JSON.stringify({ ...plan, mode: 'by ear', pace: 1, sensorTrouble: 'none' }));
    const refused = await callKilter(['descend', file('wrong.json')]);
    expect(refused.status).toBe(2);
    expect(refused.err).toMatch(/mode: expected one of "by hand", "by orders"/);
    expect((await callKilter(['descend', file('none.json')])).err).toMatch(/no file/);
    expect((await callKilter(['descend', '--world', 'earth'])).err).toMatch(/expected one that Trivet can fly/);
  });

  it('say the first tick and field that differ, with exit code 1', async () => {
    const lines = readFileSync(file('quiet.jsonl'), 'utf8').split('\n');
    const at = lines.findIndex((line) => line.includes('"tick":150,'));
    const mark = JSON.parse(lines[at] ?? '') as { vy: number };
    lines[at] = JSON.stringify({ ...mark, vy: mark.vy * (1 + Number.EPSILON) });
    writeFileSync(file('spoiled.jsonl'), lines.join('\n'));
    const replayed = await callKilter(['replay', file('spoiled.jsonl')]);
    expect(replayed.status).toBe(1);
    expect(replayed.out).toMatch(/first difference at tick 150, vy: recorded -\d+\.\d+, replayed -\d+\.\d+/);
  });

  it('refuse a record of another version, and one that is none, in a line', async () => {
    const [header = '', ...rest] = readFileSync(file('quiet.jsonl'), 'utf8').split('\n');
    writeFileSync(file('older.jsonl'), [header.replace(/"physics":\d+/, '"physics":1'), ...rest].join('\n'));
    expect(await callKilter(['replay', file('older.jsonl')])).toMatchObject({ status: 2, out: '' });
    expect((await callKilter(['replay', file('older.jsonl')])).err).toMatch(/line 1\.physics: expected \d+, got 1/);
    writeFileSync(file('errands.jsonl'), 'bread\nmilk\n');
    expect((await callKilter(['replay', file('errands.jsonl')])).err).toMatch(/line 1: expected one JSON value/);
  });
});
