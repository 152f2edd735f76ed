import type { Amendment } from '../../engine/record/index.ts';
import { ACTION_STATES, LONGEST_NOTE, MEASURE_KINDS } from '../../engine/review/index.ts';
import { injectWords } from '../panels/debrief/momentWords.ts';
import { button, element, say } from '../panels/element.ts';
import { MEASURES, RATINGS_TEXT } from '../text/debrief.ts';
import { ratingWords, RUN } from '../text/logbook.ts';
import { seconds } from '../text/numbers.ts';
import type { PlayedRun } from './playedRun.ts';
import { withLabel } from './withLabel.ts';

type Review = NonNullable<PlayedRun['track']['review']>;
type Action = Review['actions'][number];

/** Goes on with the plan of the run; resolves to what is wrong, '' when it was done and the page shows it. */
export type Amend = (command: Amendment) => Promise<string>;

/** Objectives with their ratings, measures, and the plan of improvement; that is edited in place where `amend` is there. */
export function createReviewPart({ track: { review }, plan }: PlayedRun, amend: Amend | undefined): HTMLElement {
  const node = element('section', { class: 'run-review' }, element('h2', {}, RUN.review));
  if (review === undefined) return node;
  const { drill } = plan;
  if (drill !== undefined) node.append(element('h3', {}, RUN.objectives), objectiveList(review, drill.objectives));
  node.append(element('h3', {}, RUN.measures), measureTable(review, drill));
  node.append(element('h3', {}, RUN.plan), ...(amend === undefined ? readPlan(review) : editPlan(review, amend)));
  return node;
}

function objectiveList(
  { ratings }: Review,
  objectives: readonly { readonly id: string; readonly text: string }[],
): HTMLElement {
  const items = objectives.map(({ id, text }) => {
    const rated = ratings.find(({ objective }) => objective === id);
    const words = rated === undefined ? RATINGS_TEXT.notRated : ratingWords(rated.rating);
    const evidence = rated === undefined || rated.evidence === '' ? '' : `: ${rated.evidence}`;
    return element('li', {}, text, element('strong', {}, ` ${words}`), evidence);
  });
  return element('ul', { class: 'run-objectives' }, ...items);
}

function measureTable({ measures }: Review, drill: PlayedRun['plan']['drill']): HTMLElement {
  if (measures.length === 0) return element('p', {}, MEASURES.none);
  const head = MEASURE_KINDS.map((kind) => element('th', { scope: 'col' }, MEASURES.kinds[kind]));
  const rows = measures.map(({ inject, measures: measured }) => {
    const cells = MEASURE_KINDS.map((kind) => {
      const { seconds: seen, corrected } = measured[kind];
      const after = corrected === undefined ? seen : corrected.seconds;
      return element('td', {}, after === undefined ? MEASURES.notObserved : MEASURES.after(seconds(after)));
    });
    return element('tr', {}, element('th', { scope: 'row' }, injectWords(inject, drill)), ...cells);
  });
  return element(
    'table',
    { class: 'run-table' },
    element('thead', {}, element('tr', {}, element('td', {}), ...head)),
    element('tbody', {}, ...rows),
  );
}

function readPlan({ goal, actions }: Review): readonly HTMLElement[] {
  const items = actions.map(({ text, owner, due, state }) =>
    element('li', {}, [text, owner, due, state].filter(Boolean).join(' · ')),
  );
  return [
    ...(goal === '' ? [] : [element('p', {}, `${RUN.goal}: ${goal}`)]),
    items.length === 0 ? element('p', {}, RUN.noPlan) : element('ul', {}, ...items),
    element('p', { class: 'hint' }, RUN.planReadOnly),
  ];
}

function editPlan({ goal, actions }: Review, amend: Amend): readonly HTMLElement[] {
  const status = element('p', { class: 'hint', role: 'status' });
  const send: Amend = async (command) => {
    const problem = await amend(command);
    say(status, problem === '' ? RUN.saved : problem);
    return problem;
  };
  return [
    goalForm(goal, send),
    ...actions.map((action) => actionForm(action, send)),
    actionForm(undefined, send),
    status,
  ];
}

function goalForm(goal: string, send: Amend): HTMLElement {
  const text = writtenField(goal);
  const form = element('form', { class: 'run-goal' }, withLabel(RUN.goal, text), submit(RUN.save));
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    void send({ kind: 'setGoal', text: text.value });
  });
  return form;
}

/** An action of the plan, or, without one, room for the next. */
function actionForm(action: Action | undefined, send: Amend): HTMLElement {
  const text = writtenField(action?.text ?? '', true);
  const owner = writtenField(action?.owner ?? '');
  const due = writtenField(action?.due ?? '');
  const state = element(
    'select',
    {},
    ...ACTION_STATES.map((each) =>
      element('option', { value: each, selected: each === (action?.state ?? 'open') }, each),
    ),
  );
  const isRule = element('input', { type: 'checkbox', checked: action?.isRule === true });
  const drop =
    action &&
    button(RUN.drop, () => void send({ kind: 'dropAction', id: action.id }), {
      'aria-label': RUN.dropFully(action.text),
    });
  const form = element(
    'form',
    { class: 'run-action' },
    withLabel(RUN.action, text),
    withLabel(RUN.owner, owner),
    withLabel(RUN.due, due),
    withLabel(RUN.state, state),
    element('label', { class: 'run-rule' }, isRule, RUN.rule),
    element('span', { class: 'run-action-ways' }, submit(action === undefined ? RUN.add : RUN.save), drop),
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const chosen = ACTION_STATES.find((each) => each === state.value) ?? 'open';
    const said = { text: text.value, owner: owner.value, due: due.value, state: chosen, isRule: isRule.checked };
    void send({ kind: 'setAction', ...(action && { id: action.id }), ...said });
  });
  return form;
}

function writtenField(value: string, required = false): HTMLInputElement {
  return element('input', { type: 'text', value, maxlength: LONGEST_NOTE, required });
}

function submit(words: string): HTMLElement {
  return element('button', { type: 'submit' }, words);
}
