import { describe, expect, it } from 'vitest';
import { parseSite, parseSiteText, SITE_BUDGET } from '../../../levels/index.ts';
import { readSource } from '../../support/sources.ts';

const text = readSource('levels/sites/ravelBank.json');

function codesOf(content: string): readonly string[] {
  const read = parseSiteText(content);
  return read.ok ? [] : read.error.map(({ code }) => code);
}

describe('the text of a site', () => {
  it('[LE2] is read as its document is', () => {
    expect(parseSiteText(text)).toEqual(parseSite(JSON.parse(text)));
  });

  it.each([
    ['too large', text.padEnd(SITE_BUDGET.mostBytes + 1), 'site/too-large'],
    ['torn', text.slice(0, 100), 'site/not-json'],
    ['nested too deeply', '['.repeat(9) + ']'.repeat(9), 'site/too-deep'],
    ['with a field named twice', text.replace('"id"', '"name": "x", "id"'), 'site/repeated-field'],
  ])('[LE2] is refused where it is %s', (_, content, code) => {
    expect(codesOf(content)).toEqual([code]);
  });

  it('[LE2] may be just as large as its budget', () => {
    expect(codesOf(text.padEnd(SITE_BUDGET.mostBytes))).toEqual([]);
  });
});
