import { describe, expect, it } from 'vitest';
import { readSource } from '../../support/sources.ts';
import { callKilter } from './runKilter.ts';

const BLOCKS = [...readSource('server/cli/README.md').matchAll(/```\n\$ npx kilter ([^\n]+)\n([^`]*)```/g)].map(
  ([, line = '', output = '']) => ({ line, output }),
);
/** Landers and rows of the checks may change with the levels and the engine; what these print may not. */
const FIXED = BLOCKS.filter(({ line }) => line === 'worlds' || line.includes('--half-stance'));

describe('the page of the command', () => {
  it('shows every verb', () => {
    expect(new Set(BLOCKS.map(({ line }) => line.split(' ')[0]))).toEqual(
      new Set(['stand', 'limit', 'stance', 'touchdown', 'envelope', 'disperse', 'compare', 'worlds', 'check']),
    );
    expect(FIXED.length).toBeGreaterThanOrEqual(4);
  });

  it.each(BLOCKS)('shows a command line that works: $line', async ({ line }) => {
    expect(await callKilter(line.split(' '))).toMatchObject({ status: 0, err: '' });
  });

  it.each(FIXED)('shows what is really printed: $line', async ({ line, output }) => {
    expect((await callKilter(line.split(' '))).out).toBe(output);
  });
});
