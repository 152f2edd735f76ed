import { element } from './panels/element.ts';

/** How long the browser may take to fetch a file that it was handed [ms]. */
const FETCHED_MS = 10_000;

/** Hands a text over as a file. */
export function saveFile(text: string, name: string, type: string): void {
  const href = URL.createObjectURL(new Blob([text], { type }));
  element('a', { href, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(href), FETCHED_MS);
}
