import { element } from '../panels/element.ts';

/** A table of the workbench: the names of its columns, and its rows. */
export function benchTable(head: readonly string[], rows: readonly HTMLElement[]): HTMLElement {
  return element(
    'table',
    { class: 'bench-table' },
    element('thead', {}, element('tr', {}, ...head.map((words) => element('th', { scope: 'col' }, words)))),
    element('tbody', {}, ...rows),
  );
}
