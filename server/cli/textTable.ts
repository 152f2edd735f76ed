/** One column of a table for people: what it is, in which unit, and how wide its figures are. */
export interface Column {
  readonly heading: string;
  readonly align: 'left' | 'right';
}

/** Plain text, columns aligned by spaces, a rule of dashes under the headings. Ends without a line break. */
export function textTable(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  const widths = columns.map((column, index) =>
    Math.max(column.heading.length, ...rows.map((row) => (row[index] ?? '').length)),
  );
  const line = (cells: readonly string[]): string =>
    columns
      .map((column, index) => {
        const [cell, width] = [cells[index] ?? '', widths[index] ?? 0];
        return column.align === 'right' ? cell.padStart(width) : cell.padEnd(width);
      })
      .join('  ')
      .trimEnd();
  const rule = widths.map((width) => '-'.repeat(width)).join('  ');
  return [line(columns.map((column) => column.heading)), rule, ...rows.map(line)].join('\n');
}

/** A figure for a table; '-' where there is none. */
export function figure(value: number | undefined, decimals: number): string {
  if (value === undefined) return '-';
  const text = value.toFixed(decimals);
  // a small negative rounds to "-0.00", which reads as a sign error
  return Number(text) === 0 ? (0).toFixed(decimals) : text;
}

/** An angle in a sentence: one decimal, and none when it is whole. */
export function shortAngle(degrees: number): string {
  return figure(degrees, 1).replace(/\.0$/, '');
}

/** Sources under numbers of their own, in order of first mention: rows name the number, the list stands below. */
export function numberSources(sources: readonly string[]): {
  readonly numberOf: (source: string) => string;
  readonly list: string;
} {
  const distinct = [...new Set(sources)];
  const width = String(distinct.length).length;
  const lines = distinct.map((source, index) => `  ${String(index + 1).padStart(width)}  ${source}`);
  return { numberOf: (source) => String(distinct.indexOf(source) + 1), list: ['sources', ...lines].join('\n') };
}
