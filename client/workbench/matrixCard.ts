import { formatCsv } from '../../engine/csv.ts';
import { linePlot, withKey, type LineSeries, type Plot } from '../../engine/plot/index.ts';
import type { LeastTipFields, StudyCase } from '../../engine/study/index.ts';
import type { World } from '../../engine/worlds.ts';
import { element } from '../panels/element.ts';
import { MATRIX_CARD } from '../text/workbench.ts';
import { createBenchCard, type BenchCard, type CardFiles } from './benchCard.ts';
import { benchTable } from './benchTable.ts';
import { degreesOf, metersPerSecond } from './figures.ts';
import type { MatrixCell } from './studies.ts';

/** Slopes that are always looked at [deg]. */
const SLOPES = [0, 5, 8, 12] as const;

interface MatrixCard {
  readonly card: BenchCard;
  show(asked: StudyCase, worlds: readonly World[], cells: readonly MatrixCell[]): void;
}

/** The slopes of the table, that of the arrival first: it is the most urgent. */
export function matrixSlopes({ slopeDeg }: StudyCase): readonly number[] {
  return [slopeDeg, ...SLOPES.filter((slope) => slope !== slopeDeg)];
}

const STROKES: readonly LineSeries['stroke'][] = [
  { ink: 'ink', width: 2 },
  { ink: 'blue', width: 2, dash: 'dashed' },
  { ink: 'pencil', width: 2, dash: 'chain' },
];

/** Least tip limits on each world and slope: a row a world. */
export function createMatrixCard(said: Pick<CardFiles, 'under' | 'command'>): MatrixCard {
  let drawn: Plot | undefined;
  let shown: readonly MatrixCell[] = [];
  const card = createBenchCard(MATRIX_CARD.title, 'matrix', {
    name: 'limits-by-world-and-slope',
    plot: () => drawn,
    csv: () => (shown.length === 0 ? undefined : matrixCsv(shown, said.under())),
    ...said,
  });
  const holder = element('div', { class: 'bench-wide' });
  card.body.append(holder, element('p', { class: 'hint' }, MATRIX_CARD.hint));
  return {
    card,
    show(asked, worlds, cells) {
      shown = cells;
      const slopes = matrixSlopes(asked).toSorted((a, b) => a - b);
      card.answer(headlineOf(worlds, cells));
      card.progress(MATRIX_CARD.soFar(cells.length, slopes.length * worlds.length));
      drawn = drawingOf(asked, worlds, cells);
      card.draw(drawn);
      holder.replaceChildren(tableOf(asked, worlds, slopes, cells));
    },
  };
}

function tipOf({ least }: MatrixCell): number | undefined {
  return typeof least === 'string' ? undefined : (least.tip ?? undefined);
}

function headlineOf(worlds: readonly World[], cells: readonly MatrixCell[]): string {
  const known = cells.filter((cell) => tipOf(cell) !== undefined);
  const [worst] = known.toSorted((a, b) => tipOf(a)! - tipOf(b)!);
  if (worst === undefined) return '…';
  const name = worlds.find(({ id }) => id === worst.world)?.name ?? worst.world;
  return MATRIX_CARD.headline(metersPerSecond(tipOf(worst)!), name, degreesOf(worst.slopeDeg));
}

function drawingOf(asked: StudyCase, worlds: readonly World[], cells: readonly MatrixCell[]): Plot {
  const plot = linePlot({
    label: MATRIX_CARD.title,
    x: MATRIX_CARD.x,
    y: MATRIX_CARD.y,
    height: 240,
    level: { y: Math.abs(asked.horizontalSpeed), words: MATRIX_CARD.level },
    series: worlds.map(({ id, name }, i) => ({
      name,
      stroke: STROKES[i % STROKES.length]!,
      dotted: true,
      points: cells
        .filter(({ world }) => world === id)
        .toSorted((a, b) => a.slopeDeg - b.slopeDeg)
        .map((cell) => ({ x: cell.slopeDeg, y: tipOf(cell) })),
    })),
  });
  return withKey(
    plot,
    worlds.map(({ name }, i) => ({ name, mark: STROKES[i % STROKES.length]! })),
  );
}

function tableOf(
  asked: StudyCase,
  worlds: readonly World[],
  slopes: readonly number[],
  cells: readonly MatrixCell[],
): HTMLElement {
  const head = [MATRIX_CARD.world, ...slopes.map((slope) => MATRIX_CARD.slope(degreesOf(slope)))];
  const speed = Math.abs(asked.horizontalSpeed);
  return benchTable(
    head,
    worlds.map(({ id, name }) =>
      element(
        'tr',
        {},
        element('th', { scope: 'row' }, name),
        ...slopes.map((slope) => {
          const cell = cells.find(({ world, slopeDeg }) => world === id && slopeDeg === slope);
          return element('td', {}, ...(cell === undefined ? ['…'] : cellWords(cell.least, speed)));
        }),
      ),
    ),
  );
}

/** The limit, and on a line of its own what else matters there. */
function cellWords(least: LeastTipFields | string, speed: number): readonly (HTMLElement | string)[] {
  if (typeof least === 'string') return ['–'];
  const { tip, tipUpTo, gear, firstLimit } = least;
  const limit = tip === null ? MATRIX_CARD.none(metersPerSecond(tipUpTo, 1)) : metersPerSecond(tip);
  const more = [
    ...(tip !== null && tip < speed ? [MATRIX_CARD.tips] : []),
    ...(firstLimit === 'gear' && gear !== null
      ? [gear < 0.005 ? MATRIX_CARD.legAtOnce : MATRIX_CARD.leg(metersPerSecond(gear))]
      : []),
  ];
  return [limit, ...more.map((words) => element('span', { class: 'bench-under' }, words))];
}

function matrixCsv(cells: readonly MatrixCell[], under: readonly string[]): string {
  const names = ['world', 'slopeDeg', 'tip', 'tipTolerance', 'tipUpTo', 'gear'];
  const rows = cells.map(({ world, slopeDeg, least }) =>
    typeof least === 'string'
      ? [world, slopeDeg]
      : [world, slopeDeg, least.tip, least.tipTolerance, least.tipUpTo, least.gear],
  );
  return formatCsv({ names, rows }, under);
}
