import { LONGEST_NOTE, RATINGS, type Rating, type ReviewView } from '../../../engine/review/index.ts';
import type { TableView } from '../../../engine/table/index.ts';
import { RATINGS_TEXT } from '../../text/debrief.ts';
import { element } from '../element.ts';
import type { Ask } from '../seatCard.ts';
import { mayWrite, type DebriefPart } from './debriefPart.ts';
import { isTypingIn, lineField, pickField } from './fields.ts';
import { createRelaid } from './relaid.ts';

type Objective = NonNullable<TableView['drill']>['objectives'][number];

/** P, S, M or U for each objective, with its meaning and the evidence. A suggestion stands beside and is saved by nobody but who rates. */
export function createRatings(ask: Ask): DebriefPart {
  const rows = createRelaid(element('div', {}));
  return {
    part: element(
      'section',
      { class: 'ratings' },
      element('h3', {}, RATINGS_TEXT.title),
      element('p', { class: 'quiet' }, RATINGS_TEXT.note),
      rows.holder,
    ),
    refresh(view) {
      const { review, drill } = view;
      if (review === undefined) return;
      const isWriting = mayWrite(view);
      if (isWriting && isTypingIn(rows.holder)) return;
      const objectives = drill?.objectives ?? [];
      rows.lay([objectives, review.ratings, review.suggestions, isWriting], () =>
        objectives.length === 0
          ? [element('p', { class: 'quiet' }, RATINGS_TEXT.none)]
          : objectives.map((objective) => row(objective, review, isWriting ? ask : undefined)),
      );
    },
  };
}

function row(objective: Objective, { ratings, suggestions }: ReviewView, ask: Ask | undefined): HTMLElement {
  const rated = ratings.find((one) => one.objective === objective.id);
  const suggestion = suggestions.find((one) => one.objective === objective.id);
  const reasons = suggestion?.reasons.map((reason) => RATINGS_TEXT.reasons[reason]).join('; ');
  return element(
    'article',
    { class: 'rated' },
    element('h4', {}, objective.text),
    ratedLine(rated),
    ask && suggestion && element('p', { class: 'quiet' }, RATINGS_TEXT.suggested(suggestion.rating, reasons ?? '')),
    ask && rateForm(objective, rated, ask),
  );
}

/** What it was rated, with the meaning of the letter and the evidence. */
export function ratedLine(rated: ReviewView['ratings'][number] | undefined): HTMLElement {
  if (rated === undefined) return element('p', {}, RATINGS_TEXT.notRated);
  const { rating, evidence, by } = rated;
  return element(
    'p',
    {},
    element('strong', { class: 'rating-letter' }, rating),
    ` ${RATINGS_TEXT.words[rating]}. ${evidence} `,
    element('small', {}, RATINGS_TEXT.by(by)),
  );
}

function rateForm(objective: Objective, rated: ReviewView['ratings'][number] | undefined, ask: Ask): HTMLElement {
  // nothing is chosen before somebody chooses
  const rating = pickField<Rating | ''>(RATINGS_TEXT.rating, [
    ['', RATINGS_TEXT.choose],
    ...RATINGS.map((letter) => [letter, `${letter}: ${RATINGS_TEXT.words[letter]}`] as const),
  ]);
  rating.select.required = true;
  const evidence = lineField(RATINGS_TEXT.evidence, LONGEST_NOTE);
  if (rated !== undefined) {
    rating.choose(rated.rating);
    evidence.input.value = rated.evidence;
  }
  const save = element(
    'button',
    { type: 'submit', 'aria-label': RATINGS_TEXT.saveFully(objective.text) },
    RATINGS_TEXT.save,
  );
  const form = element('form', { class: 'rate-form' }, rating.field, evidence.field, save);
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const chosen = rating.chosen();
    if (chosen === '') return;
    // nobody is typing any more: the row follows what the table has
    save.focus();
    ask({ kind: 'rate', objective: objective.id, rating: chosen, evidence: evidence.input.value.trim() });
  });
  return form;
}
