import { describe, expect, it } from 'vitest';
import { callWords, sentenceWords, whoWords } from '../../../client/panels/sentenceWords.ts';
import { namesSource, SENTENCES } from '../../../engine/talk/index.ts';

const plain = (words: string) => words.replaceAll('\u202f', ' ');

const said = (...of: Parameters<typeof sentenceWords>) => plain(sentenceWords(...of));

describe('a sentence in words', () => {
  it('has its figures, with their units and their way', () => {
    expect(said('noData', 'altimeter', [14.2])).toBe('Altimeter: no data for 14 s');
    expect(said('differs', 'velocityRadar', [3.14])).toBe('Velocity radar off by +3.1 σ');
    expect(said('motion', undefined, [60.4, 2.04, -0.4])).toBe('height 60 m, down 2.0 m/s, drift 0.40 m/s ←');
    expect(said('motion', undefined, [6.44, 1, 0.4])).toBe('height 6.4 m, down 1.0 m/s, drift 0.40 m/s →');
    expect(said('usable', undefined, [42.9])).toBe('usable 42 s');
    expect(said('limit', undefined, [1.2, 0.4, 1])).toBe('limit uphill 1.20 m/s →, downhill 0.40 m/s ←');
    expect(said('limit', undefined, [1.2, 0.4, -1])).toBe('limit uphill 1.20 m/s ←, downhill 0.40 m/s →');
    expect(said('ground', undefined, [1])).toBe('ground steeper than mapped');
    expect(said('legs', undefined, [0])).toBe('all legs locked');
    expect(said('legs', undefined, [2])).toBe('2 legs not locked');
  });

  it('differs from every other, and says so where a figure was not to be had', () => {
    const empty = SENTENCES.map((one) => sentenceWords(one, namesSource(one) ? 'altimeter' : undefined, []));
    expect(new Set(empty).size).toBe(SENTENCES.length);
    expect(plain(sentenceWords('usable', undefined, []))).toBe('usable –');
  });

  it('is told from whom to whom, as whoever reads it would say', () => {
    const call = {
      id: 1,
      after: 5,
      from: 'sensors',
      to: 'lead',
      byStandIn: false,
      values: [],
      text: 'look at the radar',
      waitsFor: ['lead'],
      isConfirmed: false,
    } as const;
    expect(callWords(call)).toBe('look at the radar');
    expect(whoWords(call, 'lead')).toBe('Sensors to you');
    expect(whoWords(call, 'sensors')).toBe('You to Lead');
    expect(whoWords({ ...call, to: 'all' }, undefined)).toBe('Sensors to all');
  });
});
