import type { TableView } from '../../../engine/table/index.ts';
import { LONGEST_NOTE, LONGEST_WORD } from '../../../engine/review/index.ts';
import { HOT_WASH } from '../../text/debrief.ts';
import { clock } from '../../text/numbers.ts';
import { element, say } from '../element.ts';
import type { Ask } from '../seatCard.ts';
import { lineField } from './fields.ts';
import { createRelaid } from './relaid.ts';
import type { DebriefPart } from './debriefPart.ts';
import { createWorkload } from './workload.ts';

/** How long a hot wash is meant to take [s]. Nothing happens at its end. */
const MEANT = 120;

/** One word and one thing of everybody, each on the own device; what others wrote shows once the own is in. */
export function createHotWash(ask: Ask): DebriefPart {
  const word = lineField(HOT_WASH.word, LONGEST_WORD, { required: true });
  const thing = lineField(HOT_WASH.thing, LONGEST_NOTE);
  const give = element('button', { type: 'submit', class: 'primary' }, HOT_WASH.give);
  const form = element('form', { class: 'wash-form' }, word.field, thing.field, give);
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    if (word.input.value.trim() === '') return;
    ask({ kind: 'washHot', word: word.input.value.trim(), thing: thing.input.value.trim() });
  });
  const left = element('p', { class: 'quiet' });
  const count = element('p', { class: 'quiet' });
  const others = createRelaid(element('div', {}));
  const workload = createWorkload(ask);
  const since = performance.now();
  return {
    part: element(
      'section',
      { class: 'debrief-part' },
      element('p', { class: 'why' }, HOT_WASH.lead),
      form,
      element('div', { class: 'wash-state' }, left, count),
      others.holder,
      workload.part,
    ),
    refresh(view) {
      workload.refresh(view);
      const rest = MEANT - (performance.now() - since) / 1000;
      // by tens: a clock that counts every second hurries
      say(left, rest > 0 ? HOT_WASH.left(clock(Math.ceil(rest / 10) * 10)) : HOT_WASH.over);
      const { washed, isIn, people } = washOf(view);
      say(count, HOT_WASH.written(washed.length, people));
      say(give, isIn ? HOT_WASH.again : HOT_WASH.give);
      others.lay([isIn, washed], () => [
        isIn ? washedList(washed) : element('p', { class: 'quiet' }, washed.length > 0 ? HOT_WASH.hidden : ''),
      ]);
    },
  };
}

type Washed = NonNullable<TableView['review']>['hotWash'];

function washOf({ review, you, others }: TableView): {
  readonly washed: Washed;
  readonly isIn: boolean;
  readonly people: number;
} {
  const washed = review?.hotWash ?? [];
  // a room screen has no hands
  const people = [you, ...others].filter(({ role }) => role !== 'room screen').length;
  const isIn = you.role === 'room screen' ? washed.length > 0 : washed.some(({ name }) => name === you.name);
  return { washed, isIn, people };
}

export function washedList(washed: Washed): HTMLElement {
  if (washed.length === 0) return element('p', { class: 'quiet' }, HOT_WASH.none);
  return element(
    'ul',
    { class: 'washed' },
    ...washed.map(({ name, word, thing }) =>
      element('li', {}, element('strong', {}, word), element('span', {}, thing), element('small', {}, name)),
    ),
  );
}
