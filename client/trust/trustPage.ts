import {
  credibilityCard,
  OUTSIDE_CHECKS,
  RANGED_MODELS,
  uncheckedLines,
  type CheckResult,
} from '../../engine/checks/index.ts';
import { button, element, say } from '../panels/element.ts';
import { exerciseLine } from '../panels/titleBlock.ts';
import { GLOSSARY } from '../text/glossary.ts';
import { TRUST } from '../text/trust.ts';
import '../styles/trust.css';
import { termLine } from '../terms/term.ts';

/** Lays the page in place of the start page, and runs the checks. */
export function layTrust(holder: HTMLElement, leave: () => void): { end(): void } {
  document.title = TRUST.documentTitle;
  const results: CheckResult[] = [];
  const headline = element('p', { class: 'trust-headline', role: 'status' }, TRUST.running(0, OUTSIDE_CHECKS.length));
  const body = element('div', {});
  const title = element('h1', { tabindex: -1 }, TRUST.title);
  holder.replaceChildren(
    element(
      'div',
      { class: 'trust' },
      element(
        'header',
        { class: 'trust-head' },
        button(TRUST.back, leave),
        button(TRUST.print, () => print()),
      ),
      element('main', {}, title, element('p', {}, TRUST.lead), headline, body, wordsPart(), letteringLine()),
      element('footer', { class: 'trust-foot' }, exerciseLine()),
    ),
  );
  title.focus();
  const worker = new Worker(new URL('./checksWorker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<CheckResult>) => {
    results.push(data);
    const isDone = results.length === OUTSIDE_CHECKS.length;
    if (!isDone) {
      // not told one by one to whoever listens
      if (results.length % 10 === 0) say(headline, TRUST.running(results.length, OUTSIDE_CHECKS.length));
      return;
    }
    worker.terminate();
    const failed = results.filter(({ pass }) => !pass).map(({ name }) => name);
    say(headline, failed.length > 0 ? TRUST.failed(failed.join('; ')) : TRUST.done(results.length, results.length));
    body.replaceChildren(...cardParts(results));
  });
  // a thread of this page has no origin to name
  // eslint-disable-next-line unicorn/require-post-message-target-origin -- that is for windows
  worker.postMessage(undefined);
  return { end: () => worker.terminate() };
}

function cardParts(results: readonly CheckResult[]): readonly HTMLElement[] {
  const card = credibilityCard(results);
  return [
    part(TRUST.use, element('p', {}, card.permittedUse)),
    part(TRUST.simplified, listOf(card.simplifications)),
    part(
      TRUST.uncertain,
      listOf(card.uncertainties.map(({ model, words, source }) => `${model}: ${words}. ${source}`)),
    ),
    part(
      TRUST.factors,
      element('p', { class: 'hint' }, TRUST.factorsNote),
      listOf(card.factors.map(({ factor, level, why }) => `${factor}, ${level}: ${why}`)),
    ),
    part(
      TRUST.range,
      listOf([
        ...RANGED_MODELS.flatMap((model) =>
          card.ranges[model].map(
            ({ words, least, most, unit }) =>
              `${model}: ${words} from ${shown(least)} to ${shown(most)}${unit === '-' ? '' : ` ${unit}`}`,
          ),
        ),
        ...uncheckedLines(card),
      ]),
    ),
    part(
      TRUST.checks,
      checkTable(results),
      termLine('lossless bound', 'plastic limit'),
      element('p', { class: 'hint' }, TRUST.version(card.version, card.checkedOn)),
    ),
  ];
}

function checkTable(results: readonly CheckResult[]): HTMLElement {
  const sign = { equals: '', within: '', atMost: TRUST.atMost, atLeast: TRUST.atLeast };
  const rows = results.map((check) => {
    const { name, printed, computed, unit, kind, seen, source, relation, pass } = check;
    const quoted =
      kind === 'derived' ? '' : seen === 'abstract' ? TRUST.seen.abstract : seen === 'no' ? TRUST.seen.no : '';
    const cells = [name, `${sign[relation]}${printed}`, shown(computed), unit, TRUST.kinds[kind], `${source}${quoted}`];
    return element(
      'tr',
      { class: pass ? '' : 'fails' },
      element('td', {}, pass ? TRUST.pass : TRUST.fail),
      ...cells.map((words) => element('td', {}, words)),
    );
  });
  return element(
    'div',
    { class: 'trust-table', tabindex: 0, role: 'region', 'aria-label': TRUST.checks },
    element(
      'table',
      {},
      element('thead', {}, element('tr', {}, ...TRUST.columns.map((words) => element('th', { scope: 'col' }, words)))),
      element('tbody', {}, ...rows),
    ),
  );
}

function wordsPart(): HTMLElement {
  const entries = GLOSSARY.map(([term, meaning]) =>
    element('div', {}, element('dt', {}, term), element('dd', {}, meaning)),
  );
  return part(TRUST.words, element('dl', { class: 'trust-words' }, ...entries));
}

/** The license of the typeface comes along with it, beside the page. */
function letteringLine(): HTMLElement {
  const license = element('a', { href: './typeface-license.txt' }, TRUST.license);
  return element('p', { class: 'hint' }, `${TRUST.lettering} `, license);
}

function part(title: string, ...children: readonly HTMLElement[]): HTMLElement {
  return element('section', {}, element('h2', {}, title), ...children);
}

function listOf(lines: readonly string[]): HTMLElement {
  return element('ul', {}, ...lines.map((line) => element('li', {}, line)));
}

function shown(value: number): string {
  return String(Number(value.toPrecision(5)));
}
