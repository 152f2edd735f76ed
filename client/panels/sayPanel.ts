import { SOURCES, type Source } from '../../engine/sensors/index.ts';
import { SEATS, type Seat, type TableView } from '../../engine/table/index.ts';
import {
  ADDRESSEES,
  fillSentence,
  LONGEST_LINE,
  namesSource,
  SENTENCES_OF,
  type Addressee,
  type Sentence,
} from '../../engine/talk/index.ts';
import { settings } from '../settings/store.ts';
import { SEAT_NAMES, SOURCE_NAMES, TALK } from '../text/en.ts';
import { createChoice } from './choiceList.ts';
import { element, say } from './element.ts';
import type { Ask } from './seatCard.ts';
import { addresseeWords, sentenceWords } from './sentenceWords.ts';

interface SayPanel {
  /** To whom, and of which source. */
  readonly head: HTMLElement;
  /** The prepared sentences, and the line of its own. */
  readonly list: HTMLElement;
  readonly line: HTMLElement;
  refresh(view: TableView): void;
  /** Says the sentence that has this figure on it. */
  press(figure: number): void;
}

/** What a seat says: to whom, its prepared sentences with the figures that would go along now, and one line of its own. */
export function createSayPanel(ask: Ask): SayPanel {
  const to = createChoice(TALK.toWhom);
  const source = createSourceChoice();
  const list = element('ol', { class: 'sentences' });
  const line = createLine((text) => ask({ kind: 'say', text, to: addressee(to.value()) }));
  const head = element(
    'span',
    { class: 'say-to' },
    element('span', { 'aria-hidden': 'true' }, TALK.to),
    to.list,
    source.list,
  );
  let seat: Seat | undefined;
  let buttons: readonly SentenceButton[] = [];

  const callOut = (sentence: Sentence) => {
    const of = namesSource(sentence) ? source.value() : undefined;
    ask({ kind: 'callOut', sentence, ...(of !== undefined && { source: of }), to: addressee(to.value()) });
  };
  const lay = (own: Seat, view: TableView) => {
    seat = own;
    to.refresh([]);
    const others = ADDRESSEES.filter((one) => one !== own);
    to.refresh(others.map((one) => [one, addresseeWords(one)]));
    to.list.value = own === 'lead' || view.you.decides ? 'all' : 'lead';
    buttons = SENTENCES_OF[own].map((sentence, i) => createSentence(sentence, i + 1, () => callOut(sentence)));
    list.replaceChildren(...buttons.map(({ node }) => element('li', {}, node)));
    list.setAttribute('aria-label', TALK.say(SEAT_NAMES[own]));
  };

  return {
    head,
    list,
    line,
    refresh(view) {
      for (const part of [head, list, line]) part.hidden = view.you.seat === undefined;
      if (view.you.seat === undefined) return;
      if (view.you.seat !== seat) lay(view.you.seat, view);
      source.refresh(view);
      for (const one of buttons) one.refresh(view, source.value());
    },
    press(figure) {
      buttons[figure - 1]?.node.click();
    },
  };
}

interface SentenceButton {
  readonly node: HTMLButtonElement;
  refresh(view: TableView, source: Source): void;
}

function createSentence(sentence: Sentence, figure: number, act: () => void): SentenceButton {
  const words = element('span', {});
  const key = element('kbd', { 'aria-hidden': 'true' }, String(figure));
  const node = element('button', { type: 'button' }, key, words);
  node.addEventListener('click', act);
  return {
    node,
    refresh(view, source) {
      const of = namesSource(sentence) ? source : undefined;
      const values = fillSentence(sentence, of, view);
      say(words, sentenceWords(sentence, of, values ?? []));
      node.disabled = values === undefined;
      node.title = values === undefined ? TALK.noFigure : '';
      const { letters } = settings();
      key.hidden = !letters;
      if (letters) node.setAttribute('aria-keyshortcuts', String(figure));
      else node.removeAttribute('aria-keyshortcuts');
    },
  };
}

/** Which source is spoken of, at Sensors: the first that looks wrong, until somebody chooses. */
function createSourceChoice(): { readonly list: HTMLElement; value(): Source; refresh(view: TableView): void } {
  const choice = createChoice(TALK.source);
  choice.refresh(SOURCES.map((one) => [one, SOURCE_NAMES[one]]));
  choice.list.value = 'altimeter';
  let isChosen = false;
  choice.list.addEventListener('change', () => (isChosen = true));
  return {
    list: choice.list,
    value: () => SOURCES.find((one) => one === choice.list.value) ?? 'altimeter',
    refresh({ you, sources }) {
      choice.list.hidden = you.seat !== 'sensors';
      const wrong = sources?.find(({ state, age }) => state !== 'valid' && age !== undefined);
      if (!isChosen && wrong !== undefined) choice.list.value = wrong.source;
    },
  };
}

/** One typed line. */
function createLine(send: (text: string) => void): HTMLFormElement {
  const input = element('input', {
    type: 'text',
    maxlength: LONGEST_LINE,
    autocomplete: 'off',
    'aria-label': TALK.line,
    placeholder: TALK.line,
  });
  const form = element('form', { class: 'say-line' }, input, element('button', { type: 'submit' }, TALK.send));
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    if (input.value.trim() === '') return;
    send(input.value);
    input.value = '';
  });
  return form;
}

function addressee(value: string): Addressee {
  return value === 'all' ? 'all' : (SEATS.find((seat) => seat === value) ?? 'all');
}
