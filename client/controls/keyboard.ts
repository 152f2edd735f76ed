import type { CommandDesk } from './commands.ts';

type Act = (desk: CommandDesk) => void;

/** One press, one step; nothing has to be held down. */
const ARROWS: Readonly<Record<string, Act>> = {
  ArrowUp: (desk) => desk.thrustStep(1),
  ArrowDown: (desk) => desk.thrustStep(-1),
  ArrowLeft: (desk) => desk.lean('left'),
  ArrowRight: (desk) => desk.lean('right'),
};

/** By the letter on the key, so that the list on the screen holds on every keyboard. */
const LETTERS: Readonly<Record<string, Act>> = {
  w: (desk) => desk.thrustStep(1),
  s: (desk) => desk.thrustStep(-1),
  a: (desk) => desk.lean('left'),
  d: (desk) => desk.lean('right'),
  x: (desk) => desk.thrustTo(0),
  c: (desk) => desk.tiltTo(0),
  h: (desk) => desk.toggleHold(),
};

interface KeyOptions {
  readonly isActive: () => boolean;
  /** Letters can be turned off by people whose speech input types them. */
  readonly lettersOn: () => boolean;
}

/** Listens to the flight keys anywhere on the page except where text is typed. Returns the function that stops it. */
export function listenToKeys(desk: CommandDesk, options: KeyOptions): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || !options.isActive()) return;
    if (event.target instanceof HTMLElement && isTyped(event.target)) return;
    const act = ARROWS[event.key] ?? (options.lettersOn() ? LETTERS[event.key.toLowerCase()] : undefined);
    if (act === undefined) return;
    // also keeps the page from scrolling, and a focused scale from moving the other control
    event.preventDefault();
    act(desk);
  };
  document.addEventListener('keydown', onKey);
  return () => document.removeEventListener('keydown', onKey);
}

function isTyped(target: HTMLElement): boolean {
  if (target instanceof HTMLInputElement) return ['text', 'search', 'url'].includes(target.type);
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement || target.isContentEditable;
}
