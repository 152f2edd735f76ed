import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  ACTIONS,
  actionOf,
  actionsFor,
  bindKey,
  DEFAULT_KEYS,
  parseKeys,
  repeats,
} from '../../../client/settings/keys.ts';
import { SEATS } from '../../../engine/table/index.ts';
import { DEFAULTS, parseSettings } from '../../../client/settings/settings.ts';
import { COACH, SETTINGS } from '../../../client/text/en.ts';
import { keysOf, withKeys } from '../../../client/text/keyNames.ts';
import { distance, speed } from '../../../client/text/numbers.ts';

/** A fresh copy of the store over a storage, as a page that was just opened has it. */
async function openStore(storage: unknown) {
  vi.stubGlobal('localStorage', storage);
  vi.resetModules();
  return import('../../../client/settings/store.ts');
}

function createStorage(kept: Map<string, string> = new Map()) {
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => kept.set(key, text),
  };
}

function refuse(): never {
  throw new Error('blocked');
}

afterEach(() => vi.unstubAllGlobals());

describe('the settings of a person', () => {
  it('come back as they were stored', () => {
    const keys = { ...DEFAULT_KEYS, hold: ['PageDown', 'i'] };
    const chosen = { units: 'us', motion: 'less', letters: false, keys, sound: true, volume: 100 } as const;
    expect(parseSettings(JSON.stringify(chosen))).toEqual(chosen);
  });

  it.each([
    ['nothing', null],
    ['no JSON', '{"units":'],
    ['a list', '[1]'],
    ['null', 'null'],
    ['wrong values', '{"units":"cubits","motion":3,"letters":"no","keys":{"hold":"h"}}'],
  ])('are as at first where %s is stored', (_, text) => {
    expect(parseSettings(text)).toEqual(DEFAULTS);
  });

  it('keep what makes sense beside what does not', () => {
    expect(parseSettings('{"units":"us","keys":{"hold":[]}}')).toEqual({ ...DEFAULTS, units: 'us' });
  });

  it('are kept over a reload, and told to whoever listens', async () => {
    const storage = createStorage();
    const page = await openStore(storage);
    let told = 0;
    const end = page.onSettings(() => (told += 1));
    page.changeSettings({ units: 'us' });
    end();
    page.changeSettings({ letters: false });
    expect(told).toBe(1);
    expect((await openStore(storage)).settings()).toEqual({ ...DEFAULTS, units: 'us', letters: false });
  });

  it.each([
    ['missing', undefined],
    ['blocked', { getItem: refuse, setItem: refuse }],
    ['full', { getItem: () => null, setItem: refuse }],
  ])('hold for as long as the page is open where storage is %s', async (_, storage) => {
    const page = await openStore(storage);
    expect(page.settings()).toEqual(DEFAULTS);
    page.changeSettings({ motion: 'less' });
    expect(page.settings().motion).toBe('less');
  });
});

/** At each seat in order, and at none. */
const does = (key: string) => [...SEATS, undefined].map((seat) => actionOf(DEFAULT_KEYS, key, seat));

describe('keys', () => {
  it.each([...SEATS, undefined])('at %s do one thing each, and all that is done there has one', (seat) => {
    const all = actionsFor(seat).flatMap((action) => DEFAULT_KEYS[action]);
    expect(new Set(all).size).toBe(all.length);
    expect(actionsFor(seat).filter((action) => DEFAULT_KEYS[action].length === 0)).toEqual([]);
  });

  it('are each named in the list of settings', () => {
    expect(Object.keys(SETTINGS.actions).toSorted()).toEqual(ACTIONS.toSorted());
  });

  it('do the same with Shift as without', () => {
    expect(actionOf(DEFAULT_KEYS, 'W', 'flying')).toBe('thrustMore');
    expect(actionOf(DEFAULT_KEYS, 'ArrowUp', 'flying')).toBe('thrustMore');
    expect(actionOf(DEFAULT_KEYS, 'i', 'flying')).toBeUndefined();
  });

  it('do what the seat does that one sits at, and at none only what anybody does', () => {
    expect(does('ArrowUp')).toEqual([undefined, 'thrustMore', 'sourceUp', 'ceilingUp', undefined, undefined]);
    expect(does('x')).toEqual([undefined, 'engineOff', 'reject', 'fireCutOff', undefined, undefined]);
    expect(new Set(does('h'))).toEqual(new Set(['hold']));
    expect(new Set(does('p'))).toEqual(new Set(['poll']));
  });

  it('that are held down step on, and do once what must not be done twice', () => {
    expect(repeats('ceilingUp')).toBe(true);
    for (const action of ['abort', 'hold', 'armCutOff', 'fireCutOff', 'line', 'reject'] as const)
      expect(repeats(action)).toBe(false);
  });

  it('take the place of another, which does nothing any more', () => {
    const bound = bindKey(DEFAULT_KEYS, 'thrustMore', 1, 'I');
    if (!bound.ok) throw new Error(bound.error);
    expect(bound.value.thrustMore).toEqual(['ArrowUp', 'i']);
    expect(actionOf(bound.value, 'w', 'flying')).toBeUndefined();
    expect(actionOf(bound.value, 'i', 'flying')).toBe('thrustMore');
  });

  it('are added where a place is empty', () => {
    const bound = bindKey(DEFAULT_KEYS, 'hold', 1, 'Pause');
    expect(bound.ok && bound.value.hold).toEqual(['h', 'Pause']);
  });

  it('that another action has, or that the page needs, are refused', () => {
    expect(bindKey(DEFAULT_KEYS, 'hold', 0, 'd')).toEqual({ ok: false, error: 'leanRight' });
    expect(bindKey(DEFAULT_KEYS, 'thrustMore', 1, 'ArrowUp')).toEqual({ ok: false, error: 'thrustMore' });
    for (const key of ['Tab', 'Enter', ' ', 'Escape', 'Shift'])
      expect(bindKey(DEFAULT_KEYS, 'hold', 0, key)).toEqual({ ok: false, error: 'kept' });
    // one of another seat is free, but not one that everybody has
    expect(bindKey(DEFAULT_KEYS, 'reject', 0, 'd').ok).toBe(true);
    expect(bindKey(DEFAULT_KEYS, 'reject', 0, 'h')).toEqual({ ok: false, error: 'hold' });
    // the very same key again changes nothing
    expect(bindKey(DEFAULT_KEYS, 'hold', 0, 'h')).toEqual({ ok: true, value: DEFAULT_KEYS });
  });

  it('are not taken from a store in which two actions have the same', () => {
    expect(parseKeys({ ...DEFAULT_KEYS, hold: ['x'] })).toBeUndefined();
    expect(parseKeys({ ...DEFAULT_KEYS, hold: ['i'] })?.hold).toEqual(['i']);
    expect(parseKeys({ ...DEFAULT_KEYS, hold: ['Tab'] })).toBeUndefined();
  });

  it('of a store from before there were so many stay, and what is new gets a key where one is free', () => {
    const older = { hold: ['p', 'Home'], thrustMore: ['ArrowUp'] };
    const keys = parseKeys(older);
    expect(keys).toEqual({ ...DEFAULT_KEYS, ...older, poll: [] });
    expect(parseKeys({ ...keys })).toEqual(keys);
  });
});

describe('words that name keys', () => {
  it('name actions that there are', () => {
    const said = Object.values(COACH).map((words) => (typeof words === 'string' ? words : words.toString()));
    const named = said.flatMap((words) => [...words.matchAll(/[^$]\{(\w+)\}/g)].map(([, name]) => name));
    expect(named.length).toBeGreaterThan(8);
    expect(named.filter((name) => !ACTIONS.some((action) => action === name))).toEqual([]);
  });

  it('have the key that does it, and leave out one that no key does', async () => {
    const { changeSettings } = await import('../../../client/settings/store.ts');
    expect(withKeys(COACH.climb)).toBe('You are climbing. Ease the thrust, ↓, to just under “hover”.');
    expect(withKeys(COACH.upright)).toBe('Nearly down. Stand upright, C.');
    expect(keysOf('thrustMore')).toEqual(['↑', 'W']);
    vi.resetModules();
    const fresh = await import('../../../client/text/keyNames.ts');
    const store = await import('../../../client/settings/store.ts');
    expect(store.changeSettings).not.toBe(changeSettings);
    store.changeSettings({ letters: false });
    expect(fresh.keysOf('thrustMore')).toEqual(['↑']);
    expect(fresh.withKeys(COACH.upright)).toBe('Nearly down. Stand upright.');
    expect(fresh.withKeys(COACH.contact)).toBe('Contact. Engine off and let the legs take it.');
  });
});

describe('US units', () => {
  it('are feet and pounds, and their sign is always shown', async () => {
    expect(distance(30.48)).toBe('30.5\u202fm');
    vi.resetModules();
    const store = await import('../../../client/settings/store.ts');
    const numbers = await import('../../../client/text/numbers.ts');
    store.changeSettings({ units: 'us' });
    expect(numbers.distance(30.48)).toBe('100\u202fft');
    expect(numbers.speed(0.3048)).toBe('1.00\u202fft/s');
    expect(numbers.acceleration(9.80665)).toBe('32.17\u202fft/s²');
    expect(numbers.mass(453.59237)).toBe('1000\u202flb');
    // the page that was open before is another one
    expect(speed(1)).toBe('1.00\u202fm/s');
  });
});
