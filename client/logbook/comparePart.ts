import type { Result } from '../../engine/result.ts';
import { drawFork, type LinePoint } from '../panels/forkDrawing.ts';
import { drawing, element, say } from '../panels/element.ts';
import { SCALE_WIDTH } from '../panels/speedScale.ts';
import { RUN } from '../text/logbook.ts';
import { unitOf } from '../text/numbers.ts';
import { compareRuns } from './compareRuns.ts';
import type { PlayedRun } from './playedRun.ts';
import type { ShownRun } from './shownRun.ts';
import { withLabel } from './withLabel.ts';
import { drawPaths } from './trackDrawing.ts';

/** Another run beside this one: both paths in one section, both speeds over time, and what differs in words. */
export function createComparePart(
  first: PlayedRun,
  others: readonly ShownRun[],
  play: (run: ShownRun) => Promise<Result<PlayedRun, string>>,
): HTMLElement {
  const status = element('p', { class: 'hint', role: 'status' });
  const shown = element('div', { class: 'run-compared' });
  const choice = element(
    'select',
    {},
    element('option', { value: '' }, RUN.compareChoose),
    ...others.map((run) =>
      element('option', { value: run.id }, [run.title, run.date, run.crew].filter(Boolean).join(', ')),
    ),
  );
  choice.addEventListener('change', () => {
    shown.replaceChildren();
    say(status, '');
    const run = others.find(({ id }) => id === choice.value);
    if (run === undefined) return;
    say(status, RUN.comparing);
    void play(run).then((second) => {
      if (choice.value !== run.id) return;
      say(status, second.ok ? '' : second.error);
      if (second.ok) shown.replaceChildren(...comparison(first, second.value));
    });
  });
  return element(
    'section',
    { class: 'run-compare' },
    element('h2', {}, RUN.compare),
    withLabel(RUN.compareWith, choice),
    status,
    shown,
  );
}

function comparison(first: PlayedRun, second: PlayedRun): readonly HTMLElement[] {
  const rows = compareRuns(first, second);
  const isNarrow = matchMedia('(max-width: 43.75em)').matches;
  const outcome = rows.find(({ name }) => name === RUN.outcome);
  const paths = drawPaths([pathOf(first), pathOf(second)], [RUN.first, RUN.second], {
    terrain: first.plan.setup.terrain,
    ...(isNarrow ? { width: 480, height: 420 } : { width: 960, height: 430 }),
  });
  const label = RUN.pathsDrawn(outcome?.first ?? '', outcome?.second ?? '');
  const isOther = !isSameGround(first.plan.setup, second.plan.setup);
  return [
    element(
      'figure',
      {},
      element('figcaption', {}, RUN.paths),
      drawing(paths.markup, { viewBox: paths.viewBox, label, class: 'run-section' }),
    ),
    ...(isOther ? [element('p', { class: 'hint' }, RUN.otherGround)] : []),
    element(
      'div',
      { class: 'run-speeds' },
      speeds(first, second, RUN.sidewaysOverTime(unitOf('speed').sign), ({ vx }) => vx),
      speeds(first, second, RUN.downOverTime(unitOf('speed').sign), ({ vy }) => -vy),
    ),
    differences(rows),
  ];
}

type Setup = PlayedRun['plan']['setup'];

function isSameGround({ terrain: one }: Setup, { terrain: other }: Setup): boolean {
  if (one.firstX !== other.firstX || one.heights.length !== other.heights.length) return false;
  return one.heights.every((height, i) => height === other.heights[i]);
}

type Truth = PlayedRun['track']['points'][number]['truth'];

function pathOf({ track }: PlayedRun): readonly Truth[] {
  return track.points.map(({ truth }) => truth);
}

/** Both over time on one scale, up to where each first met the ground. */
function speeds(first: PlayedRun, second: PlayedRun, caption: string, of: (truth: Truth) => number): HTMLElement {
  const { size } = unitOf('speed');
  const line = ({ track }: PlayedRun): readonly LinePoint[] =>
    track.points
      .filter(({ truth }) => truth.touchdown === undefined)
      .map(({ after, truth }) => ({ time: after, value: of(truth) / size }));
  const lines = { happened: line(first), forked: line(second), parted: 0 };
  const { markup, viewBox } = drawFork({ ...lines, happenedName: RUN.first, forkedName: RUN.second }, SCALE_WIDTH.full);
  return element(
    'figure',
    {},
    element('figcaption', {}, caption),
    drawing(markup, { viewBox, label: RUN.speedsDrawn, class: 'fork-drawing' }),
  );
}

function differences(rows: ReturnType<typeof compareRuns>): HTMLElement {
  const differing = rows.filter(({ differs }) => differs);
  if (differing.length === 0) return element('p', {}, RUN.same);
  const head = [RUN.first, RUN.second].map((words) => element('th', { scope: 'col' }, words));
  const body = differing.map(({ name, first, second }) =>
    element('tr', {}, element('th', { scope: 'row' }, name), element('td', {}, first), element('td', {}, second)),
  );
  return element(
    'table',
    { class: 'run-table' },
    element('caption', {}, RUN.differences),
    element('thead', {}, element('tr', {}, element('td', {}), ...head)),
    element('tbody', {}, ...body),
  );
}
