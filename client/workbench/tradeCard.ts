import { formatCsv } from '../../engine/csv.ts';
import type { Plot } from '../../engine/plot/index.ts';
import {
  SHAPE_FACTS,
  tradeDrawing,
  tradeStroke,
  tradeTable,
  whatBuysCheapest,
  whatBuysMost,
  type Bought,
  type Trade,
} from '../../engine/study/index.ts';
import { element } from '../panels/element.ts';
import { FIELD_WORDS, TRADE_CARD } from '../text/workbench.ts';
import { createBenchCard, type BenchCard, type CardFiles } from './benchCard.ts';
import { benchTable } from './benchTable.ts';
import { metersPerSecond, percent, quantity } from './figures.ts';
import { workButton } from './workButton.ts';

interface TradeCard {
  readonly card: BenchCard;
  show(trades: readonly Trade[], speed: number, isDone: boolean): void;
  /** The case has changed: what was found holds no longer. */
  clear(): void;
}

/** One dimension at a time: what each buys in tip limit, and for how much mass. */
export function createTradeCard(
  said: Pick<CardFiles, 'under' | 'command'>,
  acts: { readonly work: () => void; readonly stop: () => void },
): TradeCard {
  let drawn: Plot | undefined;
  let shown: readonly Trade[] = [];
  const card = createBenchCard(TRADE_CARD.title, 'trade', {
    name: 'trade',
    plot: () => drawn,
    csv: () => (shown.length === 0 ? undefined : formatCsv(tradeTable(shown), said.under())),
    ...said,
  });
  const work = workButton(TRADE_CARD, acts);
  const table = element('div', {});
  card.body.append(element('p', { class: 'bench-row' }, work.node), table);
  const clear = () => {
    work.rest();
    shown = [];
    drawn = undefined;
    card.answer('', TRADE_CARD.lead);
    card.draw(undefined);
    card.progress('');
    table.replaceChildren();
  };
  clear();
  return {
    card,
    clear,
    show(trades, speed, isDone) {
      shown = trades;
      if (isDone) work.rest();
      const bought = whatBuysMost(trades);
      const [most] = bought;
      const cheapest = whatBuysCheapest(bought);
      const rest = cheapest === undefined || cheapest === most ? '' : `${boughtWords(cheapest, TRADE_CARD.cheapest)} `;
      const headline = most === undefined ? TRADE_CARD.nothing : boughtWords(most, TRADE_CARD.headline);
      card.answer(`${headline}${isDone ? '' : ' …'}`, `${rest}${TRADE_CARD.lead}`);
      card.progress(TRADE_CARD.soFar(trades.reduce((sum, { points }) => sum + points.length, 0)));
      drawn = tradeDrawing(trades, speed);
      card.draw(drawn);
      table.replaceChildren(tableFor(trades, bought));
    },
  };
}

function boughtWords({ field, value, gain, added, perKilogram }: Bought, say: typeof TRADE_CARD.headline): string {
  const mass =
    perKilogram === undefined
      ? TRADE_CARD.noMass
      : TRADE_CARD.added(quantity(added, 'kg'), `${quantity(1000 * perKilogram, 'mm/s')} a kg`);
  return say(FIELD_WORDS[field], valueWords(field, value), metersPerSecond(gain), mass);
}

function valueWords(field: Trade['field'], value: number): string {
  if (field === 'legCount') return String(value);
  return field === 'fill' ? percent(value) : quantity(value, SHAPE_FACTS[field].unit);
}

function tableFor(trades: readonly Trade[], bought: readonly Bought[]): HTMLElement {
  const head = [TRADE_CARD.dimension, TRADE_CARD.best, TRADE_CARD.gain, TRADE_CARD.adds, TRADE_CARD.per];
  const rows = trades.map(({ field }, i) => {
    const best = bought.find((one) => one.field === field);
    const { ink, dash = 'solid' } = tradeStroke(i);
    const cells =
      best === undefined
        ? ['–', '–', '', '']
        : [
            valueWords(field, best.value),
            metersPerSecond(best.gain),
            quantity(best.added, 'kg'),
            best.perKilogram === undefined ? '–' : quantity(1000 * best.perKilogram, 'mm/s'),
          ];
    return element(
      'tr',
      {},
      element('th', { scope: 'row', class: 'bench-line', 'data-ink': ink, 'data-dash': dash }, FIELD_WORDS[field]),
      ...cells.map((words) => element('td', {}, words)),
    );
  });
  return benchTable(head, rows);
}
