import type { Drill } from '../../../engine/drill/index.ts';
import { playedModel, type TableView } from '../../../engine/table/index.ts';
import { listenToWatchKeys } from '../../controls/keyboard.ts';
import type { TableLink } from '../../net/index.ts';
import { beliefOf } from '../../scenes/belief.ts';
import { CONTROL } from '../../text/control.ts';
import { element, leaveButton } from '../element.ts';
import { createRealStop } from '../drill/realStop.ts';
import { ruleCardButton } from '../drill/ruleCard.ts';
import { createTurnStrip } from '../drill/turnStrip.ts';
import type { LaidTable, LayActions } from '../laidPage.ts';
import { settingsButton } from '../settingsSheet.ts';
import { exerciseLine } from '../titleBlock.ts';
import { readDrill } from '../../readDrill.ts';
import { readingContext } from '../readings.ts';
import { layWatchPage, type WatchContext, type WatchParts } from '../watchPage.ts';
import { createConductCard } from './conductCard.ts';
import { createEventStrip } from './eventStrip.ts';
import { createObserveCard } from './observeCard.ts';
import { createSeatStrip } from './seatStrip.ts';
import { createSidePanel } from './sidePanel.ts';
import { termed } from '../../terms/term.ts';

/** The page of whoever runs a table, and of whoever evaluates: what is true in ink, what the crew believes in pencil, and the event list. */
export function layControlPage(holder: HTMLElement, link: TableLink, first: TableView, actions: LayActions): LaidTable {
  return layWatchPage(holder, link, first, actions, createControlParts);
}

function createControlParts(context: WatchContext): WatchParts {
  const { link, first, plan, desk, ask, announcer, leave } = context;
  const drill = drillOf(link, first);
  const events = createEventStrip(ask, drill);
  const seats = createSeatStrip(readingContext(plan().setup.lander));
  const turn = createTurnStrip(ask, announcer);
  const conduct = createConductCard(desk, turn.strip);
  const side = createSidePanel(ask, link.code);
  const observe = createObserveCard(ask);
  const stop = createRealStop({ ask, announcer, leave });
  const [rulesKey, rulesCard] = first.drill === undefined ? [] : ruleCardButton(first.drill);
  const left = element('div', { class: 'control-left' }, events.card);
  const right = element('div', { class: 'control-right' }, conduct.card, observe.card, side.card);
  const foot = element(
    'footer',
    { class: 'control-foot' },
    exerciseLine(),
    element('span', {}, ...termed(CONTROL.truth, 'believed', 'believes')),
    element('div', { class: 'ways' }, rulesKey, stop.button, leaveButton(leave), settingsButton()),
  );
  const readMargin = createTrueMargin(plan);
  const endKeys = listenToWatchKeys(
    desk,
    (action) =>
      (action === 'bookmark' || link.view?.you.role === 'facilitator') &&
      link.view?.stage === 'descending' &&
      document.querySelector('dialog[open]') === null,
  );
  return {
    kind: 'control',
    nodes: [left, seats.strip, right, foot, ...(rulesCard === undefined ? [] : [rulesCard]), ...stop.sheets],
    covering: [left, seats.strip, right],
    drawn: (view) => inInk(view, readMargin),
    belief: (view) => (view.stage === 'descending' ? beliefOf(view) : undefined),
    refresh(view) {
      events.refresh(view);
      seats.refresh(view);
      turn.refresh(view);
      conduct.refresh(view);
      side.refresh(view);
      observe.refresh(view);
      stop.refresh(view);
    },
    stop: endKeys,
  };
}

/** The drill with all that it hides, once the table has given it. */
function drillOf(link: TableLink, { drill }: TableView): () => Drill | undefined {
  let known: Drill | undefined;
  if (drill !== undefined) void readDrill(link).then((read) => (known = read));
  return () => known;
}

/** The margin as it truly is: on the true ground, for the true descent. */
function createTrueMargin(plan: WatchContext['plan']): (truth: TableView['flight']) => TableView['margin'] {
  let laid: ReturnType<WatchContext['plan']>['laid'] | undefined;
  let gauge: ReturnType<typeof playedModel.createMarginGauge> | undefined;
  return (truth) => {
    const now = plan().laid;
    if (gauge === undefined || now !== laid) gauge = playedModel.createMarginGauge(now);
    laid = now;
    return gauge(truth);
  };
}

/** The same view with what is true in place of what is believed. */
function inInk(view: TableView, readMargin: (truth: TableView['flight']) => TableView['margin']): TableView {
  const { control } = view;
  if (control === undefined || view.drawnIn === 'ink') return view;
  const { map: _map, spread: _spread, ...rest } = view;
  return { ...rest, drawnIn: 'ink', flight: control.truth, margin: readMargin(control.truth) };
}
