import { FLIES } from '../../levels/index.ts';
import { codeInAddress } from '../codeAddress.ts';
import { button, element, say } from '../panels/element.ts';
import { exerciseLine } from '../panels/titleBlock.ts';
import { FLIGHT, HALL_PAGE, VOTE } from '../text/hall.ts';
import { createPhonePilot } from './phonePilot.ts';
import { castVote, lookAtVotes, type AskedVote } from './voteRequests.ts';
import '../styles/hall.css';

/** How often a phone looks for the next question [ms]. */
const LOOK_MS = 2000;

/** Under which a tab keeps what it is known by: a reload is no second phone. */
const VOTER = 'kilter-voter';

/** A phone in a hall: one question, one button for each answer; and where all fly the same descent, that. */
export function layVote(holder: HTMLElement, leave: () => void): { end(): void } {
  document.title = VOTE.documentTitle;
  const code = (codeInAddress('vote', location) ?? '').toUpperCase().replaceAll(/[^A-Z]/g, '');
  const voter = voterOfTab();
  const question = element('h1', { tabindex: -1 }, VOTE.title);
  const choices = element('div', { class: 'vote-choices' });
  const status = element('p', { role: 'status' });
  let seen: AskedVote | undefined;
  let chosen: number | undefined;
  let pressed: number | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let hasEnded = false;

  const page = element(
    'div',
    { class: 'vote' },
    element('main', {}, question, choices, status),
    element('footer', {}, button(HALL_PAGE.back, leave), exerciseLine()),
  );
  const layPage = () => {
    holder.replaceChildren(page);
    question.focus();
  };
  const pilot = createPhonePilot({ holder, code, voter, say: (words) => say(status, words), back: layPage });
  const show = (next: AskedVote) => {
    if (next.number !== seen?.number) {
      chosen = undefined;
      pilot.end();
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
    if (next.startsInMs === undefined) say(status, wordsOf(next, chosen));
    else pilot.follow(next, chosen === FLIES);
  };
  const cast = async (choice: number) => {
    if (seen === undefined) return;
    const { number } = seen;
    pressed = choice;
    // the last press is the vote, and on what is asked now
    const isWanted = () => !hasEnded && pressed === choice && seen?.number === number;
    const answer = await castVote(code, { number, voter, choice }, isWanted);
    if (!isWanted()) return;
    if (answer.ok) {
      chosen = choice;
      if (answer.value.descent !== undefined && choice === FLIES) pilot.prepare();
      show(answer.value);
    } else say(status, answer.error === '' ? VOTE.lost : answer.error);
  };
  const look = async () => {
    const answer = await lookAtVotes(code, pilot.isFlying ? { voter } : {});
    if (hasEnded) return;
    if (answer.ok) show(answer.value);
    else if (!pilot.isFlying) say(status, answer.error === '' ? VOTE.lost : answer.error);
    timer = setTimeout(() => void look(), LOOK_MS);
  };
  layPage();
  void look();
  return {
    end() {
      hasEnded = true;
      clearTimeout(timer);
      pilot.end();
    },
  };
}

/** While nothing flies. */
function wordsOf({ number, isOpen, descent, choices }: AskedVote, chosen: number | undefined): string {
  if (number === 0) return VOTE.wait;
  if (!isOpen) return VOTE.over;
  if (descent !== undefined && chosen !== undefined) return chosen === FLIES ? FLIGHT.waits : FLIGHT.watches;
  if (descent !== undefined) return FLIGHT.asks;
  return chosen === undefined ? VOTE.press : VOTE.yours(choices[chosen] ?? '');
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
