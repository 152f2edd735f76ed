import { describe, expect, it } from 'vitest';
import { GLOSSARY } from '../../../client/text/glossary.ts';
import { projectFiles, readSource } from '../../support/sources.ts';

describe('the glossary', () => {
  it('has each term once, in the order of the alphabet, with one sentence', () => {
    const terms = GLOSSARY.map(([term]) => term);
    expect(terms.length).toBeGreaterThan(30);
    expect(terms).toEqual(terms.toSorted((a, b) => a.localeCompare(b, 'en')));
    expect(new Set(terms).size).toBe(terms.length);
    for (const [term, meaning] of GLOSSARY) expect(meaning, term).toMatch(/^[A-Z][^.]+\.$/);
  });

  it('says at some place on a screen what each of its terms is', () => {
    // that nothing else is marked as a term, the types hold
    const marking = projectFiles()
      .filter((file) => file.startsWith('client/') && file.endsWith('.ts'))
      .map(readSource)
      .filter((text) => /terms\/term\.ts'|terms: \[/.test(text))
      .join('\n');
    expect(GLOSSARY.map(([term]) => term).filter((term) => !marking.includes(`'${term}'`))).toEqual([]);
  });
});
