import { button, element, say } from '../panels/element.ts';
import { exerciseLine } from '../panels/titleBlock.ts';
import { HALL_PAGE, VOTE } from '../text/hall.ts';
import { castVote, lookAtVotes, type AskedVote } from './voteRequests.ts';
import '../styles/hall.css';

/** How often a phone looks for the next question [ms]. */
const LOOK_MS = 2000;

/** Under which a tab keeps what it is known by: a reload is no second phone. */
const VOTER = 'kilter-voter';

/** A phone in a hall: one question, one button for each answer, and nothing else. */
export function layVote(holder: HTMLElement, leave: () => void): { end(): void } {
  document.title = VOTE.documentTitle;
  const code = (new URLSearchParams(location.search).get('vote') ?? '').toUpperCase().replaceAll(/[^A-Z]/g, '');
  const voter = voterOfTab();
  const question = element('h1', { tabindex: -1 }, VOTE.title);
  const choices = element('div', { class: 'vote-choices' });
  const status = element('p', { role: 'status' });
  let seen: AskedVote | undefined;
  let chosen: number | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let hasEnded = false;

  const show = (next: AskedVote) => {
    if (next.number !== seen?.number) {
      chosen = undefined;
      say(question, next.number === 0 ? VOTE.title : next.question);
      choices.replaceChildren(
        ...next.choices.map((words, i) => button(words, () => void cast(i), { 'aria-pressed': 'false' })),
      );
    }
    seen = next;
    for (const [i, node] of [...choices.querySelectorAll('button')].entries()) {
      node.disabled = !next.isOpen;
      node.setAttribute('aria-pressed', String(i === chosen));
    }
    const yours = chosen === undefined ? VOTE.press : VOTE.yours(next.choices[chosen] ?? '');
    say(status, next.number === 0 ? VOTE.wait : next.isOpen ? yours : VOTE.over);
  };
  const cast = async (choice: number) => {
    if (seen === undefined) return;
    const answer = await castVote(code, { number: seen.number, voter, choice });
    if (answer.ok) {
      chosen = choice;
      show(answer.value);
    } else say(status, answer.error === '' ? VOTE.lost : answer.error);
  };
  const look = async () => {
    const answer = await lookAtVotes(code);
    if (hasEnded) return;
    if (answer.ok) show(answer.value);
    else say(status, answer.error === '' ? VOTE.lost : answer.error);
    timer = setTimeout(() => void look(), LOOK_MS);
  };
  holder.replaceChildren(
    element(
      'div',
      { class: 'vote' },
      element('main', {}, question, choices, status),
      element('footer', {}, button(HALL_PAGE.back, leave), exerciseLine()),
    ),
  );
  question.focus();
  void look();
  return {
    end() {
      hasEnded = true;
      clearTimeout(timer);
    },
  };
}

/** A random word; where the browser keeps nothing, a new one with each load. */
function voterOfTab(): string {
  const fresh = [...crypto.getRandomValues(new Uint8Array(12))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');
  try {
    const kept = sessionStorage.getItem(VOTER) ?? fresh;
    sessionStorage.setItem(VOTER, kept);
    return kept;
  } catch {
    return fresh;
  }
}
