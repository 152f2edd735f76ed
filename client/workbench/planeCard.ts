import { formatCsv } from '../../engine/csv.ts';
import { hatchSample, inlineSvg, PLANE_FIELD, type Plot } from '../../engine/plot/index.ts';
import {
  planeClasses,
  planeDrawing,
  planeReach,
  type PlaneGrid,
  type StudiedTouchdown,
  type StudyCase,
} from '../../engine/study/index.ts';
import { yawDirections, type EnvelopeMap } from '../../engine/envelope/index.ts';
import { button, element } from '../panels/element.ts';
import { CLASS_WORDS, PLANE_CARD } from '../text/workbench.ts';
import { createBenchCard, type BenchCard, type CardFiles } from './benchCard.ts';
import { percent, quantity } from './figures.ts';

/** How fine the plane is looked at: first so that it fills at once, then as the command line does. */
const GRIDS = [
  { steps: 24, yaws: 8 },
  { steps: 40, yaws: 24 },
] as const;

interface PlaneCard {
  readonly card: BenchCard;
  grid(): PlaneGrid;
  show(asked: StudyCase, map: EnvelopeMap | string | undefined): void;
}

/** Which pairs of horizontal speed and descent rate the lander survives; any of them can be pressed and watched. */
export function createPlaneCard(
  said: Pick<CardFiles, 'under' | 'command'>,
  acts: { readonly watch: (touchdown: StudiedTouchdown) => void; readonly again: () => void },
): PlaneCard {
  let drawn: Plot | undefined;
  let shown: { asked: StudyCase; map: EnvelopeMap } | undefined;
  let fineness: 0 | 1 = 0;
  let asked: StudyCase | undefined;
  const grid = (): PlaneGrid => ({
    ...planeReach(asked ?? { horizontalSpeed: 0, descentRate: 0 }),
    ...GRIDS[fineness],
  });
  const card = createBenchCard(PLANE_CARD.title, 'plane', {
    name: 'plane-of-speeds',
    terms: ['horizontal speed', 'descent rate', 'yaw'],
    plot: () => drawn,
    csv: () => (shown === undefined ? undefined : planeCsv(shown.map, said.under())),
    ...said,
  });
  const key = element('ul', { class: 'bench-key bench-hatches' });
  const finer = button(PLANE_CARD.finer, () => {
    fineness = fineness === 0 ? 1 : 0;
    finer.textContent = fineness === 0 ? PLANE_CARD.finer : PLANE_CARD.isFine;
    acts.again();
  });
  const watch = button(PLANE_CARD.watch, () => {
    if (asked !== undefined) acts.watch(worstAt(shown?.map, grid(), asked));
  });
  card.body.append(
    key,
    element('p', { class: 'bench-row' }, watch, finer, element('span', { class: 'hint' }, PLANE_CARD.press)),
  );
  card.plot.addEventListener('click', ({ clientX, clientY }) => {
    const svg = card.plot.querySelector('svg');
    if (svg === null || drawn === undefined) return;
    const box = svg.getBoundingClientRect();
    const x = ((clientX - box.left) / box.width) * drawn.width;
    const y = ((clientY - box.top) / box.height) * drawn.height;
    const { left, right, top, bottom } = PLANE_FIELD;
    if (x < left || x > right || y < top || y > bottom) return;
    const { speedTo, descentTo } = grid();
    const horizontalSpeed = Number((-speedTo + (2 * speedTo * (x - left)) / (right - left)).toFixed(2));
    const descentRate = Number(((descentTo * (bottom - y)) / (bottom - top)).toFixed(2));
    acts.watch(worstAt(shown?.map, grid(), { horizontalSpeed, descentRate }));
  });
  return {
    card,
    grid,
    show(now, map) {
      asked = now;
      if (typeof map === 'string') {
        card.answer(map);
        card.draw(undefined);
        return;
      }
      const { speedTo, descentTo, steps, yaws } = grid();
      if (map !== undefined) shown = { asked: now, map };
      drawn = planeDrawing(now, grid(), map, PLANE_CARD);
      card.draw(drawn);
      layKey(key, map);
      const known = map === undefined ? 0 : map.nodes.length - map.unknown;
      card.answer(
        known === 0
          ? '…'
          : `${PLANE_CARD.headline(percent((map?.counts.inside ?? 0) / known))}${map?.isDone === true ? '' : ' …'}`,
      );
      card.progress(
        `${PLANE_CARD.grid(quantity((2 * speedTo) / steps, '-'), quantity(descentTo / steps, '-'), yaws, map?.runs ?? 0)}.`,
      );
    },
  };
}

/** At the yaw that was found worst at the nearest node. */
function worstAt(
  map: EnvelopeMap | undefined,
  { yaws }: PlaneGrid,
  { horizontalSpeed, descentRate }: Omit<StudiedTouchdown, 'yaw'>,
): StudiedTouchdown {
  const apart = (node: EnvelopeMap['nodes'][number]) =>
    Math.abs(node.horizontalSpeed - horizontalSpeed) + Math.abs(node.descentRate - descentRate);
  const simulated = map?.nodes.filter(({ direction }) => direction !== undefined) ?? [];
  const nearest = simulated.reduce<(typeof simulated)[number] | undefined>(
    (best, node) => (best === undefined || apart(node) < apart(best) ? node : best),
    undefined,
  );
  return { horizontalSpeed, descentRate, yaw: yawDirections(yaws)[nearest?.direction ?? 0]?.yaw ?? 0 };
}

function layKey(key: HTMLElement, map: EnvelopeMap | undefined): void {
  const items = planeClasses(map).map(({ name, hatch }) => {
    const item = element('li', {}, CLASS_WORDS[name]);
    item.insertAdjacentHTML(
      'afterbegin',
      inlineSvg(hatchSample(hatch)).replace('role="img" aria-label=""', 'aria-hidden="true"'),
    );
    return item;
  });
  key.replaceChildren(...items);
}

function planeCsv(map: EnvelopeMap, under: readonly string[]): string {
  const names = ['horizontalSpeed', 'descentRate', 'class', 'knowledge', 'leastMargin'];
  const rows = map.nodes.map((node) => [
    node.horizontalSpeed,
    node.descentRate,
    node.class,
    node.knowledge,
    node.leastMargin,
  ]);
  return formatCsv({ names, rows }, under);
}
