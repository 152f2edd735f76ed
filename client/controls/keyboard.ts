import { actionOf, isCharacter, type Action } from '../settings/keys.ts';
import { settings } from '../settings/store.ts';
import type { CommandDesk } from './commands.ts';

/** What each action does at the desk: one press, one step; nothing has to be held down. */
export const ACTS: Readonly<Record<Action, (desk: CommandDesk) => void>> = {
  thrustMore: (desk) => desk.thrustStep(1),
  thrustLess: (desk) => desk.thrustStep(-1),
  leanLeft: (desk) => desk.lean('left'),
  leanRight: (desk) => desk.lean('right'),
  engineOff: (desk) => desk.thrustTo(0),
  upright: (desk) => desk.tiltTo(0),
  hold: (desk) => desk.toggleHold(),
};

/** Listens to the flight keys anywhere on the page except where text is typed. Returns the function that stops it. */
export function listenToKeys(desk: CommandDesk, isActive: () => boolean): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || !isActive()) return;
    if (event.target instanceof HTMLElement && isTyped(event.target)) return;
    const { keys, letters } = settings();
    const action = letters || !isCharacter(event.key) ? actionOf(keys, event.key) : undefined;
    if (action === undefined) return;
    // also keeps the page from scrolling, and a focused scale from moving the other control
    event.preventDefault();
    ACTS[action](desk);
  };
  document.addEventListener('keydown', onKey);
  return () => document.removeEventListener('keydown', onKey);
}

function isTyped(target: HTMLElement): boolean {
  if (target instanceof HTMLInputElement) return ['text', 'search', 'url'].includes(target.type);
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement || target.isContentEditable;
}
