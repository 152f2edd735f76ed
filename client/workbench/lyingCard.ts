import { formatCsv, tableOf } from '../../engine/csv.ts';
import { element } from '../panels/element.ts';
import { LYING_CARD } from '../text/workbench.ts';
import { createBenchCard, type BenchCard, type CardFiles } from './benchCard.ts';
import { benchTable } from './benchTable.ts';
import { degreesOf, quantity } from './figures.ts';
import { toDegrees } from '../../engine/math/index.ts';
import type { Lying } from './studies.ts';

interface LyingCard {
  readonly card: BenchCard;
  show(lying: Lying | string): void;
}

/** The same lander on its legs and laid on its side, figure by figure. */
export function createLyingCard(said: Pick<CardFiles, 'under' | 'command'>): LyingCard {
  let shown: Lying | undefined;
  const card = createBenchCard(LYING_CARD.title, 'lying', {
    name: 'upright-lying',
    csv: () => (shown === undefined ? undefined : formatCsv(tableOf(shown.rows), said.under())),
    ...said,
  });
  const table = element('div', {});
  const list = element('ul', {});
  // the same through all answers that come one after the other: whoever has opened it reads on
  const more = element('details', { hidden: true }, element('summary', {}, LYING_CARD.not), list);
  card.body.append(table, more);
  return {
    card,
    show(lying) {
      if (typeof lying === 'string') {
        shown = undefined;
        card.answer(lying);
        table.replaceChildren();
        more.hidden = true;
        return;
      }
      shown = lying;
      const count = (side: 'upright' | 'lying') => lying.rows.filter(({ better }) => better === side).length;
      card.answer(LYING_CARD.headline(count('lying'), count('upright')));
      const rows = lying.rows.map(({ quantity: name, unit, upright, lying: laid, better }) =>
        element(
          'tr',
          {},
          element('th', { scope: 'row' }, name),
          element('td', { class: better === 'upright' ? 'better' : '' }, figure(upright, unit)),
          element('td', { class: better === 'lying' ? 'better' : '' }, figure(laid, unit)),
          element('td', {}, better === 'neither' ? '' : better),
        ),
      );
      const head = [LYING_CARD.quantity, LYING_CARD.upright, LYING_CARD.lying, LYING_CARD.better];
      table.replaceChildren(benchTable(head, rows));
      more.hidden = false;
      list.replaceChildren(...lying.consequences.map((words) => element('li', {}, words)));
    },
  };
}

function figure(value: number | undefined, unit: string): string {
  if (value === undefined) return LYING_CARD.none;
  return unit === 'rad' ? degreesOf(toDegrees(value)) : quantity(value, unit);
}
