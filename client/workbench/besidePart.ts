import { SHAPE_FACTS, SHAPE_FIELDS, shapeOf } from '../../engine/study/index.ts';
import { button, element } from '../panels/element.ts';
import { BENCH, BESIDE, FIELD_WORDS } from '../text/workbench.ts';
import { ARRIVAL_BOUNDS, ARRIVAL_NAMES, type BenchState } from './benchState.ts';
import { benchTable } from './benchTable.ts';
import { degreesOf, metersPerSecond, quantity } from './figures.ts';
import type { RoundAnswers } from './roundCards.ts';

interface BesidePart {
  readonly node: HTMLElement;
  show(
    now: readonly [BenchState, RoundAnswers | undefined],
    beside: readonly [BenchState, RoundAnswers] | undefined,
  ): void;
}

/** Two cases side by side, with what differs named: first what was asked, then what came out. */
export function createBesidePart(acts: {
  readonly keep: () => void;
  readonly swap: () => void;
  readonly drop: () => void;
}): BesidePart {
  const table = element('div', {});
  const hint = element('p', { class: 'hint' }, BESIDE.hint);
  const keep = button(BESIDE.keep, acts.keep);
  const swap = button(BESIDE.swap, acts.swap);
  const drop = button(BESIDE.drop, acts.drop);
  const node = element(
    'section',
    { class: 'bench-card bench-beside', 'aria-label': BESIDE.title },
    element('h2', {}, BESIDE.title),
    hint,
    element('p', { class: 'bench-row' }, keep, swap, drop),
    table,
  );
  return {
    node,
    show([state, own], beside) {
      swap.hidden = beside === undefined;
      drop.hidden = beside === undefined;
      hint.hidden = beside !== undefined;
      if (beside === undefined) {
        table.replaceChildren();
        return;
      }
      const [other, answers] = beside;
      const rows = [...askedRows(state, own, other, answers), ...foundRows(own, answers)];
      table.replaceChildren(
        rows.length === 0
          ? element('p', {}, BESIDE.same)
          : benchTable(
              [BESIDE.what, BESIDE.now, BESIDE.beside],
              rows.map(([what, here, there]) =>
                element(
                  'tr',
                  {},
                  element('th', { scope: 'row' }, what),
                  element('td', {}, here),
                  element('td', {}, there),
                ),
              ),
            ),
      );
    },
  };
}

type Row = readonly [what: string, now: string, beside: string];

function askedRows(
  now: BenchState,
  own: RoundAnswers | undefined,
  then: BenchState,
  other: RoundAnswers,
): readonly Row[] {
  const [shape, otherShape] = [own, other].map((one) => (one === undefined ? undefined : shapeOf(one.asked.lander)));
  const rows: Row[] = [
    [BENCH.lander, own?.asked.lander.name ?? '', other.asked.lander.name],
    [BENCH.world, now.world, then.world],
    ...ARRIVAL_NAMES.map((name): Row => {
      const { unit } = ARRIVAL_BOUNDS[name];
      return [FIELD_WORDS[name], quantity(now.arrival[name], unit), quantity(then.arrival[name], unit)];
    }),
    ...SHAPE_FIELDS.map((field): Row => {
      const { unit } = SHAPE_FACTS[field];
      const words = (value: number | undefined) => (value === undefined ? '' : quantity(value, unit));
      return [FIELD_WORDS[field], words(shape?.[field]), words(otherShape?.[field])];
    }),
    [BENCH.missing, legWords(now), legWords(then)],
  ];
  return rows.filter(([, here, there]) => here !== there);
}

function legWords({ missing }: BenchState): string {
  return missing.length === 0 ? '–' : missing.map((leg) => leg + 1).join(', ');
}

function foundRows(own: RoundAnswers | undefined, other: RoundAnswers): readonly Row[] {
  const [a, b] = [foundOf(own), foundOf(other)];
  return [BESIDE.tilt, BESIDE.limit, BESIDE.halfStance].map((what, i) => [what, a[i]!, b[i]!]);
}

/** In the order of the rows. */
function foundOf(one: RoundAnswers | undefined): readonly string[] {
  if (one?.rigid.stands !== true) return ['–', '…', '–'];
  const { least, halfStance } = one.rigid;
  const limit = one.limits === undefined || typeof one.limits === 'string' ? undefined : one.limits.least;
  const tip = limit === undefined ? '…' : limit.tip === null ? '–' : metersPerSecond(limit.tip);
  return [degreesOf(least.tiltDeg), tip, quantity(halfStance, 'm')];
}
