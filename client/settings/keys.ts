import type { Result } from '../../engine/result.ts';
import type { Seat } from '../../engine/table/index.ts';

/** What can be done by a key while a descent runs, and by whom: one seat, whoever decides, or everybody. */
export const ACTIONS_OF = {
  flying: ['thrustMore', 'thrustLess', 'leanLeft', 'leanRight', 'engineOff', 'upright', 'driftOrLean'],
  sensors: ['sourceUp', 'sourceDown', 'accept', 'check', 'reject', 'cause'],
  propellant: ['ceilingUp', 'ceilingDown', 'armCutOff', 'fireCutOff', 'cutAtContact', 'line'],
  site: ['spotLeft', 'spotRight', 'spotHere', 'groundNote', 'stateLimit', 'turnLeft', 'turnRight'],
  decides: ['poll', 'abort', 'paceSlower', 'paceFaster'],
  all: ['hold', 'readBack', 'bookmark', 'sound'],
} as const;
export type KeyScope = keyof typeof ACTIONS_OF;
export const KEY_SCOPES = Object.keys(ACTIONS_OF).filter((scope): scope is KeyScope => scope in ACTIONS_OF);
export type ActionOf<Scope extends KeyScope> = (typeof ACTIONS_OF)[Scope][number];
export type Action = ActionOf<KeyScope>;
/** What the hands of Flying do, and what anybody does; everything else stands on a card. */
export type DeskAction = ActionOf<'flying' | 'all'>;

export const ACTIONS: readonly Action[] = KEY_SCOPES.flatMap((scope) => ACTIONS_OF[scope]);

/** A key that is held down does these again and again; everything else it does once. */
const STEPS: readonly Action[] = [
  'thrustMore',
  'thrustLess',
  'leanLeft',
  'leanRight',
  'sourceUp',
  'sourceDown',
  'ceilingUp',
  'ceilingDown',
  'spotLeft',
  'spotRight',
];

export function repeats(action: Action): boolean {
  return STEPS.includes(action);
}

/** The keys of each action by the names that browsers give them: 'ArrowUp', 'w'. */
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
  sourceUp: ['ArrowUp'],
  sourceDown: ['ArrowDown'],
  accept: ['a'],
  check: ['c'],
  reject: ['x'],
  cause: ['n'],
  ceilingUp: ['ArrowUp'],
  ceilingDown: ['ArrowDown'],
  armCutOff: ['a'],
  fireCutOff: ['x'],
  cutAtContact: ['c'],
  line: ['l'],
  spotLeft: ['ArrowLeft'],
  spotRight: ['ArrowRight'],
  spotHere: ['m'],
  groundNote: ['n'],
  stateLimit: ['l'],
  turnLeft: ['a'],
  turnRight: ['d'],
  poll: ['p'],
  abort: ['q'],
  paceSlower: [','],
  paceFaster: ['.'],
  hold: ['h'],
  readBack: ['r'],
  bookmark: ['b'],
  sound: ['v'],
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

/** What a key does for whoever sits at a seat, or at none; undefined where it does nothing. */
export function actionOf(keys: KeyMap, key: string, seat: Seat | undefined): Action | undefined {
  return actionsFor(seat).find((action) => keys[action].includes(plainKey(key)));
}

/** All that somebody at a seat, or at none, can do by a key. */
export function actionsFor(seat: Seat | undefined): readonly Action[] {
  const own = KEY_SCOPES.find((scope) => scope === seat);
  return [...(own === undefined ? [] : ACTIONS_OF[own]), ...ACTIONS_OF.decides, ...ACTIONS_OF.all];
}

/** Whether one key can mean only one of the two: not so for those of two seats. */
function areRivals(one: Action, other: Action): boolean {
  const [scope, otherScope] = [scopeOf(one), scopeOf(other)];
  return scope === otherScope || isShared(scope) || isShared(otherScope);
}

function isShared(scope: KeyScope | undefined): boolean {
  return scope === 'all' || scope === 'decides';
}

function scopeOf(action: Action): KeyScope | undefined {
  return KEY_SCOPES.find((scope) => ACTIONS_OF[scope].some((one) => one === action));
}

/** Why a key is not given to an action: the page needs it, or another action has it. */
type KeyRefusal = 'kept' | Action;

/** The map with a key in one of the places of an action; the key that was there does nothing any more. */
export function bindKey(keys: KeyMap, action: Action, place: number, pressed: string): Result<KeyMap, KeyRefusal> {
  if (!isFree(pressed)) return { ok: false, error: 'kept' };
  const key = plainKey(pressed);
  const holder = ACTIONS.find((other) => areRivals(action, other) && keys[other].includes(key));
  if (holder !== undefined && !(holder === action && keys[action][place] === key)) return { ok: false, error: holder };
  const bound = [...keys[action]];
  bound[Math.min(place, bound.length)] = key;
  return { ok: true, value: { ...keys, [action]: bound } };
}

/** A stored map; undefined unless all of it makes sense. An action that it does not know yet gets its first keys, as far as they are free. */
export function parseKeys(stored: Readonly<Record<string, unknown>>): KeyMap | undefined {
  const known = ACTIONS.filter((action) => action in stored);
  const keys: Record<Action, readonly string[]> = { ...DEFAULT_KEYS };
  for (const action of ACTIONS) keys[action] = [];
  const isTaken = (action: Action, key: string) =>
    ACTIONS.some((other) => areRivals(action, other) && keys[other].includes(key));
  for (const action of known) {
    const list = stored[action];
    if (!isKeyList(list) || list.some((key) => isTaken(action, key))) return undefined;
    keys[action] = list;
  }
  for (const action of ACTIONS)
    if (!known.includes(action)) keys[action] = DEFAULT_KEYS[action].filter((key) => !isTaken(action, key));
  // whoever has no key lost it to another action
  const isRobbed = (action: Action) => DEFAULT_KEYS[action].every((key) => isTaken(action, key));
  return ACTIONS.every((action) => keys[action].length > 0 || isRobbed(action)) ? keys : undefined;
}

function isKeyList(list: unknown): list is readonly string[] {
  return Array.isArray(list) && list.length <= KEYS_EACH && new Set(list).size === list.length && list.every(isKey);
}

function isKey(key: unknown): key is string {
  return typeof key === 'string' && isFree(key) && key === plainKey(key);
}
