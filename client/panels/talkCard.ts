import type { TableView } from '../../engine/table/index.ts';
import type { CardActs } from '../controls/keyboard.ts';
import { POLL, TALK } from '../text/en.ts';
import type { Announcer } from './announcer.ts';
import { button, element, pressIfShown, say } from './element.ts';
import { HANDHELD } from './handheld.ts';
import { createPollCard } from './pollCard.ts';
import { createSayPanel } from './sayPanel.ts';
import type { Ask } from './seatCard.ts';
import { createSlips } from './slips.ts';
import { createTalkLog } from './talkLog.ts';
import { explained, term } from '../terms/term.ts';

interface TalkCard {
  readonly part: HTMLElement;
  /** What of it always lies there: the drawing keeps clear of it. */
  readonly stand: HTMLElement;
  refresh(view: TableView): void;
  /** Says the sentence that has this figure on it, where the card is shown. */
  press(figure: number): void;
  readonly acts: Pick<CardActs, 'poll'>;
}

/**
 * What the crew says to each other, under the drawing: the poll, slips that wait, what this seat can say, the log. Whoever flies alone with everything shown has
 * nobody to tell anything, and does not see it.
 */
export function createTalkCard(ask: Ask, announcer: Announcer, alone: boolean): TalkCard {
  const poll = createPollCard(ask, announcer);
  const slips = createSlips(ask, announcer);
  const sayPanel = createSayPanel((command) => {
    ask(command);
    // over a small page it is gone once it is said
    if (HANDHELD.matches) foldAway();
  });
  const log = createTalkLog();
  const loops = term('read back', '');
  const fold = button(TALK.hide, () => card.toggleAttribute('data-folded'), { class: 'fold' });
  const foldAway = () => {
    if (card.contains(document.activeElement)) fold.focus({ preventScroll: true });
    card.setAttribute('data-folded', '');
  };
  let laidFor: TableView['stage'] | undefined;
  let wasHandheld = HANDHELD.matches;
  let question: TableView['talk']['question'] = 'go';
  const call = explained(
    button('', () => ask({ kind: 'callPoll', question }), { class: 'call-poll' }),
    'poll',
  );
  const head = element(
    'div',
    { class: 'card-head' },
    element('h2', {}, term('callout', TALK.label)),
    sayPanel.head,
    element('em', {}, loops),
    call,
    fold,
  );
  const foot = element('div', { class: 'talk-foot' }, sayPanel.line, log.part);
  const body = element('div', { class: 'talk-body' }, sayPanel.list, foot);
  const card = element('section', { class: 'card talk-card', 'aria-label': TALK.label }, head, body);
  card.addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') foldAway();
  });
  const stand = element('div', { class: 'talk-stand' }, slips.tray, card);
  const part = element('div', { class: 'talk', hidden: true }, poll.card, stand);
  return {
    part,
    stand,
    acts: { poll: () => pressIfShown(call) },
    refresh(view) {
      const { stage, you, talk, drawnIn } = view;
      part.hidden = stage === 'gathering' || (alone && drawnIn === 'ink' && talk.calls.length === 0);
      if (part.hidden) return;
      // at rest the card of the descent is what is read, and on a phone what the seat works with
      if (stage !== laidFor) card.toggleAttribute('data-folded', stage === 'resolved' || HANDHELD.matches);
      else if (HANDHELD.matches && !wasHandheld) foldAway();
      laidFor = stage;
      wasHandheld = HANDHELD.matches;
      poll.refresh(view);
      slips.refresh(view);
      sayPanel.refresh(view);
      log.refresh(view);
      say(loops, TALK.loops(talk.openCount));
      ({ question } = talk);
      call.hidden = !you.decides || (talk.poll !== undefined && talk.poll.decision === undefined);
      say(call, POLL.call[question]);
      call.setAttribute('aria-label', POLL.callFully[question]);
      const isFolded = card.hasAttribute('data-folded');
      say(fold, isFolded ? TALK.open : TALK.hide);
      fold.setAttribute('aria-expanded', String(!isFolded));
    },
    press(figure) {
      if (!part.hidden) sayPanel.press(figure);
    },
  };
}
