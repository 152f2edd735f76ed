/** One line of the bench: a figure beside what it is compared with in the same run. */
export interface BenchRow {
  readonly measure: string;
  readonly value: number;
  readonly unit: string;
  /** What the ratio is taken to. */
  readonly reference: string;
  readonly referenceValue: number;
}

/** Wall time of one call [ns]: the best of several batches, after a warm-up, so that a busy machine disturbs least. */
export function nanosecondsPerCall(call: () => void, { calls, batches }: { calls: number; batches: number }): number {
  const batch = (): number => {
    const begun = process.hrtime.bigint();
    for (let index = 0; index < calls; index++) call();
    return Number(process.hrtime.bigint() - begun) / calls;
  };
  batch();
  return Math.min(...Array.from({ length: batches }, batch));
}
