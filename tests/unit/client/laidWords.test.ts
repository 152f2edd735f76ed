import { expect, it } from 'vitest';
import { laidWords } from '../../../client/panels/drill/laidWords.ts';
import { ORDERS, type LaidView } from '../../../engine/table/index.ts';

it.each<[LaidView, string]>([
  [{ order: 'judgeSource', source: 'altimeter', word: 'rejected' }, 'Altimeter: rejected'],
  [{ order: 'nameCause', source: 'velocityRadar', word: 'freeze' }, 'Velocity radar: frozen'],
  [{ order: 'setCeiling', figure: 80 }, 'thrust ceiling 80\u202f%'],
  [{ order: 'armCutOff', figure: 0 }, 'disarm the cut-off'],
  [{ order: 'shutLine', figure: 1 }, 'shut a feed line'],
  [{ order: 'stateLimit', figure: 45 }, 'limit 0.45\u202fm/s'],
  [{ order: 'orderDescentRate', figure: -5 }, 'descent 0.5\u202fm/s up'],
  [{ order: 'orderDrift', figure: 12 }, 'drift 1.2\u202fm/s →'],
  [{ order: 'orderLean', figure: 4 }, 'lean 4° left'],
  [{ order: 'declareGround', word: 'softer' }, 'the ground is softer'],
])('an order that lies face down is said as %j', (laid, words) => {
  expect(laidWords(laid)).toBe(words);
});

it('there are words for every order', () => {
  for (const order of ORDERS) expect(laidWords({ order, source: 'altimeter' })).not.toBe('');
});
