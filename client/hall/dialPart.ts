import { reshape, rigidRound, SHAPE_FACTS, shapeOf, type StudyCase, type TipFields } from '../../engine/study/index.ts';
import { formatProblem } from '../../engine/result.ts';
import { findWorld } from '../../engine/worlds.ts';
import type { DialScene } from '../../levels/index.ts';
import { element, say } from '../panels/element.ts';
import { DIAL, HALL_PAGE } from '../text/hall.ts';
import { FIELD_WORDS } from '../text/workbench.ts';
import { createBenchDrawing } from '../workbench/benchDrawing.ts';
import { metersPerSecond, quantity } from '../workbench/figures.ts';
import type { StudyThreads } from '../workbench/studyThreads.ts';
import { factsOfDial, gravityOf } from './facts.ts';
import type { HallPart } from './hallPart.ts';

/** One dimension and what it does to the tip limit: by formula with the same press of a key, simulated as soon as it is known. */
export function createDialPart(scene: DialScene, threads: StudyThreads): HallPart {
  const { field, from, to, step, lander, worlds } = scene;
  const bars = worlds.map((world) => createBar(findWorld(world)?.name ?? world));
  const value = element('output', { class: 'hall-value' });
  const fault = element('p', { class: 'bench-fault', role: 'alert' });
  const slider = element('input', { type: 'range', min: from, max: to, step, 'aria-label': FIELD_WORDS[field] });
  const caseFor = (amount: number, world: string) => {
    const shaped = reshape(lander, { [field]: amount });
    if (!shaped.ok) return shaped.error.map(formatProblem)[0] ?? '';
    const { slopeDeg, descentRate, friction } = scene;
    const asked = { lander: shaped.value, slopeDeg, descentRate, friction };
    return { ...asked, gravity: gravityOf(world), missing: [], horizontalSpeed: 0 };
  };
  const rigidOf = (amount: number, world: string) => {
    const asked = caseFor(amount, world);
    return typeof asked === 'string' ? undefined : weakestSide(asked)?.plastic;
  };
  // one scale for the whole scene: a longer bar is a larger speed
  const most = 1.15 * Math.max(0.1, ...worlds.flatMap((world) => [from, to].map((end) => rigidOf(end, world) ?? 0)));
  const show = (amount: number) => {
    const cases = worlds.map((world) => caseFor(amount, world));
    const [wrong] = cases.filter((one) => typeof one === 'string');
    say(fault, wrong ?? '');
    const asked = cases.filter((one) => typeof one !== 'string');
    if (wrong !== undefined || asked[0] === undefined) return;
    slider.value = String(amount);
    const shown = quantity(amount, SHAPE_FACTS[field].unit);
    slider.setAttribute('aria-valuetext', shown);
    say(value, `${FIELD_WORDS[field]}: ${shown}`);
    drawing.show(asked[0]);
    const sides = asked.map(weakestSide);
    bars.forEach((bar, i) => bar.show(sides[i]?.plastic, undefined, most));
    threads.ask(
      'toward',
      asked.map((one, i) => ({ asked: one, azimuthDeg: sides[i]?.azimuthDeg ?? 0 })),
      (limits) => {
        if (typeof limits === 'string') say(fault, limits);
        else bars.forEach((bar, i) => bar.show(sides[i]?.plastic, limits[i], most));
      },
    );
  };
  /** A hand ends at the ends of the slider. */
  const move = (amount: number) => show(Number(Math.min(to, Math.max(from, amount)).toFixed(4)));
  const drawing = createBenchDrawing(
    { shape: (_, amount) => move(amount), arrival: () => undefined },
    { field, hint: DIAL.ring },
  );
  slider.addEventListener('input', () => move(Number(slider.value)));
  const node = element(
    'div',
    { class: 'hall-dial' },
    element('div', { class: 'hall-shape' }, drawing.node, element('p', { class: 'hall-time' }, slider, value), fault),
    element(
      'section',
      { class: 'hall-bars', 'aria-label': DIAL.bars },
      element('h2', {}, DIAL.bars),
      ...bars.map((bar) => bar.node),
      element('p', { class: 'hall-own' }, DIAL.legend),
    ),
  );
  const first = Math.min(to, Math.max(from, shapeOf(lander)[field]));
  show(first);
  let isAnswered = false;
  return {
    node,
    facts: factsOfDial(scene),
    get isAnswered() {
      return isAnswered;
    },
    get ahead() {
      return isAnswered ? undefined : DIAL.answer;
    },
    forward() {
      isAnswered = true;
    },
    rewind() {
      const was = isAnswered;
      isAnswered = false;
      return was;
    },
    nudge: (way) => move(Number(slider.value) + way * step),
    end: () => threads.drop('toward'),
  };
}

/** Toward the side to which it tips first by formula. */
function weakestSide(asked: StudyCase): { readonly azimuthDeg: number; readonly plastic: number } | undefined {
  const round = rigidRound(asked, AZIMUTH_STEP);
  if (!round.stands) return undefined;
  const { azimuthDeg } = round.least;
  const rows = round.rows.map((row) => row.plastic ?? 0);
  return { azimuthDeg, plastic: Math.min(...rows) };
}

/** [deg] */
const AZIMUTH_STEP = 5;

function createBar(name: string): {
  readonly node: HTMLElement;
  show(rigid: number | undefined, limit: TipFields | string | undefined, most: number): void;
} {
  const rigidBar = element('span', { class: 'hall-bar hall-bar-rigid', 'aria-hidden': 'true' });
  const ownBar = element('span', { class: 'hall-bar', 'aria-hidden': 'true' });
  const ownWords = element('strong', {});
  const rigidWords = element('span', {});
  const node = element(
    'div',
    { class: 'hall-world' },
    element('h3', {}, name),
    element('p', {}, ownWords, ' ', rigidWords),
    element('div', { class: 'hall-track' }, ownBar, rigidBar),
  );
  return {
    node,
    show(rigid, limit, most) {
      draw(rigidBar, rigid ?? 0, most);
      say(rigidWords, rigid === undefined ? DIAL.noStance : DIAL.rigid(metersPerSecond(rigid)));
      say(ownWords, tipWords(limit));
      const tip = typeof limit === 'object' ? (limit.tip ?? limit.tipUpTo) : 0;
      draw(ownBar, tip, most);
    },
  };
}

/** A speed past the end of the scale fills it; the figure beside it is whole. */
function draw(bar: HTMLElement, speed: number, most: number): void {
  bar.style.width = `${Math.min(100, (100 * speed) / most).toFixed(1)}%`;
}

function tipWords(limit: TipFields | string | undefined): string {
  if (limit === undefined) return HALL_PAGE.working;
  if (typeof limit === 'string') return limit;
  if (limit.tip === null) return DIAL.neverUpTo(metersPerSecond(limit.tipUpTo));
  return limit.tip === 0 ? DIAL.always : DIAL.simulated(metersPerSecond(limit.tip));
}
