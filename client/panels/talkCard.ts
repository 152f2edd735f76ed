import type { TableView } from '../../engine/table/index.ts';
import type { CardActs } from '../controls/keyboard.ts';
import { POLL, TALK } from '../text/en.ts';
import type { Announcer } from './announcer.ts';
import { button, element, pressIfShown, say } from './element.ts';
import { createPollCard } from './pollCard.ts';
import { createSayPanel } from './sayPanel.ts';
import type { Ask } from './seatCard.ts';
import { createSlips } from './slips.ts';
import { createTalkLog } from './talkLog.ts';

/** A window as narrow as a phone, where the page scrolls. */
const NARROW = matchMedia('(max-width: 34.9375em)');

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
  const sayPanel = createSayPanel(ask);
  const log = createTalkLog();
  const loops = element('em', {});
  const fold = button(TALK.hide, () => card.toggleAttribute('data-folded'), { class: 'fold' });
  let laidFor: TableView['stage'] | undefined;
  let question: TableView['talk']['question'] = 'go';
  const call = button('', () => ask({ kind: 'callPoll', question }), { class: 'call-poll' });
  const head = element('div', { class: 'card-head' }, element('h2', {}, TALK.label), sayPanel.head, loops, call, fold);
  const foot = element('div', { class: 'talk-foot' }, sayPanel.line, log.part);
  const body = element('div', { class: 'talk-body' }, sayPanel.list, foot);
  const card = element('section', { class: 'card talk-card', 'aria-label': TALK.label }, head, body);
  const stand = element('div', { class: 'talk-stand' }, slips.list, card);
  const part = element('div', { class: 'talk', hidden: true }, poll.card, stand);
  return {
    part,
    stand,
    acts: { poll: () => pressIfShown(call) },
    refresh(view) {
      const { stage, you, talk, drawnIn } = view;
      part.hidden = stage === 'gathering' || (alone && drawnIn === 'ink' && talk.calls.length === 0);
      if (part.hidden) return;
      // at rest the card of the descent is what is read, and on a phone the controls come first
      if (stage !== laidFor) card.toggleAttribute('data-folded', stage === 'resolved' || NARROW.matches);
      laidFor = stage;
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
