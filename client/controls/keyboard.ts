import type { Seat } from '../../engine/table/index.ts';
import { actionOf, isCharacter, repeats, type Action, type DeskAction } from '../settings/keys.ts';
import { changeSettings, settings } from '../settings/store.ts';
import type { CommandDesk } from './commands.ts';

/** What each action does at the desk, by hand or by orders: one press, one step; nothing has to be held down. */
export const ACTS: Readonly<Record<DeskAction, (desk: CommandDesk) => void>> = {
  thrustMore: (desk) => (desk.isByOrders ? desk.orders.descentRateStep(-1) : desk.thrustStep(1)),
  thrustLess: (desk) => (desk.isByOrders ? desk.orders.descentRateStep(1) : desk.thrustStep(-1)),
  leanLeft: (desk) => (desk.isByOrders ? desk.orders.acrossStep('left') : desk.lean('left')),
  leanRight: (desk) => (desk.isByOrders ? desk.orders.acrossStep('right') : desk.lean('right')),
  engineOff: (desk) => (desk.isByOrders ? desk.orders.descentRateTo(0) : desk.thrustTo(0)),
  upright: (desk) => (desk.isByOrders ? desk.orders.acrossNone() : desk.tiltTo(0)),
  driftOrLean: (desk) => desk.orders.switchAcross(),
  hold: (desk) => desk.toggleHold(),
  readBack: (desk) => desk.answerLoop(),
  bookmark: (desk) => desk.ask({ kind: 'bookmark', text: '' }),
  sound: () => changeSettings({ sound: !settings().sound }),
};

/** What the cards of a page do by a key, besides what the desk does. */
export type CardActs = Readonly<Record<Exclude<Action, DeskAction>, () => void>>;

/**
 * Listens to the keys of whoever sits at a seat, anywhere on the page except where text is typed; figures that do nothing else go to `onFigure`. Returns the function that
 * stops it.
 */
export function listenToKeys(
  desk: CommandDesk,
  page: {
    readonly isActive: () => boolean;
    readonly seat: () => Seat | undefined;
    readonly acts: CardActs;
    readonly onFigure: (figure: number) => void;
  },
): () => void {
  return listen(page.isActive, page.seat, (event, action) => {
    if (action === undefined && settings().letters && /^[1-9]$/.test(event.key)) page.onFigure(Number(event.key));
    if (action === undefined) return;
    // also keeps the page from scrolling, and a focused scale from moving the other control
    event.preventDefault();
    if (isOfDesk(action)) ACTS[action](desk);
    else page.acts[action]();
  });
}

function isOfDesk(action: Action): action is DeskAction {
  return action in ACTS;
}

/** For whoever holds no control: of all keys those that hold and resume, and that bookmark. Returns the function that stops it. */
export function listenToWatchKeys(desk: CommandDesk, isActive: (action: 'hold' | 'bookmark') => boolean): () => void {
  return listen(
    () => true,
    () => undefined,
    (event, action) => {
      if ((action !== 'hold' && action !== 'bookmark') || !isActive(action)) return;
      event.preventDefault();
      ACTS[action](desk);
    },
  );
}

function listen(
  isActive: () => boolean,
  seat: () => Seat | undefined,
  onPress: (event: KeyboardEvent, action: Action | undefined) => void,
): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || !isActive()) return;
    if (event.target instanceof HTMLElement && isTyped(event.target)) return;
    const { keys, letters } = settings();
    const action = letters || !isCharacter(event.key) ? actionOf(keys, event.key, seat()) : undefined;
    // a key that is held down must not do twice what it asks twice about
    if (event.repeat && action !== undefined && !repeats(action)) return;
    onPress(event, action);
  };
  document.addEventListener('keydown', onKey);
  return () => document.removeEventListener('keydown', onKey);
}

function isTyped(target: HTMLElement): boolean {
  if (target instanceof HTMLInputElement) return ['text', 'search', 'url'].includes(target.type);
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement || target.isContentEditable;
}
