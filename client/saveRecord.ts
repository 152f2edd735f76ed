import type { PlanChoice } from '../engine/table/index.ts';
import { element } from './panels/element.ts';

/** How long the browser may take to fetch a file that it was handed [ms]. */
const FETCHED_MS = 10_000;

/** Hands the text of a record over as a file, as `kilter replay` reads it. */
export function saveRecord(text: string, { lander, site, seed }: PlanChoice): void {
  const href = URL.createObjectURL(new Blob([text], { type: 'application/jsonl' }));
  element('a', { href, download: `kilter-${lander}-${site}-${seed}.jsonl` }).click();
  setTimeout(() => URL.revokeObjectURL(href), FETCHED_MS);
}
