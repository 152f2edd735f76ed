import { LONGEST_NOTE, SIGNS_OF_WORK, TOPICS, type Topic } from '../../../engine/review/index.ts';
import { SEATS, type Seat, type TableView } from '../../../engine/table/index.ts';
import { settings } from '../../settings/store.ts';
import { ANALYSIS, OBSERVE } from '../../text/debrief.ts';
import { SEAT_NAMES } from '../../text/en.ts';
import { keyName } from '../../text/keyNames.ts';
import { lineField, pickField } from '../debrief/fields.ts';
import { observationWords } from '../debrief/summary.ts';
import { button, element, say } from '../element.ts';
import { createPressedRow } from '../pressedRow.ts';
import type { Ask } from '../seatCard.ts';

type Who = Seat | 'crew';

/** What was seen of whom, in two presses while a descent runs: who, then strength or to improve; a word before that, if wanted. */
export function createObserveCard(ask: Ask): { readonly card: HTMLElement; refresh(view: TableView): void } {
  let who: Who = 'crew';
  const whom = createPressedRow<Who>({
    label: OBSERVE.who,
    choices: [['crew', OBSERVE.crew], ...SEATS.map((seat) => [seat, SEAT_NAMES[seat]] as const)],
    press: (pressed) => (who = pressed),
  });
  const topic = pickField<Topic>(
    OBSERVE.topic,
    TOPICS.map((one) => [one, ANALYSIS.topics[one]]),
  );
  const word = lineField(OBSERVE.word, LONGEST_NOTE);
  const signs = SIGNS_OF_WORK.map((sign) =>
    button(OBSERVE[sign], () => {
      ask({
        kind: 'observe',
        sign,
        topic: topic.chosen(),
        text: word.input.value.trim(),
        ...(who !== 'crew' && { seat: who }),
      });
      word.input.value = '';
    }),
  );
  const mark = button(OBSERVE.bookmark, () => {
    ask({ kind: 'bookmark', text: word.input.value.trim() });
    word.input.value = '';
  });
  const last = element('p', { class: 'quiet', role: 'status' });
  const folded = element(
    'details',
    {},
    element('summary', {}, OBSERVE.label),
    whom.group,
    element('div', { class: 'observe-row' }, topic.field, word.field),
    element('div', { class: 'observe-row' }, ...signs, mark),
    last,
  );
  const card = element('section', { class: 'card observe-card', 'aria-label': OBSERVE.label }, folded);
  let isLaid = false;
  return {
    card,
    refresh({ stage, you, review }) {
      card.hidden = stage !== 'descending';
      // whoever evaluates has nothing else to press
      if (!isLaid) folded.open = you.role === 'evaluator';
      isLaid = true;
      whom.refresh(who, true);
      const [key] = settings().keys.bookmark;
      say(mark, key === undefined ? OBSERVE.bookmark : OBSERVE.bookmarkKey(keyName(key)));
      const noted = review?.observations.at(-1);
      const marks = review?.moments.filter(({ kind }) => kind === 'bookmark').length ?? 0;
      const lines = [noted && OBSERVE.noted(observationWords(noted)), marks > 0 ? OBSERVE.marked(marks) : undefined];
      say(last, lines.filter((line) => line !== undefined).join(' '));
    },
  };
}
