import { element } from '../panels/element.ts';
import { LOGBOOK } from '../text/logbook.ts';
import { withLabel } from './withLabel.ts';

/** Ways to runs that this browser has no key of. */
export function createOtherRuns(does: {
  readonly addKey: (key: string) => void;
  readonly administer: (key: string) => void;
  readonly openFile: (text: string, name: string) => void;
}): HTMLElement {
  const file = element('input', { type: 'file', accept: '.jsonl,.json,application/jsonl' });
  file.addEventListener('change', () => {
    const [chosen] = file.files ?? [];
    if (chosen !== undefined) void chosen.text().then((text) => does.openFile(text, chosen.name));
  });
  return element(
    'section',
    { class: 'logbook-others', 'aria-labelledby': 'others-title' },
    element('h2', { id: 'others-title' }, LOGBOOK.more),
    withLabel(LOGBOOK.file, file),
    keyForm({ words: LOGBOOK.key, act: LOGBOOK.keyAct, type: 'text' }, does.addKey),
    keyForm({ words: LOGBOOK.administrator, act: LOGBOOK.administratorAct, type: 'password' }, does.administer),
  );
}

function keyForm(
  { words, act, type }: { readonly words: string; readonly act: string; readonly type: 'text' | 'password' },
  use: (key: string) => void,
): HTMLElement {
  const field = element('input', { type, autocomplete: 'off', spellcheck: 'false', maxlength: 128, required: true });
  const form = element('form', {}, withLabel(words, field), element('button', { type: 'submit' }, act));
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const key = field.value.replaceAll(/[\s,]/g, '');
    field.value = '';
    if (key !== '') use(key);
  });
  return form;
}
