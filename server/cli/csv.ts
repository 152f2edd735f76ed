import { CAUTION } from '../../engine/index.ts';

/** A table for spreadsheets: the caution as a first line of comment, names, then rows. Plain numbers and words only. */
export function formatCsv(names: readonly string[], rows: readonly (readonly (string | number | null)[])[]): string {
  const lines = rows.map((row) => row.map((cell) => (cell === null ? '' : String(cell))).join(','));
  return [`# ${CAUTION}`, names.join(','), ...lines, ''].join('\n');
}
