import type { HeldControls, TableView } from '../../engine/table/index.ts';
import { COACH, SOURCE_NAMES } from '../text/en.ts';
import { withKeys } from '../text/keyNames.ts';
import { percent } from '../text/numbers.ts';
import { adviseFlying, adviseSensors, adviseWaiting, type Advice } from './advice.ts';
import { adviseOrders } from './adviceOrders.ts';
import type { Announcer } from './announcer.ts';
import { element, say } from './element.ts';
import { facilitatorOf } from './facilitator.ts';
import { descentRateWords, driftWords, leanWords } from './readings.ts';

/** A piece of advice stands at least this long, so that it can be read and done [ms]. */
const STANDS_MS = 2200;
/** What cannot wait. */
const URGENT: readonly Advice['key'][] = [
  'contact',
  'dry',
  'engineOff',
  'fallen',
  'gaveWay',
  'handedOver',
  'held',
  'orderDry',
  'orderSlower',
];
/** Whoever sits down for the first time is told the controls before anything else, for this long [ticks]. */
const WELCOME_TICKS = 210;
/** What a stand-in left is said for this long, or until it is set otherwise [ms]. */
const HANDOVER_MS = 8000;
/** A rejected source is said for this long [ms]. */
const REJECTION_MS = 5000;

export interface Coach {
  readonly strip: HTMLElement;
  refresh(view: TableView, hoverPercent: number): void;
}

/** A strip of paper on the table that says the one thing to do now. */
export function createCoach(announcer: Announcer): Coach {
  const words = element('p', {});
  const strip = element('section', { class: 'coach', 'aria-label': COACH.label }, words);
  let key: Advice['key'] | undefined;
  let since = 0;
  let descents = 0;
  let lastTick = Infinity;
  const handover = createHandover();
  const rejection = createRejection();

  const adviceNow = (view: TableView, hoverPercent: number): Advice => {
    const handedOver = handover(view);
    if (handedOver !== undefined) return handedOver;
    if (view.aborting) return { key: 'aborting', words: COACH.aborting };
    if (view.held) return { key: 'held', words: heldWords(view) };
    const { holds } = view.you;
    const rejected = rejection(view);
    if (view.sources !== undefined) return adviseSensors(view);
    if (rejected !== undefined) return rejected;
    if (!holds.thrust && !holds.tilt) {
      const waiting = adviseWaiting(view);
      if (waiting !== undefined) return waiting;
      if (view.you.role === 'observer') return { key: 'watching', words: COACH.observing };
      if (!view.you.mayTakeSeat) return { key: 'waiting', words: COACH.waiting };
      const task = seatTask(view.you.seat);
      if (task !== undefined) return task;
      const pilot = view.seats.find((seat) => seat.seat === 'flying')?.name;
      const words = pilot === undefined ? COACH.watching : COACH.crewFlies(pilot);
      return { key: 'watching', words };
    }
    const isFirst = descents <= 1 && view.flight.tick < WELCOME_TICKS;
    const isByOrders = view.orders !== undefined;
    if (isFirst && holds.thrust && holds.tilt)
      return isByOrders
        ? { key: 'welcomeOrders', words: COACH.welcomeOrders }
        : { key: 'welcome', words: COACH.welcome };
    return isByOrders ? adviseOrders(view) : adviseFlying(view, hoverPercent, holds);
  };

  return {
    strip,
    refresh(view, hoverPercent) {
      // in turns another strip stands in its place
      strip.hidden = view.stage !== 'descending' || view.turn !== undefined;
      if (strip.hidden) return;
      if (view.flight.tick < lastTick) descents += 1;
      lastTick = view.flight.tick;
      const advice = adviceNow(view, hoverPercent);
      const now = performance.now();
      const isNew = advice.key !== key;
      // what was left no longer stands once it is set
      const mayWait = key !== undefined && key !== 'handedOver' && !URGENT.includes(advice.key);
      if (isNew && mayWait && now - since < STANDS_MS) return;
      if (isNew) {
        since = now;
        announcer.announce(withKeys(advice.words));
      }
      key = advice.key;
      strip.dataset['advice'] = advice.key;
      say(words, withKeys(advice.words));
    },
  };
}

/** Where somebody else runs the table, it is they who go on. */
function heldWords(view: TableView): string {
  const facilitator = facilitatorOf(view);
  return facilitator === undefined ? COACH.held : COACH.heldUntil(facilitator.name);
}

/** For a seat that holds no controls: what it is there for. */
function seatTask(seat: TableView['you']['seat']): Advice | undefined {
  if (seat === 'lead') return { key: 'leadTask', words: COACH.leadTask };
  if (seat === 'propellant') return { key: 'propellantTask', words: COACH.propellantTask };
  return seat === 'site' ? { key: 'siteTask', words: COACH.siteTask } : undefined;
}

/** Tells everybody but Sensors, for some seconds, that a source is believed no more. */
function createRejection(): (view: TableView) => Advice | undefined {
  let known: TableView['rejected'] = [];
  let told: Advice | undefined;
  let until = 0;
  return ({ rejected }) => {
    const fresh = rejected.find((source) => !known.includes(source));
    known = rejected;
    if (fresh !== undefined) {
      told = { key: 'sourceRejected', words: COACH.sourceRejected(SOURCE_NAMES[fresh].toLowerCase()) };
      until = performance.now() + REJECTION_MS;
    }
    return performance.now() < until ? told : undefined;
  };
}

/** Tells whoever comes to the controls, or back to them, how the stand-in left them. */
function createHandover(): (view: TableView) => Advice | undefined {
  let seat: TableView['you']['seat'] | 'nowhere yet' = 'nowhere yet';
  let when: 'again' | 'now' = 'again';
  let until: number | undefined;
  return (view) => {
    const { you } = view;
    const { standInLeft } = you;
    // a page that was reloaded begins in the seat that it kept
    const isBack = seat === you.seat || seat === 'nowhere yet';
    seat = you.seat;
    if (standInLeft === undefined) {
      until = undefined;
      return undefined;
    }
    if (until === undefined) when = isBack ? 'again' : 'now';
    until ??= performance.now() + HANDOVER_MS;
    if (performance.now() > until) return undefined;
    return { key: 'handedOver', words: COACH.handedOver(when, leftWords(standInLeft, view)) };
  };
}

function leftWords(left: HeldControls, { commanded, orders }: TableView): readonly string[] {
  if (orders !== undefined) return leftOrders(left, orders);
  const { thrustPercent, tiltDeg } = commanded;
  const lean = tiltDeg === 0 ? COACH.leftUpright : COACH.leftLeaning(leanWords(tiltDeg));
  return [...(left.thrust ? [COACH.leftThrust(percent(thrustPercent / 100))] : []), ...(left.tilt ? [lean] : [])];
}

function leftOrders(
  left: HeldControls,
  { descentRateTenths, driftTenths }: NonNullable<TableView['orders']>,
): readonly string[] {
  // a stand-in orders drifts alone
  const words = [
    left.thrust ? COACH.leftDescent(descentRateWords(descentRateTenths / 10)) : '',
    left.tilt ? COACH.leftDrift(driftWords(driftTenths / 10)) : '',
  ];
  return words.filter((some) => some !== '');
}
