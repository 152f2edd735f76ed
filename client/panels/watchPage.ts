import type { TableView } from '../../engine/table/index.ts';
import { CommandDesk } from '../controls/commands.ts';
import type { TableLink } from '../net/index.ts';
import { createPlanReader, type PlayedPlan } from '../plan.ts';
import { saveRecord } from '../saveRecord.ts';
import type { LastBelief } from '../scenes/belief.ts';
import { createSectionGame } from '../scenes/sectionGame.ts';
import { onSettings, wantsStill } from '../settings/store.ts';
import { SECTION, STATUS, TABLE } from '../text/en.ts';
import { figureOf } from '../views/lander/figure.ts';
import { Announcer } from './announcer.ts';
import { chooseAtTable } from './chooseAtTable.ts';
import { createLookingBack } from './debrief/lookingBack.ts';
import { createBrief } from './drill/briefSheet.ts';
import { element } from './element.ts';
import { createAnewCheck, FIGURES_MS, isOtherPage, type LaidTable, type LayActions } from './laidPage.ts';
import { keepFocus } from './keepFocus.ts';
import { createLeaveQuestion } from './leaveQuestion.ts';
import { createLobby } from './lobby.ts';
import { createNotice, createTeller, type Note } from './notice.ts';
import { readingContext } from './readings.ts';
import { createRestSheets } from './restSheets.ts';
import type { Ask } from './seatCard.ts';
import { leadsToSettings, openSettings } from './settingsSheet.ts';

/** What the parts of such a page are made from. */
export interface WatchContext {
  readonly link: TableLink;
  readonly first: TableView;
  readonly plan: () => PlayedPlan;
  readonly desk: CommandDesk;
  readonly ask: Ask;
  readonly announcer: Announcer;
  readonly leave: () => void;
}

/** What lies around the drawing for somebody who holds nothing. */
export interface WatchParts {
  readonly kind: 'control' | 'room';
  readonly nodes: readonly HTMLElement[];
  /** Which of them the drawing keeps clear of. */
  readonly covering: readonly Element[];
  /** What is drawn of a view, where that is not what is shown to everybody. */
  readonly drawn?: (view: TableView) => TableView;
  /** What the crew believes, to be drawn in pencil beside it. */
  readonly belief?: (view: TableView) => LastBelief | undefined;
  refresh(view: TableView): void;
  stop?(): void;
}

/** Lays the page of somebody who sits nowhere, and keeps it true to the link until they leave. */
export function layWatchPage(
  holder: HTMLElement,
  link: TableLink,
  first: TableView,
  actions: LayActions,
  createParts: (context: WatchContext) => WatchParts,
): LaidTable {
  const readPlan = createPlanReader(link);
  const planNow = () => readPlan((link.view ?? first).plan);
  const plan = planNow();
  const announcer = new Announcer();
  const notice = element('p', { class: 'notice', hidden: true });
  const note = createNotice(notice, announcer);
  const desk = new CommandDesk(link, note);
  const leave = () => {
    stop();
    link.leave();
    actions.onLeave();
  };
  const question = createLeaveQuestion(desk, leave);
  const context = {
    link,
    first,
    plan: planNow,
    desk,
    ask: (command) => desk.ask(command),
    announcer,
    leave: () => {
      if (link.view === undefined || question.mayLeave(link.view)) leave();
    },
  } satisfies WatchContext;
  const parts = createParts(context);
  const section = element('div', {
    class: 'section',
    role: 'img',
    'aria-label': SECTION.label(plan.siteName, plan.setup.lander.name),
  });
  const gathering = createGathering(context, note);
  const lookingBack = createLookingBack({ ...context, note, readings: readingContext(plan.setup.lander) });
  const rest = createRestSheets({
    plan: planNow,
    announcer,
    again: () => lookingBack.beforeGoing(() => desk.ask({ kind: 'again' })),
    another: undefined,
    save: () => void saveHere(link, note),
    leave: () => lookingBack.beforeGoing(leave),
    lookingBack,
    offer: undefined,
    code: link.code,
    canvas: () => section.querySelector('canvas'),
    onLaid: () => game.refit(),
  });
  const heading = element('h1', { class: 'unseen', tabindex: -1 }, TABLE.heading(first.plan.title));
  const page = element(
    'main',
    { class: 'desk watch', 'data-kind': link.kind, 'data-page': parts.kind },
    heading,
    section,
    element('div', { class: 'frame', 'aria-hidden': 'true' }),
    ...parts.nodes,
    notice,
    element('div', { class: 'over' }, gathering.sheet, rest.holder, lookingBack.question),
    question.sheet,
    announcer.node,
  );
  holder.replaceChildren(page);
  heading.focus();
  const drawn = once(parts.drawn ?? ((view: TableView) => view));
  let figured: TableView = first;
  const game = createSectionGame(
    section,
    {
      view: () => link.view && drawn(link.view),
      replayed: () => lookingBack.moment(),
      figures: () => drawn(figured),
      ...(parts.belief && { belief: () => link.view && parts.belief?.(link.view) }),
      terrain: () => planNow().setup.terrain,
      figure: figureOf(plan.setup.lander),
      gravity: plan.setup.gravity,
      maxThrust: plan.setup.lander.engine.maxThrust,
      fullPropellant: plan.setup.propellant,
      still: wantsStill,
    },
    () => [...parts.covering, ...rest.holder.querySelectorAll('.scorecard, .back-way')],
  );
  page.addEventListener('click', (event) => {
    if (leadsToSettings(event)) openSettings();
  });
  const show = (view: TableView) => {
    figured = view;
    page.dataset['stage'] = view.stage;
    parts.refresh(view);
    gathering.refresh(view);
    rest.refresh(view);
    announcer.flush();
  };
  const refresh = () => {
    const { view } = link;
    if (view !== undefined) keepFocus(page, () => show(view));
  };
  const tell = createTeller(announcer, note);
  const isAnew = createAnewCheck();
  const unsubscribe = link.subscribe(() => {
    const { view } = link;
    if (view !== undefined && isAnew(view)) announcer.forget();
    if (view !== undefined && isOtherPage(view, first)) {
      stop();
      actions.onOtherPlan(view);
      return;
    }
    if (view !== undefined && page.dataset['stage'] !== view.stage) refresh();
    tell(link);
    page.dataset['line'] = link.state;
    if (link.state === 'closed') {
      stop();
      actions.onLeave(link.closedBecause ?? STATUS.closed);
    }
  });
  const timer = setInterval(refresh, FIGURES_MS);
  const endSettings = onSettings(() => {
    rest.relay();
    refresh();
  });
  refresh();
  return { mayLeave: () => !rest.stepBack() && (link.view === undefined || question.mayLeave(link.view)), leave };

  function stop(): void {
    clearInterval(timer);
    unsubscribe();
    endSettings();
    parts.stop?.();
    game.end();
    rest.stop();
  }
}

/** Whoever watches sits nowhere: there is nothing to press for it. */
function noSeat(): void {}

/** The sheet on which a crew gathers: with the brief of a drill, where one is played. */
function createGathering({ link, first, desk, ask, leave }: WatchContext, note: Note) {
  const { drill } = first;
  if (drill !== undefined) return createBrief({ link, drill, takeSeat: noSeat, ask, leave });
  const choose = () => {
    if (link.view !== undefined) chooseAtTable(link, link.view, note);
  };
  return createLobby({ link, takeSeat: noSeat, ask, begin: () => desk.ask({ kind: 'begin' }), choose, leave });
}

async function saveHere(link: TableLink, note: Note): Promise<void> {
  const text = await link.recordText();
  if (!text.ok) note(text.error.reason);
  else if (link.view !== undefined) saveRecord(text.value, link.view.plan.choice);
}

/** The same answer for the same view: what is drawn is asked for sixty times a second. */
function once(of: (view: TableView) => TableView): (view: TableView) => TableView {
  let last: { readonly view: TableView; readonly drawn: TableView } | undefined;
  return (view) => {
    if (last?.view !== view) last = { view, drawn: of(view) };
    return last.drawn;
  };
}
