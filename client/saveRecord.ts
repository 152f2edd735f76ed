import { formatRecord, type TableRecord } from '../engine/record/index.ts';
import { element } from './panels/element.ts';

/** How long the browser may take to fetch a file that it was handed [ms]. */
const FETCHED_MS = 10_000;

/** Hands a record over as a file, as `kilter replay` reads it. */
export function saveRecord(record: TableRecord): void {
  const { lander, site, seed } = record.header.plan.choice;
  const href = URL.createObjectURL(new Blob([formatRecord(record)], { type: 'application/jsonl' }));
  element('a', { href, download: `kilter-${lander}-${site}-${seed}.jsonl` }).click();
  setTimeout(() => URL.revokeObjectURL(href), FETCHED_MS);
}
