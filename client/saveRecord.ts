import type { PlanChoice } from '../engine/table/index.ts';
import { saveFile } from './saveFile.ts';

/** Hands the text of a record over as a file, as `kilter replay` reads it. */
export function saveRecord(text: string, choice: PlanChoice): void {
  saveFile(text, `${fileStem(choice)}.jsonl`, 'application/jsonl');
}

/** What files about a descent are called, before what kind each is. */
export function fileStem({ lander, site, seed, drill }: PlanChoice): string {
  return `kilter-${[...(drill === undefined ? [] : [drill]), lander, site].join('-')}-${seed}`;
}
