import { CAUTION } from './constants.ts';

type CsvCell = string | number | boolean | null | undefined;

/** A table for spreadsheets: names of the columns, and rows of plain numbers and words. */
export interface CsvTable {
  readonly names: readonly string[];
  readonly rows: readonly (readonly CsvCell[])[];
}

/** The caution and the notes as lines of comment, names, then rows; a cell with a comma, a quote or a line break stands in quotes. */
export function formatCsv({ names, rows }: CsvTable, notes: readonly string[] = []): string {
  const comments = [CAUTION, ...notes].map((note) => `# ${note}`);
  const lines = (names.length === 0 ? [] : [names, ...rows]).map((row) => row.map(cellText).join(','));
  return [...comments, ...lines, ''].join('\n');
}

function cellText(cell: CsvCell): string {
  const text = cell === null || cell === undefined ? '' : String(cell);
  return /[",\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** The table of a list in the JSON of a verb: a column a field, in order of first mention; numbers in a list are parted by blanks. */
export function tableOf(records: readonly object[]): CsvTable {
  const names = [...new Set(records.flatMap((record) => Object.keys(record)))];
  return { names, rows: records.map((record) => names.map((name) => cellOf(Reflect.get(record, name)))) };
}

function cellOf(value: unknown): CsvCell {
  if (Array.isArray(value)) return value.join(' ');
  if (typeof value === 'number' || typeof value === 'boolean' || value === null || value === undefined) return value;
  return typeof value === 'string' ? value : JSON.stringify(value);
}
