import { actionOf, isCharacter, type Action } from '../settings/keys.ts';
import { settings } from '../settings/store.ts';
import type { CommandDesk } from './commands.ts';

/** What each action does at the desk, by hand or by orders: one press, one step; nothing has to be held down. */
export const ACTS: Readonly<Record<Action, (desk: CommandDesk) => void>> = {
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
};

/**
 * Listens to the flight keys anywhere on the page except where text is typed; figures that do nothing else go to `onFigure`. Returns the function that stops it.
 */
export function listenToKeys(
  desk: CommandDesk,
  isActive: () => boolean,
  onFigure: (figure: number) => void,
): () => void {
  return listen(isActive, (event, action) => {
    if (action === undefined && settings().letters && /^[1-9]$/.test(event.key)) onFigure(Number(event.key));
    if (action === undefined) return;
    // also keeps the page from scrolling, and a focused scale from moving the other control
    event.preventDefault();
    ACTS[action](desk);
  });
}

/** For whoever holds no control: of all keys those that hold and resume, and that bookmark. Returns the function that stops it. */
export function listenToWatchKeys(desk: CommandDesk, isActive: (action: 'hold' | 'bookmark') => boolean): () => void {
  return listen(
    () => true,
    (event, action) => {
      if ((action !== 'hold' && action !== 'bookmark') || !isActive(action)) return;
      event.preventDefault();
      ACTS[action](desk);
    },
  );
}

function listen(
  isActive: () => boolean,
  onPress: (event: KeyboardEvent, action: Action | undefined) => void,
): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || !isActive()) return;
    if (event.target instanceof HTMLElement && isTyped(event.target)) return;
    const { keys, letters } = settings();
    onPress(event, letters || !isCharacter(event.key) ? actionOf(keys, event.key) : undefined);
  };
  document.addEventListener('keydown', onKey);
  return () => document.removeEventListener('keydown', onKey);
}

function isTyped(target: HTMLElement): boolean {
  if (target instanceof HTMLInputElement) return ['text', 'search', 'url'].includes(target.type);
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement || target.isContentEditable;
}
