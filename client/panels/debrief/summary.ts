import { LONGEST_NOTE, type ReviewView } from '../../../engine/review/index.ts';
import { OBSERVE, SUMMARY } from '../../text/debrief.ts';
import { SEAT_NAMES } from '../../text/en.ts';
import { clock } from '../../text/numbers.ts';
import { button, element } from '../element.ts';
import type { Ask } from '../seatCard.ts';
import { mayWrite, type DebriefPart } from './debriefPart.ts';
import { follow, lineField } from './fields.ts';
import { createPlanTable } from './planTable.ts';
import { createRatings } from './ratings.ts';
import { createRelaid } from './relaid.ts';

/** Last step: one goal, what is to be done, and how the objectives were met. */
export function createSummary(ask: Ask): DebriefPart {
  const goal = createGoal(ask);
  const plan = createPlanTable(ask);
  const ratings = createRatings(ask);
  const observations = createRelaid(element('section', {}));
  return {
    part: element('section', { class: 'debrief-part' }, goal.part, plan.part, ratings.part, observations.holder),
    refresh(view) {
      for (const part of [goal, plan, ratings]) part.refresh(view);
      const noted = view.review?.observations ?? [];
      observations.holder.hidden = noted.length === 0;
      observations.lay(noted, () => [
        element('h3', {}, OBSERVE.title),
        element('ul', { class: 'plain-list' }, ...noted.map((one) => element('li', {}, observationWords(one)))),
      ]);
    },
  };
}

export function observationWords({ after, seat, sign, text }: ReviewView['observations'][number]): string {
  const who = seat === undefined ? OBSERVE.crew : SEAT_NAMES[seat];
  return `${clock(after)} ${who}, ${OBSERVE.signs[sign]}${text === '' ? '' : `: ${text}`}`;
}

function createGoal(ask: Ask): DebriefPart {
  const line = lineField(SUMMARY.goal, LONGEST_NOTE);
  let laid = '';
  const keep = () => {
    const text = line.input.value.trim();
    if (text !== laid) ask({ kind: 'setGoal', text });
  };
  // nobody loses what they typed by going on
  line.input.addEventListener('change', keep);
  const save = button(SUMMARY.save, keep, { 'aria-label': SUMMARY.saveFully(SUMMARY.goal) });
  const written = element('form', { class: 'goal-form' }, line.field, save);
  written.addEventListener('submit', (event) => {
    event.preventDefault();
    save.click();
  });
  const read = createRelaid(element('p', { class: 'agreed' }));
  const head = element('h3', {}, SUMMARY.goal);
  return {
    part: element('div', {}, head, written, read.holder),
    refresh(view) {
      const isWriting = mayWrite(view);
      const text = view.review?.goal ?? '';
      laid = text;
      head.hidden = isWriting;
      written.hidden = !isWriting;
      read.holder.hidden = isWriting;
      follow(line.input, text);
      read.lay(text, () => [text === '' ? SUMMARY.goalNone : text]);
    },
  };
}
