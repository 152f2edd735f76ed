import type { Result } from '../../engine/result.ts';

/** What can be done by a key while a descent runs. */
export const ACTIONS = [
  'thrustMore',
  'thrustLess',
  'leanLeft',
  'leanRight',
  'engineOff',
  'upright',
  'driftOrLean',
  'hold',
  'readBack',
  'bookmark',
] as const;
export type Action = (typeof ACTIONS)[number];

/** The keys of each action, at least one, by the names that browsers give them: 'ArrowUp', 'w'. */
export type KeyMap = Readonly<Record<Action, readonly string[]>>;

/** Places for keys that an action has. */
export const KEYS_EACH = 2;

export const DEFAULT_KEYS: KeyMap = {
  thrustMore: ['ArrowUp', 'w'],
  thrustLess: ['ArrowDown', 's'],
  leanLeft: ['ArrowLeft', 'a'],
  leanRight: ['ArrowRight', 'd'],
  engineOff: ['x'],
  upright: ['c'],
  driftOrLean: ['l'],
  hold: ['h'],
  readBack: ['r'],
  bookmark: ['b'],
};

/** The page itself needs these: to go from one control to the next, to press them, to close what is open. */
const KEPT = ['Tab', 'Enter', ' ', 'Escape', 'Dead', 'Process', 'Unidentified'];
/** Pressed along with another key. */
const MODIFIERS = ['Shift', 'Control', 'Alt', 'AltGraph', 'Meta', 'CapsLock', 'NumLock', 'ScrollLock', 'Fn'];

/** One name for a key, whether or not it was pressed with Shift. */
export function plainKey(key: string): string {
  return isCharacter(key) ? key.toLowerCase() : key;
}

/** A letter, figure or sign, and not a key with a name of its own. */
export function isCharacter(key: string): boolean {
  return Array.from(key).length === 1;
}

/** Whether a key may be given to an action at all. */
function isFree(key: string): boolean {
  return key !== '' && !KEPT.includes(key) && !MODIFIERS.includes(key);
}

/** What a key does; undefined where it does nothing. */
export function actionOf(keys: KeyMap, key: string): Action | undefined {
  return ACTIONS.find((action) => keys[action].includes(plainKey(key)));
}

/** Why a key is not given to an action: the page needs it, or another action has it. */
type KeyRefusal = 'kept' | Action;

/** The map with a key in one of the places of an action; the key that was there does nothing any more. */
export function bindKey(keys: KeyMap, action: Action, place: number, pressed: string): Result<KeyMap, KeyRefusal> {
  if (!isFree(pressed)) return { ok: false, error: 'kept' };
  const key = plainKey(pressed);
  const holder = actionOf(keys, key);
  if (holder !== undefined && !(holder === action && keys[action][place] === key)) return { ok: false, error: holder };
  const bound = [...keys[action]];
  bound[Math.min(place, bound.length)] = key;
  return { ok: true, value: { ...keys, [action]: bound } };
}

/** A stored map; undefined unless all of it makes sense, since keys from two maps could clash. */
export function parseKeys(stored: Readonly<Record<string, unknown>>): KeyMap | undefined {
  const lists = ACTIONS.map((action) => stored[action]);
  if (!lists.every(isKeyList)) return undefined;
  const all = lists.flat();
  if (new Set(all).size !== all.length) return undefined;
  return { ...DEFAULT_KEYS, ...Object.fromEntries(ACTIONS.map((action, i) => [action, lists[i]])) };
}

function isKeyList(list: unknown): list is readonly string[] {
  return Array.isArray(list) && list.length >= 1 && list.length <= KEYS_EACH && list.every(isKey);
}

function isKey(key: unknown): key is string {
  return typeof key === 'string' && isFree(key) && key === plainKey(key);
}
