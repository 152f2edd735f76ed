import { MOTIONS, UNIT_SYSTEMS, VOLUMES } from '../settings/settings.ts';
import { changeSettings, settings } from '../settings/store.ts';
import { SETTINGS } from '../text/en.ts';
import { button, element } from './element.ts';
import { createKeyTable } from './keyTable.ts';
import { exerciseLine } from './titleBlock.ts';

/** Opens the sheet of one person's settings in front of everything. Each takes effect at once. `closed`: called when it goes. */
export function openSettings(closed: () => void = () => undefined): void {
  const letters = element('input', { type: 'checkbox', checked: settings().letters });
  letters.addEventListener('change', () => changeSettings({ letters: letters.checked }));
  const body = element(
    'div',
    { class: 'laid-over-body' },
    element('h2', { id: 'settings-title', tabindex: -1, autofocus: true }, SETTINGS.title),
    choices(
      { legend: SETTINGS.units, words: SETTINGS.unitSystems, offered: UNIT_SYSTEMS, chosen: settings().units },
      (units) => changeSettings({ units }),
    ),
    choices(
      { legend: SETTINGS.motion, words: SETTINGS.motions, offered: MOTIONS, chosen: settings().motion },
      (motion) => changeSettings({ motion }),
    ),
    soundPart(),
    element(
      'fieldset',
      {},
      element('legend', {}, SETTINGS.keys),
      element('label', { class: 'settings-row' }, letters, SETTINGS.letters),
      createKeyTable(),
    ),
    element('p', { class: 'settings-note' }, element('strong', {}, `${SETTINGS.gamepad}. `), SETTINGS.gamepadWords),
    element('p', { class: 'settings-note' }, SETTINGS.textSize),
  );
  const done = button(SETTINGS.done, () => sheet.close(), { class: 'primary' });
  const foot = element('div', { class: 'laid-over-foot' }, done, exerciseLine());
  const sheet = element('dialog', { class: 'laid-over settings', 'aria-labelledby': 'settings-title' }, body, foot);
  sheet.addEventListener('close', () => {
    sheet.remove();
    closed();
  });
  document.body.append(sheet);
  sheet.showModal();
}

/** Whether a descent is heard, how loud, and what each sound says and where it stands in words. */
function soundPart(): HTMLElement {
  const sound = element('input', { type: 'checkbox', checked: settings().sound });
  sound.addEventListener('change', () => changeSettings({ sound: sound.checked }));
  const steps = VOLUMES.map((step) =>
    element('option', { value: step, selected: step === settings().volume }, SETTINGS.volumes[step]),
  );
  const volume = element('select', {}, ...steps);
  volume.addEventListener('change', () => changeSettings({ volume: Number(volume.value) }));
  return element(
    'fieldset',
    {},
    element('legend', {}, SETTINGS.sound),
    element('label', { class: 'settings-row' }, sound, SETTINGS.soundSwitch),
    element('label', { class: 'settings-row' }, element('span', {}, SETTINGS.volume), volume),
    element('ul', { class: 'settings-sounds' }, ...SETTINGS.sounds.map((words) => element('li', {}, words))),
  );
}

/** One of a few, as it is now. */
function choices<Value extends string>(
  field: {
    readonly legend: string;
    readonly offered: readonly Value[];
    readonly chosen: Value;
    readonly words: Readonly<Record<Value, readonly [name: string, more: string]>>;
  },
  choose: (value: Value) => void,
): HTMLElement {
  const rows = field.offered.map((value) => {
    const [name, more] = field.words[value];
    const checked = value === field.chosen;
    const input = element('input', { type: 'radio', name: `settings ${field.legend}`, value, checked });
    input.addEventListener('change', () => choose(value));
    const small = more === '' ? undefined : element('small', {}, more);
    return element('label', { class: 'settings-row' }, input, element('span', {}, name), small);
  });
  return element('fieldset', {}, element('legend', {}, field.legend), ...rows);
}

const GEAR =
  '<svg viewBox="0 0 24 24" aria-hidden="true" fill="none" stroke="currentColor"><circle cx="12" cy="12" r="9" stroke-width="3" stroke-dasharray="3.53 3.54"/><circle cx="12" cy="12" r="6.2" stroke-width="2.6"/></svg>';

/** Leads to the settings; whoever lays the page acts on the press. */
export function settingsButton(): HTMLButtonElement {
  const node = element('button', { type: 'button', class: 'to-settings' });
  node.innerHTML = GEAR;
  node.append(element('span', {}, SETTINGS.title));
  return node;
}

/** Whether a press was one on a button that leads to the settings. */
export function leadsToSettings({ target }: Event): boolean {
  return target instanceof Element && target.closest('.to-settings') !== null;
}
