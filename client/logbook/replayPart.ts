import { timedMoment } from '../panels/debrief/momentWords.ts';
import { button, element, entry, say } from '../panels/element.ts';
import { clock, distance, speed } from '../text/numbers.ts';
import { RUN } from '../text/logbook.ts';
import { figureOf } from '../views/lander/figure.ts';
import type { PlayedRun } from './playedRun.ts';
import { drawMoment } from './trackDrawing.ts';

/** The descent in section, with a slider over its time. */
interface ReplayPart {
  readonly node: HTMLElement;
  /** Nothing moves any more. */
  end(): void;
}

/** Points a second of the track. */
const POINTS_A_SECOND = 10;
const WIDE = { width: 960, height: 430 };
const NARROW = { width: 480, height: 480 };

export function createReplayPart({ track: { points, review }, plan: { setup, drill } }: PlayedRun): ReplayPart {
  const sheet = matchMedia('(max-width: 43.75em)').matches ? NARROW : WIDE;
  const figure = figureOf(setup.lander);
  const section = element('div', { class: 'run-section', role: 'img' });
  const slider = element('input', {
    type: 'range',
    min: 0,
    max: Math.max(0, points.length - 1),
    value: 0,
    step: 1,
    class: 'run-slider',
    'aria-label': RUN.time,
    'aria-keyshortcuts': 'Space',
    list: 'run-ticks',
  });
  const readings = { time: value(), height: value(), sideways: value(), down: value() };
  let index = 0;
  let timer: ReturnType<typeof setInterval> | undefined;

  const show = (next: number) => {
    index = Math.max(0, Math.min(points.length - 1, next));
    const point = points[index];
    if (point === undefined) return;
    const { markup, viewBox } = drawMoment(points, index, { figure, terrain: setup.terrain, ...sheet });
    section.innerHTML = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${viewBox}" aria-hidden="true">${markup}</svg>`;
    const { height, vx, vy } = point.truth;
    const [when, up, side] = [clock(point.after), distance(Math.max(0, height)), speed(vx)];
    slider.value = String(index);
    slider.setAttribute('aria-valuetext', RUN.section(when, up, side));
    section.setAttribute('aria-label', RUN.section(when, up, side));
    say(readings.time, when);
    say(readings.height, up);
    say(readings.sideways, side);
    say(readings.down, speed(-vy));
  };
  const pause = () => {
    clearInterval(timer);
    timer = undefined;
    say(play, RUN.play);
  };
  const toggle = () => {
    if (timer !== undefined) {
      pause();
      return;
    }
    if (index >= points.length - 1) show(0);
    say(play, RUN.pause);
    timer = setInterval(() => {
      show(index + 1);
      if (index >= points.length - 1) pause();
    }, 1000 / POINTS_A_SECOND);
  };
  const step = (seconds: number) => {
    pause();
    show(index + seconds * POINTS_A_SECOND);
  };
  const play = button(RUN.play, toggle, { class: 'run-play' });
  slider.addEventListener('input', () => {
    pause();
    show(Number(slider.value));
  });
  slider.addEventListener('keydown', (event) => {
    if (event.key !== ' ') return;
    event.preventDefault();
    toggle();
  });
  const jump = (after: number) => {
    pause();
    const at = points.findIndex((point) => point.after >= after);
    show(at < 0 ? points.length - 1 : at);
    slider.focus();
  };
  const node = element(
    'section',
    { class: 'run-replay', 'aria-label': RUN.replay },
    section,
    element(
      'p',
      { class: 'hint' },
      points.some(({ believed }) => believed !== undefined) ? RUN.legend : RUN.legendTrue,
    ),
    element(
      'div',
      { class: 'run-controls' },
      play,
      button(RUN.back, () => step(-1)),
      button(RUN.forth, () => step(1)),
      slider,
    ),
    element(
      'dl',
      { class: 'run-readings' },
      entry(RUN.time, readings.time),
      entry(RUN.height, readings.height),
      entry(RUN.sideways, readings.sideways),
      entry(RUN.down, readings.down),
    ),
    ticks(review?.moments ?? []),
    momentList(review?.moments ?? [], drill, jump),
    element('p', { class: 'hint' }, RUN.keys),
  );
  show(0);
  return { node, end: pause };
}

function value(): HTMLElement {
  return element('span', {});
}

type Moments = NonNullable<PlayedRun['track']['review']>['moments'];

/** Marks the moments on the slider. */
function ticks(moments: Moments): HTMLElement {
  const options = moments.map(({ after }) => element('option', { value: Math.round(after * POINTS_A_SECOND) }));
  return element('datalist', { id: 'run-ticks' }, ...options);
}

function momentList(
  moments: Moments,
  drill: PlayedRun['plan']['drill'],
  jump: (after: number) => void,
): HTMLElement | undefined {
  if (moments.length === 0) return undefined;
  const items = moments.map((moment) =>
    element(
      'li',
      {},
      button(timedMoment(moment, drill), () => jump(moment.after)),
    ),
  );
  return element(
    'div',
    { class: 'run-moments' },
    element('h2', { id: 'run-moments' }, RUN.moments),
    element('ol', { 'aria-labelledby': 'run-moments' }, ...items),
  );
}
