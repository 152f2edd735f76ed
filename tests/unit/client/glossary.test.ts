import { describe, expect, it } from 'vitest';
import { GLOSSARY } from '../../../client/text/glossary.ts';

describe('the glossary', () => {
  it('has each term once, in the order of the alphabet, with one sentence', () => {
    const terms = GLOSSARY.map(([term]) => term);
    expect(terms.length).toBeGreaterThan(30);
    expect(terms).toEqual(terms.toSorted((a, b) => a.localeCompare(b, 'en')));
    expect(new Set(terms).size).toBe(terms.length);
    for (const [term, meaning] of GLOSSARY) expect(meaning, term).toMatch(/^[A-Z][^.]+\.$/);
  });
});
