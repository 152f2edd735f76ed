import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { HALL, HALL_TEXT } from '../../../levels/index.ts';
import { callJson, callKilter } from './runKilter.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'kilter-hall-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('kilter hall', () => {
  it('lists the scenes that come with the program, and says the same of their file', async () => {
    const listed = await callKilter(['hall']);
    expect(listed).toMatchObject({ status: 0, err: '' });
    for (const { question } of HALL.scenes) expect(listed.out).toContain(question);
    expect(listed.out).toContain(CAUTION);
    expect(await callKilter(['hall', 'check', 'levels/hall/scenes.json'])).toEqual(listed);
    const scenes = HALL.scenes.map(({ kind, question }) => ({ kind, question }));
    expect(await callJson(['hall', 'check', 'levels/hall/scenes.json'])).toMatchObject({ problems: [], scenes });
  });

  it('says every problem of a file with its line and field, with exit code 1', async () => {
    const file = path.join(folder, 'own.json');
    const wrong = HALL_TEXT.replace('"pace": 0.33', '"pace": 33').replace('"start": "high"', '"start": "hi"');
    writeFileSync(file, wrong);
    const lineOf = (words: string) => wrong.split('\n').findIndex((line) => line.includes(words)) + 1;
    const checked = await callKilter(['hall', 'check', file]);
    expect(checked).toMatchObject({ status: 1, err: '' });
    expect(checked.out).toContain('own.json: 2 problems');
    expect(checked.out).toContain(`line ${lineOf('"pace": 33')}, scenes[0].pace: expected a number from 0.05 to 10`);
    expect(checked.out).toContain(`line ${lineOf('"start": "hi"')}, scenes[6].start: expected one of "far"`);
  });

  it.each([
    { args: ['hall', 'check'], says: 'expected a file of scenes with check' },
    { args: ['hall', 'list', 'own.json'], says: 'and none with list' },
    { args: ['hall', 'check', 'none.json'], says: "no file 'none.json'" },
  ])('$args is refused in one line', async ({ args, says }) => {
    const ran = await callKilter(args);
    expect(ran).toMatchObject({ status: 2, out: '' });
    expect(ran.err).toContain(says);
  });
});
