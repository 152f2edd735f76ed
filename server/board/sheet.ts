import { escapeMarkup, inlineSvg, type Plot } from '../../engine/plot/index.ts';

/** A column of a table: its heading and on which side its figures stand. */
export interface SheetColumn {
  readonly heading: string;
  readonly align?: 'left' | 'right';
}

interface SheetTable {
  readonly caption: string;
  readonly columns: readonly SheetColumn[];
  /** The first cell names the row. */
  readonly rows: readonly (readonly string[])[];
  /** Small letters, for long lists; such a one may run over pages. */
  readonly small?: boolean;
}

/** Text, figures and tables of one report, numbered in the order in which they are made. */
export interface Sheet {
  figure(plot: Plot, caption: string): string;
  /** Two figures beside each other. */
  pair(first: readonly [Plot, string], second: readonly [Plot, string]): string;
  table(table: SheetTable): string;
}

export function createSheet(): Sheet {
  let [figures, tables] = [0, 0];
  const figure = (plot: Plot, caption: string): string => {
    figures++;
    return `<figure>${inlineSvg(plot)}<figcaption><b>Figure ${figures}.</b> ${escapeMarkup(caption)}</figcaption></figure>\n`;
  };
  return {
    figure,
    pair: (first, second) => `<div class="pair">${figure(...first)}${figure(...second)}</div>\n`,
    table({ caption, columns, rows, small = false }) {
      tables++;
      const side = (place: number): string => (columns[place]?.align === 'right' ? ' class="right"' : '');
      const head = columns.map(({ heading }, i) => `<th scope="col"${side(i)}>${escapeMarkup(heading)}</th>`);
      const body = rows.map((row) => {
        const cells = row.map((text, i) =>
          i === 0 ? `<th scope="row"${side(i)}>${escapeMarkup(text)}</th>` : `<td${side(i)}>${escapeMarkup(text)}</td>`,
        );
        return `<tr>${cells.join('')}</tr>`;
      });
      return [
        `<table${small ? ' class="small long"' : ''}>`,
        `<caption><b>Table ${tables}.</b> ${escapeMarkup(caption)}</caption>`,
        `<thead><tr>${head.join('')}</tr></thead>`,
        `<tbody>${body.join('\n')}</tbody>`,
        '</table>\n',
      ].join('\n');
    },
  };
}

export function paragraph(text: string, kind = ''): string {
  return `<p${kind === '' ? '' : ` class="${kind}"`}>${escapeMarkup(text)}</p>\n`;
}

export function list(items: readonly string[]): string {
  return items.length === 0 ? '' : `<ul>${items.map((item) => `<li>${escapeMarkup(item)}</li>`).join('\n')}</ul>\n`;
}

/** A line to be typed. */
export function commandLine(text: string): string {
  return `<p class="command"><code>${escapeMarkup(text)}</code></p>\n`;
}
