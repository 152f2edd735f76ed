import { describe, expect, it } from 'vitest';
import { mutate, mutationsOf } from '../../mutation/mutations.ts';

/** Every mutant of a source, as the lines that differ from it. */
function mutantsOf(source: string): readonly string[] {
  return mutationsOf('sample.ts', source).map((mutation) => mutate(source, mutation));
}

describe('mutations', () => {
  it('change an operator, a comparison, a bound, a sign, a constant', () => {
    expect(mutantsOf('f(a * (b) + c);')).toEqual(['f(a / (b) + c);', 'f(a * (b) - c);']);
    expect(mutantsOf('f(a <= b && !c);')).toEqual(['f(a < b && !c);', 'f(a <= b || !c);', 'f(a <= b && c);']);
    expect(mutantsOf('Math.min(-a, 0);')).toEqual(['Math.max(-a, 0);', 'Math.min(a, 0);', 'Math.min(-a, 1);']);
    expect(mutantsOf('a += b; f(true);')).toEqual(['a -= b; f(true);', 'a += b; f(false);']);
  });

  it('drop a guard, but no branch that has another side', () => {
    expect(mutantsOf('if (a) throw b;')).toEqual([';']);
    expect(mutantsOf('if (a) { continue; }')).toEqual([';']);
    expect(mutantsOf('if (a) f(); if (b) throw c; else f();')).toEqual([]);
  });

  it('leave types, texts, comments and imports alone', () => {
    const source = [
      "import { a } from './a-1.ts';",
      'type Pair = 0 | 1;',
      '/** a + b */',
      'const text = `${a}-` + "0 < 1"; // a && b',
      'const typed = text as unknown as 1;',
    ].join('\n');
    expect(mutantsOf(source)).toEqual([]);
  });

  it('say where: the line from 1, the text before and after', () => {
    expect(mutationsOf('sample.ts', 'f();\nf(a /* - */ - b);')).toEqual([
      { file: 'sample.ts', line: 2, start: 17, end: 18, before: '-', after: '+' },
    ]);
  });
});
