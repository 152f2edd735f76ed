import { linePlot, inlineSvg, type LineSeries } from '../../engine/plot/index.ts';
import { formatCsv } from '../../engine/csv.ts';
import { toDegrees, toRadians } from '../../engine/math/index.ts';
import type { StudyCase } from '../../engine/study/index.ts';
import type { TouchdownSample } from '../../engine/touchdown/index.ts';
import { button, drawing, element, say } from '../panels/element.ts';
import { saveFile } from '../saveFile.ts';
import { wantsStill } from '../settings/store.ts';
import { BENCH, WATCH } from '../text/workbench.ts';
import { copyText } from './benchCard.ts';
import { degreesOf, metersPerSecond } from './figures.ts';
import { drawSide } from './sideView.ts';
import type { WatchedTouchdown } from './studies.ts';
import { termLine } from '../terms/term.ts';

/** Of the time of the touchdown in that of the film [-]: contact is over in a second. */
const PACE = 1 / 4;

interface WatchPart {
  readonly node: HTMLElement;
  show(asked: StudyCase, watched: WatchedTouchdown | string, command: string): void;
  close(): void;
}

/** One touchdown of the plane: its film, and what happened over time. */
export function createWatchPart(under: () => readonly string[]): WatchPart {
  const headline = element('p', { class: 'bench-headline', role: 'status' });
  const note = element('p', { class: 'bench-note' });
  const film = element('div', { class: 'bench-plot bench-film' });
  const time = element('input', { type: 'range', min: 0, max: 0, step: 1, 'aria-label': WATCH.time });
  const clock = element('span', { class: 'bench-clock' });
  const plots = element('div', { class: 'bench-histories' });
  const line = element('code', {});
  const status = element('span', { role: 'status' });
  let samples: readonly TouchdownSample[] = [];
  let asked: StudyCase | undefined;
  let timer = 0;
  const play = button(WATCH.play, () => (timer === 0 ? start() : stop()));
  const draw = () => {
    const at = Number(time.value);
    if (asked === undefined || samples[at] === undefined) return;
    const { markup, viewBox } = drawSide(asked, samples, at, toRadians(asked.slopeDeg));
    film.replaceChildren(drawing(markup, { viewBox, label: WATCH.label, class: 'bench-side' }));
    say(clock, `${samples[at].time.toFixed(2)} s, ${WATCH.slow}`);
  };
  const stop = () => {
    cancelAnimationFrame(timer);
    timer = 0;
    play.textContent = WATCH.play;
  };
  const start = () => {
    if (samples.length < 2) return;
    if (Number(time.value) >= samples.length - 1) time.value = '0';
    play.textContent = WATCH.pause;
    const begun = performance.now();
    const from = samples[Number(time.value)]!.time;
    const frame = (now: number) => {
      const wanted = from + ((now - begun) / 1000) * PACE;
      const next = samples.findIndex((sample) => sample.time >= wanted);
      time.value = String(next < 0 ? samples.length - 1 : next);
      draw();
      if (next < 0) stop();
      else timer = requestAnimationFrame(frame);
    };
    timer = requestAnimationFrame(frame);
  };
  time.addEventListener('input', () => {
    stop();
    draw();
  });
  const node = element(
    'section',
    { class: 'bench-card bench-watch', 'aria-label': WATCH.title, tabindex: -1, hidden: true },
    element('h2', {}, WATCH.title),
    headline,
    note,
    film,
    element('p', { class: 'bench-row' }, play, time, clock),
    plots,
    termLine('plumb line', 'stroke'),
    element(
      'p',
      { class: 'bench-row' },
      button(BENCH.csv, () => saveFile(historyCsv(samples, under()), 'touchdown.csv', 'text/csv')),
      button(BENCH.copyCommand, () => void copyText(line.textContent ?? '', status)),
      button(WATCH.close, () => close()),
      status,
    ),
    line,
  );
  const close = () => {
    stop();
    node.hidden = true;
  };
  return {
    node,
    close,
    show(now, watched, command) {
      stop();
      node.hidden = false;
      line.textContent = command;
      if (typeof watched === 'string') {
        say(headline, watched);
        return;
      }
      asked = now;
      const { result } = watched;
      samples = result.history ?? [];
      say(headline, WATCH.headline[result.outcome]);
      const { horizontalSpeed, descentRate, yaw } = watched.asked;
      say(note, WATCH.at(metersPerSecond(horizontalSpeed), metersPerSecond(descentRate), degreesOf(toDegrees(yaw), 0)));
      time.max = String(Math.max(0, samples.length - 1));
      time.value = wantsStill() ? time.max : '0';
      plots.innerHTML = HISTORIES.map((history) => inlineSvg(historyPlot(history, samples))).join('');
      draw();
      if (!wantsStill()) start();
    },
  };
}

interface History {
  readonly words: string;
  readonly read: (sample: TouchdownSample) => number;
}

const HISTORIES: readonly History[] = [
  { words: WATCH.tilt, read: tiltOf },
  { words: WATCH.margin, read: ({ margin }) => margin },
  { words: WATCH.load, read: ({ loads }) => Math.max(0, ...loads) / 1000 },
  { words: WATCH.stroke, read: ({ strokes }) => Math.max(0, ...strokes) },
];

/** Between the long axis and the vertical [deg]. */
function tiltOf({ attitude: [, x, y] }: TouchdownSample): number {
  return toDegrees(Math.acos(Math.max(-1, Math.min(1, 1 - 2 * (x * x + y * y)))));
}

function historyPlot({ words, read }: History, samples: readonly TouchdownSample[]) {
  const series: LineSeries = {
    name: words,
    stroke: { ink: 'ink', width: 1.8 },
    points: samples.map((sample) => ({ x: sample.time, y: read(sample) })),
  };
  return linePlot({ label: words, x: WATCH.seconds, y: words, series: [series], width: 380, height: 200 });
}

function historyCsv(samples: readonly TouchdownSample[], under: readonly string[]): string {
  const names = ['time', 'x', 'y', 'z', 'tiltDeg', 'margin', 'largestLoad', 'largestStroke'];
  const rows = samples.map((sample) => [
    sample.time,
    ...sample.position,
    tiltOf(sample),
    sample.margin,
    Math.max(0, ...sample.loads),
    Math.max(0, ...sample.strokes),
  ]);
  return formatCsv({ names, rows }, under);
}
