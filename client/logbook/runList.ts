import { button, element, say } from '../panels/element.ts';
import { LOGBOOK } from '../text/logbook.ts';
import { dateOf, findRuns, type ShownRun } from './shownRun.ts';
import { withLabel } from './withLabel.ts';

/** The list of runs with its field to find one. */
interface RunList {
  readonly node: HTMLElement;
  /** `open`: of tables that are still open, in words. */
  show(runs: readonly ShownRun[], open: string): void;
}

export function createRunList(open: (run: ShownRun) => void): RunList {
  let runs: readonly ShownRun[] = [];
  const wanted = element('input', { type: 'search', autocomplete: 'off', 'aria-describedby': 'find-hint' });
  const rows = element('ul', { class: 'logbook-runs', 'aria-label': LOGBOOK.list });
  const count = element('p', { class: 'hint', role: 'status' });
  const stillOpen = element('p', { class: 'hint' });
  const find = element(
    'div',
    { class: 'logbook-find', role: 'search' },
    withLabel(LOGBOOK.find, wanted),
    element('p', { class: 'hint', id: 'find-hint' }, LOGBOOK.findHint),
  );
  const lay = () => {
    const found = findRuns(runs, wanted.value);
    find.hidden = runs.length === 0;
    rows.hidden = found.length === 0;
    rows.replaceChildren(...found.map((run) => rowOf(run, open)));
    say(
      count,
      runs.length === 0
        ? `${LOGBOOK.none}${stillOpen.hidden ? ` ${LOGBOOK.noneHint}` : ''}`
        : found.length === 0
          ? LOGBOOK.noneFound
          : LOGBOOK.count(found.length, runs.length),
    );
  };
  wanted.addEventListener('input', lay);
  return {
    node: element('section', { 'aria-label': LOGBOOK.list }, find, count, stillOpen, rows),
    show(next, open) {
      runs = next;
      say(stillOpen, open);
      stillOpen.hidden = open === '';
      lay();
    },
  };
}

function rowOf(run: ShownRun, open: (run: ShownRun) => void): HTMLElement {
  const { title, place, date, crew, ended, server } = run;
  const name = button(title, () => open(run), {
    'aria-label': LOGBOOK.openRun(title, date === '' ? crew : date),
  });
  return element(
    'li',
    {},
    name,
    element('span', { class: 'logbook-when' }, date),
    element('span', {}, place),
    element('span', {}, crew),
    element('span', { class: 'logbook-ended' }, ended),
    element('span', { class: 'hint' }, server === undefined ? '' : keptWords(server)),
  );
}

function keptWords({ isKept, expiresMs }: NonNullable<ShownRun['server']>): string {
  if (isKept) return LOGBOOK.kept;
  return expiresMs === undefined ? '' : LOGBOOK.expires(dateOf(expiresMs).slice(0, 10));
}
