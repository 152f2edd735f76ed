import { formatProblem } from '../../engine/result.ts';
import { HALL_TEXT, parseHallText, type Hall } from '../../levels/index.ts';
import { button, element, say } from '../panels/element.ts';
import { saveFile } from '../saveFile.ts';
import { OWN_SCENES } from '../text/hall.ts';

const SHEET = 'own-scenes';

/** How a presenter shows scenes of their own: save those that are shown, change the file, open it. What is wrong with it is said on the page. */
export function createOwnScenes(
  opened: (hall: Hall) => void,
  problem: HTMLElement,
): { readonly press: HTMLElement; readonly sheet: HTMLElement } {
  let shown = HALL_TEXT;
  const open = async (given: File) => {
    sheet.hidePopover();
    const text = await given.text();
    const read = parseHallText(text);
    const problems = read.ok ? [] : read.error.map(formatProblem);
    say(problem, read.ok ? '' : OWN_SCENES.notOpened(given.name, problems.slice(0, 3).join('; '), problems.length - 3));
    if (!read.ok) return;
    shown = text;
    opened(read.value);
  };
  const file = element('input', { type: 'file', accept: '.json,application/json', 'aria-label': OWN_SCENES.openFile });
  file.addEventListener('change', () => {
    const [given] = file.files ?? [];
    if (given !== undefined) void open(given);
    file.value = '';
  });
  const save = button(OWN_SCENES.save, () => saveFile(shown, OWN_SCENES.fileName, 'application/json'));
  const sheet = element(
    'div',
    { class: 'card hall-scenes', id: SHEET, popover: true, role: 'group', 'aria-label': OWN_SCENES.title },
    ...OWN_SCENES.how.map((words) => element('p', {}, words)),
    element(
      'div',
      { class: 'hall-buttons' },
      save,
      element('label', { class: 'hall-file' }, OWN_SCENES.openFile, file),
    ),
  );
  return { press: element('button', { type: 'button', popovertarget: SHEET }, OWN_SCENES.title), sheet };
}
