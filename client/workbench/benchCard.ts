import { inlineSvg, standaloneSvg, type Plot } from '../../engine/plot/index.ts';
import { button, element, say } from '../panels/element.ts';
import { saveFile } from '../saveFile.ts';
import type { Term } from '../text/glossary.ts';
import { BENCH } from '../text/workbench.ts';
import { termLine } from '../terms/term.ts';

/** An answer of the workbench: in words first, then drawn, then as data. */
export interface BenchCard {
  readonly node: HTMLElement;
  /** The answer in a few words, and what it rests on. */
  answer(headline: string, note?: string): void;
  draw(plot: Plot | undefined): void;
  /** How much of it is known. */
  progress(words: string): void;
  readonly body: HTMLElement;
  readonly plot: HTMLElement;
}

export interface CardFiles {
  /** Names the files. */
  readonly name: string;
  readonly csv: () => string | undefined;
  /** Absent: it is a table alone. */
  readonly plot?: () => Plot | undefined;
  /** Says where the drawing belongs, under it. */
  readonly under: () => readonly string[];
  readonly command?: () => { readonly line: string; readonly hint: string };
  /** Said of what stands on the card. */
  readonly terms?: readonly Term[];
}

export function createBenchCard(title: string, kind: string, files?: CardFiles): BenchCard {
  const id = `bench-${kind}`;
  const headline = element('p', { class: 'bench-headline', role: 'status' }, BENCH.reading);
  const note = element('p', { class: 'bench-note' });
  const plot = element('div', { class: 'bench-plot' });
  const body = element('div', { class: 'bench-body' });
  const progress = element('p', { class: 'bench-progress' });
  const node = element(
    'section',
    { class: 'bench-card', 'data-kind': kind, 'aria-labelledby': id },
    element('h2', { id }, title),
    headline,
    note,
    plot,
    body,
    progress,
    files?.terms && termLine(...files.terms),
    files === undefined ? undefined : filesOf(files),
  );
  return {
    node,
    plot,
    body,
    answer(words, rest = '') {
      say(headline, words);
      say(note, rest);
    },
    draw(drawn) {
      plot.innerHTML = drawn === undefined ? '' : inlineSvg(drawn);
    },
    progress: (words) => say(progress, words),
  };
}

function filesOf({ name, csv, plot, under, command }: CardFiles): HTMLElement {
  const status = element('span', { role: 'status', class: 'bench-copied' });
  const line = element('code', {});
  const hint = element('span', { class: 'hint' });
  const copy = button(BENCH.copyCommand, () => void copyText(line.textContent ?? '', status));
  const details = element(
    'details',
    { class: 'bench-files' },
    element(
      'summary',
      {},
      [
        BENCH.csv,
        ...(plot === undefined ? [] : [BENCH.svg]),
        ...(command === undefined ? [] : [BENCH.command.toLowerCase()]),
      ].join(', '),
    ),
    element(
      'p',
      { class: 'bench-file-buttons' },
      button(BENCH.csv, () => {
        const text = csv();
        if (text !== undefined) saveFile(text, `${name}.csv`, 'text/csv');
      }),
      ...(plot === undefined
        ? []
        : [
            button(BENCH.svg, () => {
              const drawn = plot();
              if (drawn !== undefined) saveFile(standaloneSvg(drawn, under()), `${name}.svg`, 'image/svg+xml');
            }),
          ]),
      ...(command === undefined ? [] : [copy]),
      status,
    ),
    ...(command === undefined ? [] : [line, hint]),
  );
  details.addEventListener('toggle', () => {
    const given = command?.();
    say(line, given?.line ?? '');
    say(hint, given?.hint ?? '');
  });
  return details;
}

/** Puts a text where the person can paste it from, and says so. */
export async function copyText(text: string, status: HTMLElement, done: string = BENCH.copied): Promise<void> {
  try {
    await navigator.clipboard.writeText(text);
    say(status, done);
  } catch {
    say(status, BENCH.copyFailed);
  }
}
