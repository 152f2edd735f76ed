import { ACTION_STATES, LONGEST_NOTE, LONGEST_WORD, type Action } from '../../../engine/review/index.ts';
import type { TableView } from '../../../engine/table/index.ts';
import { SUMMARY } from '../../text/debrief.ts';
import { button, element } from '../element.ts';
import type { Ask } from '../seatCard.ts';
import { mayWrite, type DebriefPart } from './debriefPart.ts';
import { isTypingIn, lineField, pickField } from './fields.ts';
import { createRelaid } from './relaid.ts';
import { term } from '../../terms/term.ts';

/** The improvement plan: who does what by when. Edited in place by who writes, read by all. */
export function createPlanTable(ask: Ask): DebriefPart {
  const rows = createRelaid(element('div', {}));
  const fresh = actionForm(undefined, ask);
  return {
    part: element(
      'section',
      { class: 'plan' },
      element('h3', {}, term('improvement plan', SUMMARY.actions)),
      rows.holder,
      fresh,
    ),
    refresh(view) {
      const actions = view.review?.actions ?? [];
      const isWriting = mayWrite(view);
      fresh.hidden = !isWriting;
      // somebody who is typing in a row is not disturbed; it follows once they are done
      if (isWriting && isTypingIn(rows.holder)) return;
      rows.lay([actions, isWriting], () => laid(actions, isWriting ? ask : undefined));
    },
  };
}

function laid(actions: readonly Action[], ask: Ask | undefined): readonly HTMLElement[] {
  if (ask === undefined || actions.length === 0) return [actionTable(actions)];
  return actions.map((action) => actionForm(action, ask));
}

/** The plan to be read. */
export function actionTable(actions: TableReview['actions']): HTMLElement {
  if (actions.length === 0) return element('p', { class: 'quiet' }, SUMMARY.actionsNone);
  const heads = [SUMMARY.text, SUMMARY.owner, SUMMARY.due, SUMMARY.status];
  return element(
    'table',
    { class: 'actions' },
    element('thead', {}, element('tr', {}, ...heads.map((words) => element('th', { scope: 'col' }, words)))),
    element(
      'tbody',
      {},
      ...actions.map(({ text, owner, due, state, isRule }) =>
        element(
          'tr',
          {},
          element('td', {}, isRule ? `${SUMMARY.rule}: ${text}` : text),
          ...[owner, due, SUMMARY.states[state]].map((words) => element('td', {}, words)),
        ),
      ),
    ),
  );
}

type TableReview = NonNullable<TableView['review']>;

/** One action to be written; without one, a new one. */
function actionForm(action: Action | undefined, ask: Ask): HTMLElement {
  const text = lineField(SUMMARY.text, LONGEST_NOTE, { required: true });
  const owner = lineField(SUMMARY.owner, LONGEST_WORD);
  const due = lineField(SUMMARY.due, LONGEST_WORD);
  const status = pickField(
    SUMMARY.status,
    ACTION_STATES.map((state) => [state, SUMMARY.states[state]]),
  );
  const rule = element('input', { type: 'checkbox' });
  const save = element('button', { type: 'submit' }, action === undefined ? SUMMARY.add : SUMMARY.save);
  if (action !== undefined) {
    text.input.value = action.text;
    owner.input.value = action.owner;
    due.input.value = action.due;
    status.choose(action.state);
    rule.checked = action.isRule;
    save.setAttribute('aria-label', SUMMARY.saveFully(action.text));
  }
  const drop =
    action &&
    button(SUMMARY.drop, () => ask({ kind: 'dropAction', id: action.id }), {
      'aria-label': SUMMARY.dropFully(action.text),
    });
  const form = element(
    'form',
    { class: 'action-form' },
    text.field,
    owner.field,
    due.field,
    status.field,
    element('label', { class: 'checked' }, rule, SUMMARY.isRule),
    save,
    drop,
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    ask({
      kind: 'setAction',
      ...(action && { id: action.id }),
      text: text.input.value.trim(),
      owner: owner.input.value.trim(),
      due: due.input.value.trim(),
      state: status.chosen(),
      isRule: rule.checked,
    });
    // nobody is typing any more: the row follows what the table has
    save.focus();
    if (action === undefined) form.reset();
  });
  return form;
}
