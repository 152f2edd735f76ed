import type { Seat, TableView } from '../../engine/table/index.ts';
import {
  ANSWERS_TO,
  LONGEST_REASON,
  type AnswerView,
  type PollAnswer,
  type PollView,
} from '../../engine/talk/index.ts';
import { createAbortButton } from '../controls/abortButton.ts';
import { POLL, SEAT_NAMES } from '../text/en.ts';
import type { Announcer } from './announcer.ts';
import { button, element, say } from './element.ts';
import type { Ask } from './seatCard.ts';

/** A card that is dealt to everybody: what is asked, what this seat answers, what all have answered once they are in, and the decision. */
export function createPollCard(
  ask: Ask,
  announcer: Announcer,
): { readonly card: HTMLElement; refresh(view: TableView): void } {
  const question = element('span', {});
  const by = element('em', {});
  const body = element('div', { class: 'poll-body' });
  const card = element(
    'section',
    { class: 'card poll', 'aria-label': POLL.label, hidden: true },
    element('h2', { class: 'card-head' }, question, by),
    body,
  );
  const acts: Acts = {
    ask,
    abort: createAbortButton(() => {
      ask({ kind: 'decide', decision: 'noGo' });
      ask({ kind: 'abort' });
    }),
  };
  const tell = createTeller(announcer);
  let laid = '';
  return {
    card,
    refresh(view) {
      const { poll } = view.talk;
      card.hidden = poll === undefined;
      tell(poll);
      if (poll === undefined) return;
      say(question, POLL.asks[poll.question]);
      say(by, POLL.by(SEAT_NAMES[poll.by]));
      // laid anew where something changed: a reason that is being typed is kept
      const key = JSON.stringify([poll, view.you.seat, view.you.decides, view.stage, view.aborting]);
      if (key === laid) return;
      laid = key;
      const typed = card.querySelector('input')?.value ?? '';
      const focus = nameOfFocus(card);
      body.replaceChildren(...parts(poll, view, acts, typed));
      if (focus !== undefined) card.querySelector<HTMLElement>(`[data-part="${focus}"]`)?.focus();
    },
  };
}

interface Acts {
  readonly ask: Ask;
  /** No go, and up again. */
  readonly abort: ReturnType<typeof createAbortButton>;
}

function nameOfFocus(card: HTMLElement): string | undefined {
  const { activeElement } = document;
  return activeElement instanceof HTMLElement && card.contains(activeElement)
    ? activeElement.dataset['part']
    : undefined;
}

function parts(poll: PollView, view: TableView, acts: Acts, typed: string): readonly HTMLElement[] {
  const { seat, decides } = view.you;
  const isOpen = poll.decision === undefined;
  return [
    ...(isOpen && !poll.isIn && seat !== undefined && seat !== poll.by ? [answerRow(poll, seat, acts.ask, typed)] : []),
    standing(poll, seat),
    ...(poll.isIn || !isOpen ? [answerList(poll.answers)] : []),
    ...(isOpen && decides ? [decideRow(poll, view, acts)] : []),
  ];
}

/** What a seat says, and why. */
function answerRow({ question, answers }: PollView, seat: Seat, ask: Ask, typed: string): HTMLElement {
  const own = answers.find((one) => one.seat === seat);
  const reason = element('input', {
    type: 'text',
    maxlength: LONGEST_REASON,
    autocomplete: 'off',
    'aria-label': POLL.reason,
    placeholder: POLL.reason,
    'data-part': 'reason',
  });
  reason.value = typed;
  const give = (answer: PollAnswer) =>
    button(POLL.answers[answer], () => ask({ kind: 'answerPoll', answer, reason: reason.value }), {
      'aria-pressed': own?.answer === answer ? 'true' : 'false',
      'data-part': answer,
    });
  return element('div', { class: 'poll-answer' }, ...ANSWERS_TO[question].map(give), reason);
}

function standing({ isIn, decision, unanswered, answers }: PollView, seat: Seat | undefined): HTMLElement {
  const own = answers.find((one) => one.seat === seat);
  const waits = POLL.waits(unanswered.map((one) => SEAT_NAMES[one]).join(', '));
  const words =
    decision !== undefined
      ? POLL.decided(POLL.answers[decision])
      : isIn
        ? POLL.isIn
        : own === undefined
          ? waits
          : `${POLL.yours(POLL.answers[own.answer])} ${waits}`;
  return element('p', { class: 'poll-standing' }, words);
}

function answerList(answers: readonly AnswerView[]): HTMLElement {
  const lines = answers.map(({ seat, answer, reason, because }) => {
    const why = because === undefined ? reason : POLL.because[because];
    return element(
      'li',
      { 'data-answer': answer },
      element('span', {}, SEAT_NAMES[seat]),
      element('strong', {}, POLL.answers[answer]),
      element('em', {}, why),
    );
  });
  return element('ul', { class: 'poll-answers' }, ...lines);
}

function decideRow({ question, isIn }: PollView, view: TableView, { ask, abort }: Acts): HTMLElement {
  const [go] = ANSWERS_TO[question];
  const choices = ANSWERS_TO[question].map((decision) => {
    const press = button(POLL.answers[decision], () => ask({ kind: 'decide', decision }), {
      'data-part': `decide ${decision}`,
    });
    // no answer counts as no: to go on, all are heard
    press.disabled = decision === go && !isIn;
    return press;
  });
  const mayAbort = view.stage === 'descending' && !view.aborting && question === 'go';
  abort.refresh(mayAbort);
  return element(
    'div',
    { class: 'poll-decide', role: 'group', 'aria-label': POLL.decide },
    element('span', {}, POLL.decide),
    ...choices,
    ...(mayAbort ? abort.nodes : []),
  );
}

/** Says aloud that something is asked, that all are in, and what was decided. */
function createTeller(announcer: Announcer): (poll: PollView | undefined) => void {
  let known: PollView | undefined;
  return (poll) => {
    const before = known?.id === poll?.id ? known : undefined;
    known = poll;
    if (poll === undefined) return;
    if (poll.decision !== undefined && before?.decision === undefined)
      announcer.announce(POLL.decided(POLL.answers[poll.decision]), 'now');
    else if (poll.isIn && before?.isIn !== true)
      announcer.announce(
        POLL.toldIn(
          poll.answers.map(({ seat, answer }) => POLL.line(SEAT_NAMES[seat], POLL.answers[answer])).join(', '),
        ),
        'now',
      );
    else if (before === undefined) announcer.announce(POLL.told(SEAT_NAMES[poll.by], POLL.asks[poll.question]), 'now');
  };
}
