import type { Profile } from '../../engine/ground/index.ts';
import {
  SPOT_APPROACHES,
  type LaidView,
  type MarkedSpot,
  type SpotApproach,
  type TableView,
} from '../../engine/table/index.ts';
import { SITE_CARD } from '../text/en.ts';
import { button, element, pressIfShown, say } from './element.ts';
import { createPressedRow } from './pressedRow.ts';
import { drawProfile, LEVEL_ENOUGH } from './profileDrawing.ts';
import { createLiveDrawing, type Ask } from './seatCard.ts';
import { aheadWords } from './siteWords.ts';
import { stretchAhead, type Stretch } from './stretchAhead.ts';
import { degrees } from '../text/numbers.ts';
import { Wish } from './wish.ts';

/** Keys that a slider answers to: the page's own must not take them. */
const SLIDER_KEYS = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End', 'PageUp', 'PageDown'];

interface SpotMarker {
  readonly nodes: readonly HTMLElement[];
  refresh(view: TableView, ground: Profile, isOpen: boolean): void;
  /** A meter to a side. */
  step(direction: 1 | -1): void;
  /** Where it is heading now. */
  here(): void;
}

/** The profile with a slider over it: a tap, a drag or an arrow key marks the spot to land at. */
export function createSpotMarker(ask: Ask, halfStance: number): SpotMarker {
  const wish = new Wish<number | undefined>();
  let approach: SpotApproach = 'either way';
  let said: MarkedSpot | undefined;
  let headingFor = 0;
  const mark = (meters: number) => {
    wish.ask(meters);
    ask({ kind: 'markSpot', meters, approach: said?.approach ?? approach });
  };
  const slider = createSlider(mark);
  const profile = createLiveDrawing('profile-drawing');
  const legend = element('p', { class: 'card-note' });
  const place = element('strong', {});
  const here = button(SITE_CARD.here, () => mark(Math.round(headingFor)));
  const clear = button(SITE_CARD.clear, () => ask({ kind: 'clearSpot' }));
  const way = createPressedRow<SpotApproach>({
    label: SITE_CARD.approach,
    choices: SPOT_APPROACHES.map((one) => [one, SITE_CARD.approaches[one]]),
    press: (one) => {
      approach = one;
      if (said !== undefined) ask({ kind: 'markSpot', meters: said.meters, approach: one });
    },
  });
  return {
    nodes: [
      element('div', { class: 'profile' }, profile.holder, slider.input),
      legend,
      element('div', { class: 'spot-row' }, element('span', {}, SITE_CARD.spotMarked, ' ', place), here, clear),
      way.group,
    ],
    step(direction) {
      const next = slider.next(direction);
      if (next !== undefined) mark(next);
    },
    here: () => pressIfShown(here),
    refresh(view, ground, isOpen) {
      const { flight, margin, drawnIn } = view;
      const { spot: now, isLaid } = spotSaid(view);
      said = now;
      headingFor = margin.predicted?.x ?? flight.x;
      const meters = slider.preview() ?? wish.shown(said?.meters);
      const spot = meters === undefined ? undefined : { meters, approach: said?.approach ?? approach };
      const stretch = slider.stretch(() =>
        stretchAhead({ x: flight.x, headingFor, height: flight.height, spot: said?.meters }, ground),
      );
      const drawn = drawProfile({
        profile: ground,
        stretch,
        drawnIn,
        x: flight.x,
        headingFor: margin.predicted?.x,
        spot,
        halfStance,
      });
      profile.show(drawn.markup, drawn.viewBox);
      say(legend, SITE_CARD.legend(degrees(LEVEL_ENOUGH, 0), drawn.times));
      const where = spot === undefined ? SITE_CARD.noSpot : aheadWords(spot.meters, flight.x);
      const words = isLaid ? SITE_CARD.spotLaid(where) : where;
      say(place, words);
      slider.refresh(meters ?? Math.round(headingFor), words, isOpen);
      here.disabled = !isOpen || margin.predicted === undefined;
      clear.disabled = !isOpen || said === undefined;
      way.refresh(said?.approach ?? approach, isOpen);
    },
  };
}

/** The spot that is marked, or none; in turns as the own order that lies face down has it. */
export function spotSaid({ turn, site }: Pick<TableView, 'turn' | 'site'>): {
  readonly spot: MarkedSpot | undefined;
  readonly isLaid: boolean;
} {
  const laid = turn?.laying === true ? turn.own.find(({ order }) => SPOT_ORDERS.includes(order)) : undefined;
  if (laid === undefined) return { spot: site.spot, isLaid: false };
  const { figure, word } = laid;
  if (figure === undefined) return { spot: undefined, isLaid: true };
  const approach = SPOT_APPROACHES.find((one) => one === word) ?? 'either way';
  return { spot: { meters: figure, approach }, isLaid: true };
}

/** To mark it, and to take it away. */
const SPOT_ORDERS: readonly LaidView['order'][] = ['markSpot', 'clearSpot'];

/** A slider as wide as the profile. While it is held, neither it nor the picture under it moves on by itself. */
function createSlider(mark: (meters: number) => void) {
  const input = element('input', { type: 'range', step: 1, class: 'spot-slider', 'aria-label': SITE_CARD.markSpot });
  let shown: Stretch | undefined;
  let isHeld = false;
  let preview: number | undefined;
  input.addEventListener('pointerdown', () => (isHeld = true));
  for (const end of ['pointerup', 'pointercancel'] as const) input.addEventListener(end, () => (isHeld = false));
  input.addEventListener('input', () => (preview = Number(input.value)));
  input.addEventListener('change', () => {
    preview = undefined;
    isHeld = false;
    mark(Number(input.value));
  });
  input.addEventListener('keydown', (event) => {
    if (SLIDER_KEYS.includes(event.key)) event.stopPropagation();
  });
  return {
    input,
    preview: () => preview,
    /** Beside where it stands; undefined where it cannot be moved. */
    next: (direction: 1 | -1) =>
      input.disabled
        ? undefined
        : Math.max(Number(input.min), Math.min(Number(input.max), Number(input.value) + direction)),
    stretch(ahead: () => Stretch): Stretch {
      if (!isHeld || shown === undefined) shown = ahead();
      return shown;
    },
    refresh(meters: number, words: string, isOpen: boolean) {
      input.disabled = !isOpen;
      if (shown === undefined) return;
      const { from, to } = shown;
      const [least, most] = [Math.ceil(from), Math.floor(to)];
      input.min = String(least);
      input.max = String(most);
      input.style.setProperty('--from', String((least - from) / (to - from)));
      input.style.setProperty('--to', String((most - from) / (to - from)));
      if (!isHeld && input.value !== String(meters)) input.value = String(meters);
      input.setAttribute('aria-valuetext', words);
    },
  };
}
