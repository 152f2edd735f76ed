import { parseSettings, type Settings } from './settings.ts';

const KEY = 'kilter-settings';

let current = read();
const listeners = new Set<() => void>();

/** The settings of this person now. */
export function settings(): Settings {
  return current;
}

/** Takes effect at once and is kept by the browser; where its storage is blocked or full, until the page goes. */
export function changeSettings(part: Partial<Settings>): void {
  current = { ...current, ...part };
  try {
    localStorage.setItem(KEY, JSON.stringify(current));
  } catch {
    // they hold for as long as the page is open
  }
  for (const listener of listeners) listener();
}

/** Called after each change. Returns the function that ends it. */
export function onSettings(listener: () => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}

/** Whether this person asked, here or of their device, for no movement that is only for the eye. */
export function wantsStill(): boolean {
  return current.motion === 'less' || matchMedia('(prefers-reduced-motion: reduce)').matches;
}

function read(): Settings {
  try {
    return parseSettings(localStorage.getItem(KEY));
  } catch {
    return parseSettings(null);
  }
}
