import type { BriefView, Command, FlightMode, Seat, TableView } from '../../engine/table/index.ts';
import { CommandDesk } from '../controls/commands.ts';
import { createControlPanel } from '../controls/controlPanel.ts';
import { followPads } from '../controls/gamepad.ts';
import { listenToKeys } from '../controls/keyboard.ts';
import type { TableLink } from '../net/index.ts';
import { createPlanReader, type PlayedPlan } from '../plan.ts';
import { createSectionGame } from '../scenes/sectionGame.ts';
import { onSettings, settings, wantsStill } from '../settings/store.ts';
import { saveRecord } from '../saveRecord.ts';
import { createTableSound } from '../sound/tableSound.ts';
import { SECTION, SETTINGS, STATUS, TABLE } from '../text/en.ts';
import { figureOf } from '../views/lander/figure.ts';
import { Announcer } from './announcer.ts';
import { chooseAtTable } from './chooseAtTable.ts';
import { createCoach } from './coach.ts';
import { createCountdown } from './countdown.ts';
import { element, leaveButton } from './element.ts';
import { keepFocus } from './keepFocus.ts';
import { createLeaveQuestion } from './leaveQuestion.ts';
import { createLobby } from './lobby.ts';
import { createBrief } from './drill/briefSheet.ts';
import { createLookingBack } from './debrief/lookingBack.ts';
import { createDrillParts } from './drill/drillParts.ts';
import { createAnewCheck, FIGURES_MS, isOtherPage, type LaidTable, type LayActions } from './laidPage.ts';
import { createNotice, createTeller, type Note } from './notice.ts';
import { createPause } from './pause.ts';
import { createOrdersTeller } from './ordersTeller.ts';
import { readingContext } from './readings.ts';
import { createRestSheets } from './restSheets.ts';
import { createSeatCards } from './seatCards.ts';
import { createSeatOffer } from './seatOffer.ts';
import { leadsToSettings, openSettings, settingsButton } from './settingsSheet.ts';
import { createTalkCard } from './talkCard.ts';
import { createTaskCards } from './taskCards.ts';
import { createTitleBlock } from './titleBlock.ts';

/**
 * Lays the whole table on the page and keeps it true to the link until the person leaves. `another`: flies alone on, with another failure.
 */
export function layTable(
  holder: HTMLElement,
  link: TableLink,
  first: TableView,
  { onLeave, onOtherPlan }: LayActions,
  another?: () => void,
): LaidTable {
  const readPlan = createPlanReader(link);
  const plan = readPlan(first.plan);
  const planNow = () => readPlan((link.view ?? first).plan);
  const announcer = new Announcer();
  const talkAnnouncer = new Announcer();
  const alertAnnouncer = new Announcer('alert');
  const notice = element('p', { class: 'notice', hidden: true });
  const note = createNotice(notice, announcer);
  const desk = new CommandDesk(link, note);
  const leave = () => {
    stop();
    link.leave();
    onLeave();
  };
  const question = createLeaveQuestion(desk, leave);
  const section = element('div', {
    class: 'section',
    role: 'img',
    'aria-label': SECTION.label(plan.siteName, plan.setup.lander.name),
  });
  const canvas = () => section.querySelector('canvas');
  const parts = createParts({
    note,
    mode: first.plan.choice.mode,
    drill: first.drill,
    link,
    plan,
    planNow,
    desk,
    announcer,
    talkAnnouncer,
    alertAnnouncer,
    leave,
    another,
    canvas,
    onLaid: () => game.refit(),
  });
  const heading = element('h1', { class: 'unseen', tabindex: -1 }, TABLE.heading(first.plan.title));
  const left = element(
    'div',
    { class: 'left' },
    parts.coach.strip,
    parts.drill.turn,
    ...parts.tasks.cards,
    parts.controls.panel,
  );
  const right = element(
    'div',
    { class: 'right' },
    parts.seats.own,
    parts.seats.others,
    parts.drill.ways,
    element('div', { class: 'ways' }, leaveButton(leave), settingsButton()),
    parts.title.block,
  );
  const page = element(
    'main',
    { class: 'desk', 'data-kind': link.kind, 'data-drill': first.drill !== undefined },
    heading,
    section,
    element('div', { class: 'frame', 'aria-hidden': 'true' }),
    left,
    right,
    parts.talk.part,
    notice,
    parts.drill.dealt,
    parts.over,
    parts.countdown.strip,
    question.sheet,
    ...parts.drill.sheets,
    announcer.node,
    talkAnnouncer.node,
    alertAnnouncer.node,
  );
  holder.replaceChildren(page);
  // the button that led here is gone: readers of the page go on from its heading
  heading.focus();
  // one reading for every figure on the page, so that no two of them differ
  let figured: TableView | undefined = first;
  const game = createSectionGame(
    section,
    {
      view: () => link.view,
      replayed: () => parts.lookingBack.moment(),
      figures: () => figured,
      terrain: () => planNow().setup.terrain,
      figure: figureOf(plan.setup.lander),
      gravity: plan.setup.gravity,
      maxThrust: plan.setup.lander.engine.maxThrust,
      fullPropellant: plan.setup.propellant,
      still: wantsStill,
    },
    () => [
      left,
      right,
      parts.coach.strip,
      parts.drill.turn,
      parts.drill.ways,
      // one by one: on a phone what holds them has no place of its own
      ...parts.talk.stand.children,
      ...parts.rest.holder.querySelectorAll('.scorecard, .back-way'),
    ],
  );
  const isFlying = () => link.view?.stage === 'descending' && document.querySelector('dialog[open]') === null;
  const endKeys = listenToKeys(desk, {
    isActive: isFlying,
    seat: () => link.view?.you.seat,
    acts: { ...parts.controls.acts, ...parts.talk.acts, ...parts.tasks.acts },
    onFigure: (figure) => parts.talk.press(figure),
  });
  const pads = followPads(desk);
  const pause = createPause(desk);
  page.addEventListener('click', (event) => {
    if (!leadsToSettings(event)) return;
    pause.begin(link.view);
    openSettings(() => pause.end());
  });

  const heard = createTableSound(plan.setup.lander.engine.maxThrust);
  const show = (view: TableView) => {
    figured = view;
    page.dataset['stage'] = view.stage;
    page.dataset['role'] = view.you.role;
    const hoverPercent = hover(view, plan);
    parts.seats.refresh(view);
    parts.talk.refresh(view);
    page.toggleAttribute('data-task', parts.tasks.refresh(view));
    parts.title.refresh(view);
    parts.countdown.refresh(view);
    parts.controls.refresh(view, hoverPercent);
    parts.coach.refresh(view, hoverPercent);
    parts.lobby.refresh(view);
    parts.drill.refresh(view);
    page.toggleAttribute('data-turns', view.turn !== undefined);
    parts.rest.refresh(view);
    heard.follow(view);
    announcer.flush();
    talkAnnouncer.flush();
    alertAnnouncer.flush();
    pads.follow(view.stage !== 'resolved' && document.querySelector('dialog[open]') === null);
  };
  const refresh = () => {
    const { view } = link;
    if (view !== undefined) keepFocus(page, () => show(view));
  };
  const tell = createTeller(announcer, note);
  const tellOrders = createOrdersTeller(announcer, note);
  const isAnew = createAnewCheck();
  const unsubscribe = link.subscribe(() => {
    const view = link.view;
    if (view !== undefined && isAnew(view)) for (const one of [announcer, talkAnnouncer, alertAnnouncer]) one.forget();
    if (view !== undefined && isOtherPage(view, first)) {
      stop();
      onOtherPlan(view);
      return;
    }
    if (view !== undefined && page.dataset['stage'] !== view.stage) refresh();
    tell(link);
    if (view !== undefined) tellOrders(view);
    page.dataset['line'] = link.state;
    if (link.state === 'closed') {
      stop();
      onLeave(link.closedBecause ?? STATUS.closed);
    }
  });
  const timer = setInterval(refresh, FIGURES_MS);
  let hadSound = settings().sound;
  const endSettings = onSettings(() => {
    const { sound } = settings();
    if (sound !== hadSound) note(sound ? SETTINGS.soundOn : SETTINGS.soundOff);
    hadSound = sound;
    parts.rest.relay();
    refresh();
  });
  // the marks of the controls answer a press at once; everything else keeps its pace
  const answer = () => {
    if (link.view !== undefined) parts.controls.refresh(link.view, hover(link.view, plan));
  };
  document.addEventListener('keydown', answer);
  parts.controls.panel.addEventListener('click', answer);
  refresh();
  const mayLeave = () => !parts.rest.stepBack() && (link.view === undefined || question.mayLeave(link.view));
  return { mayLeave, leave };

  function stop(): void {
    clearInterval(timer);
    document.removeEventListener('keydown', answer);
    unsubscribe();
    endKeys();
    pads.follow(false);
    endSettings();
    heard.end();
    game.end();
    parts.rest.stop();
  }
}

function createParts(options: {
  readonly note: Note;
  readonly mode: FlightMode;
  readonly drill: BriefView | undefined;
  readonly link: TableLink;
  readonly plan: PlayedPlan;
  readonly planNow: () => PlayedPlan;
  readonly desk: CommandDesk;
  readonly announcer: Announcer;
  readonly talkAnnouncer: Announcer;
  readonly alertAnnouncer: Announcer;
  readonly leave: () => void;
  readonly another: (() => void) | undefined;
  readonly canvas: () => HTMLCanvasElement | null;
  readonly onLaid: () => void;
}) {
  const { note, mode, link, plan, planNow, desk, announcer, leave, another, canvas, onLaid } = options;
  const { talkAnnouncer, alertAnnouncer } = options;
  const { engine } = plan.setup.lander;
  const context = readingContext(plan.setup.lander);
  const takeSeat = (seat: Seat) => desk.ask({ kind: 'takeSeat', seat });
  const letIn = (member: string) => desk.ask({ kind: 'letIn', member });
  const ask = (command: Command) => desk.ask(command);
  const over = element('div', { class: 'over' });
  const begin = () => desk.ask({ kind: 'begin' });
  const choose = () => {
    if (link.view !== undefined) chooseAtTable(link, link.view, note);
  };
  const { drill } = options;
  const lobby =
    drill === undefined
      ? createLobby({ link, takeSeat, ask, begin, choose, leave })
      : createBrief({ link, drill, takeSeat, ask, leave });
  const lookingBack = createLookingBack({ link, ask, plan: planNow, readings: context, note, announcer, leave });
  const again = () => lookingBack.beforeGoing(() => desk.ask({ kind: 'again' }));
  const save = () =>
    void link.recordText().then((text) => {
      if (!text.ok) note(text.error.reason);
      else if (link.view !== undefined) saveRecord(text.value, link.view.plan.choice);
    });
  const rest = createRestSheets({
    save,
    plan: planNow,
    announcer,
    again,
    another,
    leave: () => lookingBack.beforeGoing(leave),
    code: link.code,
    canvas,
    onLaid,
    lookingBack,
    offer: createSeatOffer(takeSeat),
  });
  over.append(lobby.sheet, rest.holder, lookingBack.question);
  return {
    over,
    lookingBack,
    lobby,
    rest,
    seats: createSeatCards({ context, alertAnnouncer, takeSeat, letIn, ask, alone: link.kind === 'local' }),
    talk: createTalkCard(ask, talkAnnouncer, link.kind === 'local'),
    tasks: createTaskCards({ ask, plan: planNow }),
    drill: createDrillParts({ drill, ask, announcer, leave, alone: link.kind === 'local' }),
    countdown: createCountdown(ask, announcer, drill !== undefined),
    title: createTitleBlock({
      site: plan.siteName,
      lander: plan.setup.lander.name,
      world: plan.world,
      code: link.code,
    }),
    coach: createCoach(announcer),
    controls: createControlPanel(desk, engine.maxThrust, mode),
  };
}

/** Thrust that holds the present speed, in percent of the most. */
function hover(view: TableView, plan: PlayedPlan): number {
  const upward = Math.max(0.2, Math.cos(view.flight.angle));
  return (100 * view.flight.mass * plan.setup.gravity) / (plan.setup.lander.engine.maxThrust * upward);
}
