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
