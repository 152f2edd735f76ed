import { isCharacter, type Action } from '../settings/keys.ts';
import { settings } from '../settings/store.ts';

/** What stands on the keys that browsers name otherwise. */
const SIGNS: Readonly<Record<string, string>> = {
  ArrowUp: '↑',
  ArrowDown: '↓',
  ArrowLeft: '←',
  ArrowRight: '→',
  // too small to be told apart
  ',': 'comma',
  '.': 'period',
};

/** A key as it is called on screen. */
export function keyName(key: string): string {
  return SIGNS[key] ?? (isCharacter(key) ? key.toUpperCase() : key);
}

/** The keys that do this now, by the names that browsers give them; none where only letters would, and letters do not act as keys. */
export function shortcutsOf(action: Action): readonly string[] {
  const { keys, letters } = settings();
  return keys[action].filter((key) => letters || !isCharacter(key));
}

/** The same keys in words. */
export function keysOf(action: Action): readonly string[] {
  return shortcutsOf(action).map(keyName);
}

/** Puts keys into words that name actions: 'Stand upright, {upright}.' An action that no key does is not named. */
export function withKeys(words: string): string {
  return words.replace(
    /(, )?\{(\w+)\}(,)?/g,
    (_, before: string | undefined, action: Action, after: string | undefined) => {
      const [key] = keysOf(action);
      return key === undefined ? '' : `${before ?? ''}${key}${after ?? ''}`;
    },
  );
}
