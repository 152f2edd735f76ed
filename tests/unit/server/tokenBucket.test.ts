import { describe, expect, it } from 'vitest';
import { createTokenBucket, createTokenBuckets } from '../../../server/tokenBucket.ts';

describe('a token bucket', () => {
  it('allows a burst, then the steady rate, whatever the spacing', () => {
    const bucket = createTokenBucket({ burst: 3, perSecond: 10 });
    expect([0, 0, 0, 0].map((ms) => bucket.draw(ms))).toEqual([true, true, true, false]);
    expect([50, 99, 100, 100].map((ms) => bucket.draw(ms))).toEqual([false, false, true, false]);
    let drawn = 0;
    for (let ms = 101; ms <= 10_100; ms += 1) if (bucket.draw(ms)) drawn += 1;
    expect(drawn).toBe(100);
  });

  it('fills up to its burst and no further, and is not confused by a clock that steps back', () => {
    const bucket = createTokenBucket({ burst: 2, perSecond: 1 });
    bucket.draw(0);
    expect(bucket.isFull(500)).toBe(false);
    expect(bucket.isFull(1000)).toBe(true);
    expect([60_000, 60_000, 60_000].map((ms) => bucket.draw(ms))).toEqual([true, true, false]);
    expect(bucket.draw(0)).toBe(false);
  });
});

describe('buckets by key', () => {
  it('do not share, and are forgotten once full', () => {
    const buckets = createTokenBuckets({ burst: 1, perSecond: 1 });
    expect(buckets.draw('a', 0)).toBe(true);
    expect(buckets.draw('a', 0)).toBe(false);
    expect(buckets.draw('b', 0)).toBe(true);
    for (let i = 0; i < 5000; i += 1) buckets.draw(`k${i}`, i * 10);
    expect(buckets.size).toBeLessThan(1100);
  });
});
