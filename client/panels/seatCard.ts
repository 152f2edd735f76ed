import type { Command, Seat, TableView } from '../../engine/table/index.ts';
import type { SourceState } from '../../engine/estimate/index.ts';
import type { ActionOf, KeyScope } from '../settings/keys.ts';
import { SEAT_CARD, SEAT_NAMES, SOURCES_CARD } from '../text/en.ts';
import { GLYPH, stateGlyph } from '../views/stateGlyph.ts';
import { drawing, element, say } from './element.ts';
import { ageWords } from './sourceWords.ts';

/** What one seat works with, in place of the controls that it does not hold. */
export interface SeatCard {
  readonly card: HTMLElement;
  /** Shows the card to whoever it is for, while a descent runs. */
  refresh(view: TableView): void;
}

/** What a card does by the keys of its seat. */
export interface ActsOf<Scope extends KeyScope> {
  readonly acts: Readonly<Record<ActionOf<Scope>, () => void>>;
}

export type Ask = (command: Command) => void;

/** The frame of a card: what stands in it scrolls where it must. */
export function seatCardFrame(seat: Seat, ...children: readonly HTMLElement[]): HTMLElement {
  return element(
    'section',
    { class: 'card seat-card', 'aria-label': SEAT_CARD.label(SEAT_NAMES[seat]), hidden: true },
    element(
      'h2',
      { class: 'card-head' },
      element('span', {}, SEAT_CARD.heads[seat]),
      element('em', {}, SEAT_CARD.yours),
    ),
    element('div', { class: 'seat-card-body' }, ...children),
  );
}

/** A part of a card with its name over it. */
export function cardPart(name: string | HTMLElement, ...children: readonly HTMLElement[]): HTMLElement {
  return element('div', { class: 'card-part' }, element('h3', {}, name), ...children);
}

/** A line with a figure that changes: its name, the figure, and what stands behind it. */
export function figureLine(name: string | HTMLElement): {
  readonly line: HTMLElement;
  show(figure: string, note?: string): void;
} {
  const figure = element('strong', {});
  const note = element('small', {});
  return {
    line: element('p', { class: 'figure-line' }, element('span', {}, name), figure, note),
    show(words, more = '') {
      say(figure, words);
      say(note, more);
    },
  };
}

/** The state of a source by shape and word, and its age. */
export function createStateMark(): {
  readonly mark: HTMLElement;
  show(state: SourceState, age: number | undefined): void;
} {
  const words = element('span', {});
  const since = element('span', { class: 'source-age' });
  let shown: SourceState | undefined;
  return {
    mark: element('span', { class: 'source-state' }, words, since),
    show(state, age) {
      if (state !== shown) {
        const glyph = drawing(stateGlyph(state), { viewBox: `0 0 ${GLYPH} ${GLYPH}`, class: 'state-glyph' });
        words.replaceChildren(glyph, SOURCES_CARD.states[state]);
      }
      shown = state;
      say(since, ageWords(age));
    },
  };
}

/** A drawing that is made anew only where it differs; `name` for readers of the page, hidden from them without one. */
export function createLiveDrawing(className: string): {
  readonly holder: HTMLElement;
  show(markup: string, viewBox: string, name?: string): void;
} {
  const holder = element('div', { class: className });
  let shown = '';
  return {
    holder,
    show(markup, viewBox, name) {
      const key = `${viewBox} ${name ?? ''} ${markup}`;
      if (key === shown) return;
      shown = key;
      const label = name === undefined ? {} : { label: name };
      holder.replaceChildren(drawing(markup, { viewBox, class: 'live-drawing', ...label }));
    },
  };
}
