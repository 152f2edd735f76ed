import { createHash } from 'node:crypto';
import { readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { PHYSICS_REVISION } from '../../../engine/world/index.ts';
import { plainFiles } from '../../support/plainFiles.ts';
import { readSource, ROOT } from '../../support/sources.ts';
import { callJson, callKilter } from './runKilter.ts';

const { folder, lander, campaign } = plainFiles();
const out = path.join(folder, 'report.html');
const SMALL = [
  '--world',
  'earth',
  '--worlds',
  'earth',
  '--slopes',
  '3',
  '--steps',
  '4',
  '--yaws',
  '1',
  '--campaign',
  campaign,
  '--sensitivities',
  'mass,horizontalSpeed',
];
const LINE = ['report', lander, ...SMALL, '--horizontal', '0.5', '--slope', '3', '--trade', 'legCount', '--out', out];

let html = '';
let found: Readonly<Record<string, unknown>> = {};

const sha256 = (file: string): string => createHash('sha256').update(readFileSync(file)).digest('hex');

/** What a reader sees, without markup. */
function textOf(page: string): string {
  const plain = page.replace(/<style>[^]*?<\/style>/, '').replace(/<[^>]+>/g, ' ');
  return plain.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&');
}

interface Change {
  readonly margin: number | null;
  readonly upright: number | null;
}

describe('kilter report', () => {
  beforeAll(async () => {
    found = (await callJson([...LINE, '--workers', '2'])) as typeof found;
    html = readFileSync(out, 'utf8');
  }, 120_000);
  afterAll(() => rmSync(folder, { recursive: true }));

  it('[SY5] gives the same bytes for the same inputs, on one thread as on two', async () => {
    const again = path.join(folder, 'again.html');
    const ran = await callKilter([...LINE.slice(0, -1), again, '--workers', '1']);
    expect(ran).toMatchObject({ status: 0, err: '' });
    expect(sha256(again)).toBe(sha256(out));
    expect(found['written']).toMatchObject({ sha256: sha256(out) });
    expect(ran.out).toContain(sha256(out));
  }, 120_000);

  it('[SY5] has no script and asks for nothing outside itself', () => {
    expect(html).not.toMatch(/<script|<link|<img|<iframe|@import|@font-face/i);
    // a place in the page or a pattern of a drawing, and the name of SVG
    const targets = [...html.matchAll(/(?:href|src|url)\s*[=(]\s*["']?([^"')\s]+)/g)].map((match) => match[1]!);
    expect(targets.length).toBeGreaterThan(10);
    for (const target of targets) expect(target).toMatch(/^#/);
    expect(html.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:/);
  });

  it('[SY5] carries the caution on screen, at the foot of every printed page, and nothing that is no number', () => {
    expect(html.split(CAUTION)).toHaveLength(4);
    expect(html).toMatch(/@page\{[^]*@bottom-left\{content:"Exercise\./);
    expect(textOf(html)).not.toMatch(/NaN|Infinity|undefined|\[object/);
  });

  it('has every section, figure and table under its number', () => {
    const headings = [...html.matchAll(/<h2>(\d+)\. ([^<]+)<\/h2>/g)].map(([, number, title]) => [
      Number(number),
      title,
    ]);
    expect(headings.map(([number]) => number)).toEqual(headings.map((_, i) => i + 1));
    expect(headings.map(([, title]) => title)).toEqual([
      'In short',
      'The lander',
      'Limits by world and slope',
      'By direction',
      'Which arrivals stay upright',
      'Stance that each world asks for',
      'If nothing is exact: many arrivals',
      'What costs the margin',
      'What each input changes',
      'What buys margin',
      'Worst cases, and how to see them again',
      'What is assumed',
      'Checked range, and what lies outside it',
      'Credibility card',
      'How this was made',
    ]);
    for (const kind of ['Figure', 'Table']) {
      const numbers = [...html.matchAll(new RegExp(`<b>${kind} (\\d+)\\.</b>`, 'g'))].map((match) => Number(match[1]));
      expect(numbers.length).toBeGreaterThan(5);
      expect(numbers).toEqual(numbers.map((_, i) => i + 1));
    }
  });

  it('names version, physics revision, every input with the SHA-256 of its file, and the command that makes it', () => {
    const { version } = JSON.parse(readSource('package.json')) as { version: string };
    const text = textOf(html);
    expect(text).toContain(`Kilter ${version}, physics revision ${PHYSICS_REVISION}.`);
    for (const file of [lander, campaign]) expect(text).toContain(sha256(file));
    expect(text).toContain(
      `npx kilter report ${lander} --world earth --slope 3 --horizontal 0.5 --worlds earth --slopes 3 --steps 4 --yaws 1 --campaign ${campaign} --sensitivities mass,horizontalSpeed --trade legCount --out FILE.html`,
    );
  });

  it('holds a built-in lander against the file that it comes with', async () => {
    const { landerInput } = await import('../../../server/cli/boardOptions.ts');
    expect(landerInput('Trivet').sha256).toBe(sha256(path.join(ROOT, 'levels/landers/trivet.json')));
  });

  it('[SY5] says what the other verbs say: limit, dispersions, and a touchdown above the limit that tips', async () => {
    const arrival = ['--world', 'earth', '--slope', '3', '--descent', '1'];
    const limit = (await callJson(['limit', lander, ...arrival, '--step', '90'])) as { least: Record<string, unknown> };
    expect(found['least']).toMatchObject({ tip: limit.least['tip'], tipAzimuthDeg: limit.least['tipAzimuthDeg'] });
    const commands = [...textOf(html).matchAll(/npx kilter ((?:touchdown|disperse) [^\n]+?)\s*\n/g)].map(
      (match) => match[1]!,
    );
    const touchdown = commands.find((command) => command.startsWith('touchdown'))!;
    expect(await callJson(touchdown.split(' '))).toMatchObject({
      outcome: expect.stringContaining('tipped') as string,
    });
    const worst = commands.find((command) => command.startsWith('disperse'))!;
    const [, outcome, margin] = /Case \d+: ([a-z ]+), least margin (-?[\d.]+) m/.exec(textOf(html))!;
    const drawn = (await callJson(worst.split(' '))) as { outcome: string; leastMargin: number };
    expect(drawn.outcome).toBe(outcome);
    expect(drawn.leastMargin.toFixed(3)).toBe(margin);
  });

  it('[SY6] takes from the margin what the arrival is faster by, and says each input that was changed', () => {
    const rows = found['sensitivities'] as readonly { input: string; by: number; less: Change; more: Change }[];
    expect(rows.map(({ input }) => input)).toEqual(['mass', 'horizontalSpeed']);
    const { by, less, more } = rows[1]!;
    // less of it may turn the arrival round, and then it is that fast the other way
    expect([less.margin, more.margin]).toEqual([expect.closeTo(0.5 - Math.abs(0.5 - by), 12), expect.closeTo(-by, 12)]);
    // a lander that tips easily: one deviation more of speed fells some of the same arrivals
    expect(more.upright).toBeLessThan(0);
  });

  it.each([
    [['trivet'], /--out/],
    [['trivet', '--out', 'x.html', '--sensitivities', 'speed'], /expected names out of/i],
    [['trivet', '--out', 'x.html', '--trade', 'speed'], /expected names out of/i],
    [['trivet', '--out', 'x.html', '--missing', '1'], /--missing goes with --campaign/],
    [['trivet', '--out', 'x.html', '--campaign', campaign], /campaign of trivet, got one of another lander/],
    [['trivet', '--out', 'x.html', '--slopes', '5,5'], /each number once/i],
    [['trivet', '--out', 'x.html', '--worlds', 'moon,moon'], /named twice/],
    [['nothing', '--out', 'x.html'], /no lander 'nothing'/],
    [[lander, '--out', 'x.html', '--campaign', campaign, '--missing', '1,2'], /does not stand/],
  ])('refuses %j in one line', async (args, why) => {
    const { status, err } = await callKilter(['report', ...args]);
    expect({ status, lines: err.split('\n').length }).toEqual({ status: 2, lines: 2 });
    expect(err).toMatch(why);
  });
});
