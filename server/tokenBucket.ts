/**
 * A right to do something some times a second, with a reserve for bursts: a bucket that refills steadily and is drawn from
 * at each use. The caller says what time it is, so that a test need not wait.
 */
export interface TokenBucket {
  /** True when there was one to draw. */
  draw(nowMs: number): boolean;
  /** True when there is one to draw. */
  has(nowMs: number): boolean;
  /** True when the bucket has filled up again: nothing is lost by forgetting it. */
  isFull(nowMs: number): boolean;
}

export function createTokenBucket(options: { readonly burst: number; readonly perSecond: number }): TokenBucket {
  let tokens = options.burst;
  let filledAtMs: number | undefined;
  const fill = (nowMs: number) => {
    const elapsedMs = Math.max(0, nowMs - (filledAtMs ?? nowMs));
    tokens = Math.min(options.burst, tokens + (elapsedMs / 1000) * options.perSecond);
    filledAtMs = nowMs;
  };
  return {
    draw(nowMs) {
      fill(nowMs);
      if (tokens < 1) return false;
      tokens -= 1;
      return true;
    },
    has(nowMs) {
      fill(nowMs);
      return tokens >= 1;
    },
    isFull(nowMs) {
      fill(nowMs);
      return tokens >= options.burst;
    },
  };
}

/** One bucket a key, forgotten when full again, so that many keys do not add up. */
export function createTokenBuckets(options: { readonly burst: number; readonly perSecond: number }) {
  const buckets = new Map<string, TokenBucket>();
  return {
    draw(key: string, nowMs: number): boolean {
      if (buckets.size >= SWEEP_AT) {
        for (const [other, bucket] of buckets) if (bucket.isFull(nowMs)) buckets.delete(other);
      }
      let bucket = buckets.get(key);
      if (bucket === undefined) buckets.set(key, (bucket = createTokenBucket(options)));
      return bucket.draw(nowMs);
    },
    /** True when there is one to draw. */
    has: (key: string, nowMs: number): boolean => buckets.get(key)?.has(nowMs) ?? true,
    get size(): number {
      return buckets.size;
    },
  };
}

/** Number of keys from which full buckets are looked for before another is added. */
const SWEEP_AT = 1000;
