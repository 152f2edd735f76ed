import { spawn } from 'node:child_process';
import { statSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { readSource, ROOT } from '../../support/sources.ts';
import { callKilter, CONTROL_CHARACTERS, runKilter } from './runKilter.ts';

/** Their examples simulate many landers, or are run by the tests of these verbs themselves. */
const LONG: readonly string[] = ['trade', 'report', 'check'];

const VERBS = [
  'stand',
  'limit',
  'stance',
  'touchdown',
  'envelope',
  'disperse',
  'compare',
  'trade',
  'report',
  'descend',
  'drill',
  'hall',
  'replay',
  'records',
  'worlds',
  'check',
];

describe('help', () => {
  it.each([[[]], [['--help']], [['-h']], [['help']]])('of the command comes from %j, with every verb', async (args) => {
    const ran = await callKilter(args);
    expect(ran).toMatchObject({ status: 0, err: '' });
    for (const verb of VERBS) expect(ran.out).toMatch(new RegExp(`^  ${verb} `, 'm'));
    expect(ran.out).toContain('Examples:');
    expect(ran.out.endsWith(`\n\n${CAUTION}\n`)).toBe(true);
  });

  it.each(VERBS)(
    'of %s shows its options and examples that run, and print plain characters alone',
    async (verb) => {
      const help = await callKilter([verb, '--help']);
      expect(help).toMatchObject({ status: 0, err: '' });
      expect(help.out).toContain('--json');
      expect(help.out.endsWith(`\n\n${CAUTION}\n`)).toBe(true);
      expect((await callKilter(['help', verb])).out).toBe(help.out);
      const examples = [...help.out.matchAll(/^ {2}kilter (.+)$/gm)].map((match) => (match[1] ?? '').split(' '));
      expect(examples.length).toBeGreaterThan(1);
      for (const args of LONG.includes(verb) ? [] : examples) {
        const ran = await callKilter(args);
        expect(ran).toMatchObject({ status: 0, err: '' });
        expect(ran.out).not.toMatch(CONTROL_CHARACTERS);
      }
      // a limit by simulation on four worlds takes its time on a busy machine
    },
    120_000,
  );

  it('tells the version of the package', async () => {
    const { version } = JSON.parse(readSource('package.json')) as { version: string };
    expect((await callKilter(['--version'])).out).toBe(`${version}\n`);
  });
});

describe('the command', () => {
  it('can be run as a program', () => {
    const file = path.join(ROOT, 'server/cli/kilter.ts');
    expect(readSource('server/cli/kilter.ts')).toMatch(/^#!\/usr\/bin\/env node\n/);
    expect(statSync(file).mode & 0o111).not.toBe(0);
  });

  it('ends every table and every JSON document with or as the caution and a line break', () => {
    expect(runKilter(['stand', 'trivet']).out.endsWith(`\n\n${CAUTION}\n`)).toBe(true);
    expect(runKilter(['stand', 'trivet', '--json']).out).toContain(CAUTION);
  });

  it('uses no color and no control characters in a process of its own', () => {
    const { out } = runKilter(['limit', 'steeple', '--slope', '5', '--closed-form']);
    expect(out).toContain('Steeple');
    expect(out).not.toMatch(CONTROL_CHARACTERS);
  });

  it('ends quietly when nobody reads on', async () => {
    const child = spawn(process.execPath, [
      path.join(ROOT, 'server/cli/kilter.ts'),
      'limit',
      'trivet',
      '--closed-form',
      '--step',
      '1',
      '--json',
    ]);
    let err = '';
    child.stderr.on('data', (chunk: Buffer) => {
      err += chunk.toString();
    });
    child.stdout.once('data', () => child.stdout.destroy());
    const code = await new Promise((resolve) => {
      child.on('close', resolve);
    });
    expect([code, err]).toEqual([0, '']);
  });
});
