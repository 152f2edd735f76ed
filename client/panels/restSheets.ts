import type { TableView } from '../../engine/table/index.ts';
import type { PlayedPlan } from '../plan.ts';
import { SCORECARD, SEAT_NAMES } from '../text/en.ts';
import type { Announcer } from './announcer.ts';
import { button, element, say } from './element.ts';
import { facilitatorOf } from './facilitator.ts';
import { stepOf } from './debrief/debriefSheet.ts';
import type { LookingBack } from './debrief/lookingBack.ts';
import { createForkPart, forkWords } from './forkPart.ts';
import { createScorecard } from './scorecard.ts';
import type { SeatOffer } from './seatOffer.ts';
import { createPrintedHead, type PrintedHead } from './printedHead.ts';
import { verdictOf, decidingContact } from './verdict.ts';
import { createWorldsSheet, type WorldsSheet } from './worldsSheet.ts';

export interface RestSheets {
  readonly holder: HTMLElement;
  refresh(view: TableView): void;
  /** From the three worlds or the section back to the scorecard; false where the scorecard lies, or nothing. */
  stepBack(): boolean;
  /** Lays what lies there anew: its figures are to be written otherwise. */
  relay(): void;
  stop(): void;
}

/** What lies on the table at rest: the scorecard, the three worlds, the debrief or the report, or nothing while the section is looked at. */
export function createRestSheets(options: {
  /** As it is known now: at rest, with the true ground. */
  readonly plan: () => PlayedPlan;
  readonly announcer: Announcer;
  readonly again: () => void;
  /** Undefined at a shared table, and where nothing was to fail. */
  readonly another: (() => void) | undefined;
  readonly save: () => void;
  readonly leave: () => void;
  /** Of the table; undefined alone. */
  readonly code: string | undefined;
  /** The drawing of the section, for print. */
  readonly canvas: () => HTMLCanvasElement | null;
  /** Something was laid down or taken away: the drawing gets another part of the sheet. */
  readonly onLaid: () => void;
  readonly lookingBack: LookingBack;
  /** For whoever has no seat; undefined where nobody sits. */
  readonly offer: SeatOffer | undefined;
}): RestSheets {
  const { announcer, lookingBack } = options;
  const holder = element('div', { class: 'rest' });
  let shown: TableView['scorecard'];
  let isForkTold = false;
  let worlds: WorldsSheet | undefined;
  let backToCard: (() => void) | undefined;
  let layAgain: (() => void) | undefined;
  let printed: PrintedHead | undefined;
  /** What lies there and goes on changing: the debrief, or the report. */
  let follows: { refresh(view: TableView): void } | undefined;
  let step = 'scorecard';

  const clear = () => {
    worlds?.stop();
    worlds = undefined;
    backToCard = undefined;
    layAgain = undefined;
    printed?.remove();
    printed = undefined;
    follows = undefined;
    holder.replaceChildren();
    options.onLaid();
  };
  const showCard = (view: TableView) => {
    clear();
    const { scorecard } = view;
    if (scorecard === undefined) return;
    layAgain = () => {
      showCard(view);
      allowAgain(holder, view);
    };
    const sheet = createScorecard(scorecard, view, options.plan(), {
      again: options.again,
      another: options.another,
      save: options.save,
      worlds: () => showWorlds(view),
      look: () => showSection(view),
      leave: options.leave,
      ways: ways.buttons,
    });
    ways.refresh(view);
    holder.append(sheet);
    printed?.remove();
    printed = createPrintedHead({
      card: scorecard,
      plan: options.plan(),
      code: options.code,
      canvas: options.canvas,
      sheet,
    });
    sheet.querySelector('.sheet-body')?.prepend(printed.head);
    addFork(sheet, view);
    focusHeading(sheet);
    options.onLaid();
  };
  const showWorlds = (view: TableView) => {
    const touchdown = view.scorecard && decidingContact(view.scorecard)?.contact.arrival;
    if (touchdown === undefined) return;
    clear();
    layAgain = () => showWorlds(view);
    backToCard = () => showCard(view);
    worlds = createWorldsSheet({
      touchdown,
      plan: options.plan(),
      again: options.again,
      back: backToCard,
      leave: options.leave,
    });
    holder.append(worlds.sheet);
    allowAgain(holder, view);
    focusHeading(worlds.sheet);
  };
  const showSection = (view: TableView) => {
    clear();
    backToCard = () => showCard(view);
    const back = button(SCORECARD.back, backToCard, { class: 'primary back' });
    holder.append(element('div', { class: 'back-way' }, back));
    back.focus();
  };
  const lay = (laid: { readonly sheet: HTMLElement; refresh(view: TableView): void }, view: TableView) => {
    holder.append(laid.sheet);
    laid.refresh(view);
    follows = laid;
    focusHeading(laid.sheet);
    options.onLaid();
  };
  const showDebrief = (view: TableView) => {
    clear();
    layAgain = () => showDebrief(view);
    lay(lookingBack.layDebrief({ card: () => showCard(view), report: () => showReport(view) }), view);
  };
  const showReport = (view: TableView) => {
    clear();
    backToCard = () => (lookingBack.isOn() ? showDebrief(view) : showCard(view));
    layAgain = () => showReport(view);
    lay(lookingBack.layReport(backToCard), view);
  };
  const ways = lookingBack.createWays({ goBack: showDebrief, report: showReport });
  /** All screens follow whoever leads, wherever they were. */
  const followSteps = (view: TableView) => {
    const now = view.review?.step ?? 'scorecard';
    if (now === step) return;
    step = now;
    if (stepOf(view) === undefined) showReport(view);
    else if (holder.querySelector('.debrief') === null) showDebrief(view);
  };

  /** On the card and on the debrief, over what is pressed. */
  const layOffer = (view: TableView) => {
    const { offer } = options;
    offer?.refresh(view);
    const foot = holder.querySelector('.scorecard > .sheet-foot');
    if (offer === undefined || foot === null || foot.previousElementSibling === offer.part) return;
    foot.before(offer.part);
  };

  return {
    holder,
    refresh(view) {
      const card = view.stage === 'resolved' ? view.scorecard : undefined;
      if (card === undefined) {
        if (shown !== undefined) clear();
        shown = undefined;
        step = 'scorecard';
        lookingBack.forget();
        return;
      }
      lookingBack.follow(view);
      // a shared table sends the same card again with every view
      if (shown === undefined) {
        shown = card;
        isForkTold = view.fork !== undefined;
        const verdict = verdictOf(card, view.flight);
        announcer.announce(`${verdict.headline}. ${verdict.why}`, 'now');
        showCard(view);
      }
      // what was flown again comes later
      addFork(holder, view);
      if (view.fork !== undefined && !isForkTold) announcer.announce(forkWords(view.fork));
      isForkTold = view.fork !== undefined;
      allowAgain(holder, view);
      followSteps(view);
      follows?.refresh(view);
      ways.refresh(view);
      layOffer(view);
    },
    stepBack() {
      const isAway = backToCard !== undefined;
      backToCard?.();
      return isAway;
    },
    relay: () => layAgain?.(),
    stop: clear,
  };
}

/** Lays what was flown again onto the scorecard, before its figures, once it is there. */
function addFork(holder: HTMLElement, { fork, scorecard, flight }: TableView): void {
  const facts = holder.querySelector('.facts');
  if (fork === undefined || scorecard === undefined || facts === null || holder.querySelector('.fork') !== null) return;
  facts.before(createForkPart(fork, scorecard, flight));
}

/** Whoever runs the table starts another descent: to others the button says who that is. */
function allowAgain(holder: HTMLElement, view: TableView): void {
  const { runs } = view.you;
  for (const again of holder.querySelectorAll<HTMLButtonElement>('.again')) {
    again.disabled = !runs || view.startingIn !== undefined;
    const hint = again.nextElementSibling;
    if (!(hint instanceof HTMLElement)) continue;
    hint.hidden = runs;
    say(hint, SCORECARD.againHint(runnerWords(view)));
  }
}

/** Who runs the table: its facilitator, else the first of the seats that is taken, whoever is away passed over. */
function runnerWords(view: TableView): string {
  const facilitator = facilitatorOf(view);
  if (facilitator !== undefined) return facilitator.name;
  const { seats } = view;
  const taken = seats.filter(({ name }) => name !== undefined);
  const first = taken.find(({ connected }) => connected) ?? taken[0];
  return first?.name === undefined ? SCORECARD.againNobody : `${first.name} (${SEAT_NAMES[first.seat]})`;
}

/** Readers of the page start at the heading of what was laid on the table. */
function focusHeading(sheet: HTMLElement): void {
  sheet.querySelector<HTMLElement>('h2')?.focus({ preventScroll: true });
}
