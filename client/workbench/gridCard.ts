import { formatCsv } from '../../engine/csv.ts';
import type { Plot } from '../../engine/plot/index.ts';
import {
  axisOf,
  GRID_KEY,
  gridDrawing,
  gridLines,
  gridPoints,
  gridTable,
  MASS_RULE,
  SHAPE_FIELDS,
  valueWords,
  type ShapeField,
  type TradeAxes,
  type TradeGrid,
} from '../../engine/study/index.ts';
import { element } from '../panels/element.ts';
import { FIELD_WORDS, GRID_CARD } from '../text/workbench.ts';
import { createBenchCard, type BenchCard, type CardFiles } from './benchCard.ts';
import { benchTable } from './benchTable.ts';
import { metersPerSecond, quantity } from './figures.ts';
import { workButton } from './workButton.ts';

interface GridCard {
  readonly card: BenchCard;
  /** Which two are held against each other. */
  axes(): TradeAxes;
  show(grid: TradeGrid, speed: number, isDone: boolean): void;
  /** The case has changed: what was found holds no longer. */
  clear(): void;
}

/** Two dimensions of the lander against each other. */
export function createGridCard(
  said: Pick<CardFiles, 'under' | 'command'>,
  acts: { readonly work: () => void; readonly stop: () => void },
): GridCard {
  let drawn: Plot | undefined;
  let shown: TradeGrid | undefined;
  const card = createBenchCard(GRID_CARD.title, 'grid', {
    name: 'trade-of-two',
    plot: () => drawn,
    csv: () => (shown === undefined ? undefined : formatCsv(gridTable(shown), said.under())),
    ...said,
  });
  const work = workButton(GRID_CARD, acts);
  const [vary, against] = [choice('bench-vary', 'footRadius'), choice('bench-against', 'centerHeight')];
  const axes = (): TradeAxes => ({ vary: fieldOf(vary), against: fieldOf(against) });
  const table = element('div', { class: 'bench-wide' });
  const details = element('details', {}, element('summary', {}, GRID_CARD.table), table);
  const clear = () => {
    work.rest();
    acts.stop();
    shown = undefined;
    drawn = undefined;
    card.answer('', GRID_CARD.lead);
    card.draw(undefined);
    card.progress('');
    table.replaceChildren();
    const { vary: first, against: second } = axes();
    work.node.disabled = first === second;
  };
  for (const select of [vary, against]) select.addEventListener('change', clear);
  card.body.append(
    element(
      'p',
      { class: 'bench-row' },
      element('label', { for: 'bench-vary' }, GRID_CARD.vary),
      vary,
      element('label', { for: 'bench-against' }, GRID_CARD.against),
      against,
      work.node,
    ),
    details,
  );
  clear();
  return {
    card,
    axes,
    clear,
    show(grid, speed, isDone) {
      shown = grid;
      if (isDone) work.rest();
      const points = gridPoints(grid);
      const [first = '', ...rest] = gridLines(grid);
      card.answer(`${first}${isDone ? '' : ' …'}`, [...rest, GRID_KEY, MASS_RULE].join(' '));
      const count = grid.values.length * grid.againstValues.length;
      card.progress(GRID_CARD.soFar(points.length, count, grid.values.length, grid.againstValues.length));
      drawn = gridDrawing(grid, speed);
      card.draw(drawn);
      table.replaceChildren(tableFor(grid));
    },
  };
}

function choice(id: string, start: ShapeField): HTMLSelectElement {
  const select = element('select', { id });
  select.append(...SHAPE_FIELDS.map((field) => element('option', { value: field }, FIELD_WORDS[field])));
  select.value = start;
  return select;
}

function fieldOf({ value }: HTMLSelectElement): ShapeField {
  return SHAPE_FIELDS.find((field) => field === value) ?? 'footRadius';
}

function tableFor(grid: TradeGrid): HTMLElement {
  const head = [
    axisOf(grid.vary),
    axisOf(grid.against),
    GRID_CARD.limit,
    GRID_CARD.mass,
    GRID_CARD.gain,
    GRID_CARD.per,
  ];
  const rows = gridPoints(grid).map(({ value, second, point: { limit, mass }, gain }) => [
    valueWords(grid.vary, value),
    valueWords(grid.against, second),
    limit === undefined ? '–' : metersPerSecond(limit),
    mass === undefined ? '–' : quantity(mass, 'kg'),
    gain === undefined ? '–' : metersPerSecond(gain.gain),
    gain?.perKilogram === undefined ? '–' : quantity(1000 * gain.perKilogram, 'mm/s'),
  ]);
  return benchTable(
    head,
    rows.map((cells) => element('tr', {}, ...cells.map((words) => element('td', {}, words)))),
  );
}
