import type { Drill } from '../../../engine/drill/index.ts';
import { LONGEST_NOTE, MEASURE_KINDS, type InjectMeasures, type MeasureKind } from '../../../engine/review/index.ts';
import { MEASURES } from '../../text/debrief.ts';
import { SEAT_NAMES } from '../../text/en.ts';
import { clock, seconds } from '../../text/numbers.ts';
import { drawing, element } from '../element.ts';
import type { Ask } from '../seatCard.ts';
import { lineField } from './fields.ts';
import { drawMeasures, measureWords, shownSeconds } from './measureScale.ts';
import { injectWords } from './momentWords.ts';

/** How the headings of an inject and of what is expected stand under the heading around them. */
type Heads = readonly ['h3', 'h4'] | readonly ['h4', 'h5'];

/** What was dealt, when it was noticed, named and done, and which expected responses were seen. `ask`: this member may put it right. */
export function injectList(
  measures: readonly InjectMeasures[],
  drill: Drill | undefined,
  ask: Ask | undefined,
  heads: Heads = ['h4', 'h5'],
): readonly HTMLElement[] {
  if (measures.length === 0) return [element('p', { class: 'quiet' }, MEASURES.none)];
  return measures.map((one, i) => injectPart(one, drill, { ask, id: `measure${i}`, heads }));
}

function injectPart(
  measures: InjectMeasures,
  drill: Drill | undefined,
  { ask, id, heads }: { readonly ask: Ask | undefined; readonly id: string; readonly heads: Heads },
): HTMLElement {
  const title = injectWords(measures.inject, drill);
  const drawn = drawMeasures(measures, id);
  return element(
    'article',
    { class: 'inject' },
    element(heads[0], {}, title, element('small', {}, ` ${MEASURES.sent(clock(measures.sentAfter))}`)),
    drawn && drawing(drawn.markup, { viewBox: drawn.viewBox, label: drawn.label, class: 'measure-scale' }),
    element('ul', { class: 'plain-list' }, ...MEASURE_KINDS.map((kind) => measureLine(measures, kind, title, ask))),
    responses(measures, drill, heads[1]),
  );
}

function measureLine(measures: InjectMeasures, kind: MeasureKind, title: string, ask: Ask | undefined): HTMLElement {
  const measured = measures.measures[kind];
  const { corrected } = measured;
  const seen = measured.seconds === undefined ? MEASURES.notObserved : MEASURES.after(seconds(measured.seconds));
  return element(
    'li',
    {},
    `${MEASURES.kinds[kind]}: `,
    element('strong', {}, measureWords(measured)),
    corrected &&
      element('small', {}, ` ${MEASURES.corrected(corrected.by, corrected.reason)}; ${MEASURES.wasSeen(seen)}`),
    ask && correction(measures, kind, { title, ask }),
  );
}

/** Folded away: the seconds as they should be, and why. */
function correction(
  { inject, measures }: InjectMeasures,
  measure: MeasureKind,
  { title, ask }: { readonly title: string; readonly ask: Ask },
): HTMLElement {
  const after = lineField(MEASURES.seconds, 8, { inputmode: 'decimal', pattern: '[0-9]*[.,]?[0-9]*' });
  const reason = lineField(MEASURES.reason, LONGEST_NOTE, { required: true });
  const now = shownSeconds(measures[measure]);
  after.input.value = now === undefined ? '' : now.toFixed(1);
  const form = element('form', {}, after.field, reason.field, element('button', { type: 'submit' }, MEASURES.save));
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const typed = after.input.value.trim().replace(',', '.');
    const figure = typed === '' ? {} : { seconds: Number(typed) };
    ask({ kind: 'correctMeasure', inject, measure, reason: reason.input.value.trim(), ...figure });
  });
  const label = MEASURES.putRightFully(MEASURES.kinds[measure], title);
  return element(
    'details',
    { class: 'put-right' },
    element('summary', { 'aria-label': label }, MEASURES.putRight),
    form,
  );
}

function responses(
  { inject, responses: expected }: InjectMeasures,
  drill: Drill | undefined,
  head: Heads[1],
): HTMLElement | undefined {
  if (expected.length === 0) return undefined;
  const texts = drill?.events.find(({ id }) => id === inject)?.responses ?? [];
  const lines = expected.map((response) => {
    const text = texts.find(({ id }) => id === response.id)?.text ?? response.id;
    return element(
      'li',
      {},
      `${mark(response)} ${SEAT_NAMES[response.seat]}: ${text} `,
      element('small', {}, seenWords(response)),
    );
  });
  return element(
    'div',
    {},
    element(head, {}, MEASURES.expected),
    element('ul', { class: 'plain-list ticked' }, ...lines),
  );
}

type Response = InjectMeasures['responses'][number];

function mark({ isSeen, seconds: after, within }: Response): string {
  if (after === undefined) return isSeen ? '☐' : '◇';
  return after <= within ? '☑' : '◪';
}

export function seenWords({ isSeen, seconds: after, within }: Response): string {
  const limit = MEASURES.within(seconds(within));
  if (after === undefined) return `${isSeen ? MEASURES.notSeen : MEASURES.forPeople}, ${limit}`;
  return `${after <= within ? MEASURES.seen : MEASURES.late} ${MEASURES.after(seconds(after))}, ${limit}`;
}
