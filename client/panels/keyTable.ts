import { ACTIONS_OF, bindKey, DEFAULT_KEYS, KEY_SCOPES, KEYS_EACH, plainKey, type Action } from '../settings/keys.ts';
import { changeSettings, settings } from '../settings/store.ts';
import { SETTINGS } from '../text/en.ts';
import { keyName } from '../text/keyNames.ts';
import { button, element, say } from './element.ts';

/** A place of a key: which of an action's. */
interface Place {
  readonly action: Action;
  readonly index: number;
}

/** Every action with its keys. A press on a key asks for another in its place; one that is taken is said to be. */
export function createKeyTable(): HTMLElement {
  const rows = element('table', {});
  const said = element('p', { class: 'settings-said', role: 'status' });
  let asked: Place | undefined;

  const lay = () =>
    rows.replaceChildren(
      ...KEY_SCOPES.map((scope) =>
        element(
          'tbody',
          {},
          element(
            'tr',
            { class: 'key-scope' },
            element('th', { scope: 'rowgroup', colspan: 1 + KEYS_EACH }, SETTINGS.keyScopes[scope]),
          ),
          ...ACTIONS_OF[scope].map((action) => row(action, asked, ask)),
        ),
      ),
    );
  const finish = (words: string) => {
    const place = asked;
    asked = undefined;
    say(said, words);
    lay();
    if (place !== undefined) focusPlace(rows, place);
  };
  const ask = (place: Place) => {
    asked = place;
    lay();
    say(said, SETTINGS.pressFor(SETTINGS.actions[place.action]));
    focusPlace(rows, place);
  };
  const take = ({ action, index }: Place, key: string) => {
    const bound = bindKey(settings().keys, action, index, key);
    if (bound.ok) {
      changeSettings({ keys: bound.value });
      finish(SETTINGS.bound(keyName(plainKey(key)), SETTINGS.actions[action]));
      return;
    }
    const { error } = bound;
    say(said, error === 'kept' ? SETTINGS.kept : SETTINGS.taken(keyName(plainKey(key)), SETTINGS.actions[error]));
  };
  const table = element(
    'div',
    { class: 'key-table' },
    rows,
    said,
    button(SETTINGS.reset, () => {
      changeSettings({ keys: DEFAULT_KEYS });
      finish(SETTINGS.wasReset);
    }),
  );
  table.addEventListener('keydown', (event) => {
    if (asked === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    if (['Tab', 'Shift'].includes(event.key)) return;
    // neither a press of the button that has the focus nor the end of the sheet
    event.preventDefault();
    if (event.key === 'Escape') finish(SETTINGS.left);
    else take(asked, event.key);
  });
  table.addEventListener('focusout', ({ relatedTarget }) => {
    // on to something else without a key; a row that is laid anew loses the focus to nothing
    if (asked === undefined || !(relatedTarget instanceof Node) || rows.contains(relatedTarget)) return;
    asked = undefined;
    say(said, SETTINGS.left);
    lay();
  });
  lay();
  return table;
}

function row(action: Action, asked: Place | undefined, ask: (place: Place) => void): HTMLElement {
  const keys = settings().keys[action];
  const cells = Array.from({ length: KEYS_EACH }, (_, index) => {
    // one after the other: the second place opens when the first is filled
    if (index > keys.length) return element('td', {});
    const isAsked = asked?.action === action && asked.index === index;
    const key = keys[index];
    const words = isAsked ? SETTINGS.press : key === undefined ? SETTINGS.addShort : keyName(key);
    const does = SETTINGS.actions[action];
    const name = key === undefined ? SETTINGS.add(does) : SETTINGS.change(keyName(key), does);
    return element(
      'td',
      {},
      button(words, () => ask({ action, index }), {
        'aria-label': isAsked ? `${SETTINGS.press}: ${does}` : name,
        'data-place': `${action} ${index}`,
        class: key === undefined && !isAsked ? 'key-place empty' : 'key-place',
      }),
    );
  });
  return element('tr', {}, element('th', { scope: 'row' }, SETTINGS.actions[action]), ...cells);
}

function focusPlace(rows: HTMLElement, { action, index }: Place): void {
  rows.querySelector<HTMLElement>(`[data-place="${action} ${index}"]`)?.focus();
}
