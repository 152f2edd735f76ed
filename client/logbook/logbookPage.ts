import { parseRecord } from '../../engine/record/index.ts';
import { keptRunKeys, MOST_RUN_KEYS } from '../net/runKeys.ts';
import { button, element, say } from '../panels/element.ts';
import { exerciseLine } from '../panels/titleBlock.ts';
import { LOGBOOK, RUN } from '../text/logbook.ts';
import { createRunList } from './runList.ts';
import { createRunPage, type RunPage } from './runPage.ts';
import { listRuns, type Keys } from './serverRuns.ts';
import { openWords, shownOfFile, shownOfServer, type ShownRun } from './shownRun.ts';
import { createOtherRuns } from './otherRuns.ts';
import '../styles/logbook.css';

/** Between two looks at a list of which something is still being read [ms], and how often. */
const LOOK_MS = 1500;
const MOST_LOOKS = 40;

/** Lays the logbook in place of the start page. */
export function layLogbook(holder: HTMLElement, leave: () => void): { end(): void } {
  let files: readonly ShownRun[] = [];
  let ofServer: readonly ShownRun[] = [];
  let stillOpen = '';
  let added: readonly string[] = [];
  let administrator: string | undefined;
  let opened: RunPage | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  document.title = LOGBOOK.documentTitle;

  const keys = (): Keys => ({
    // what was typed comes first: the server looks at so many
    runs: [...new Set([...added, ...keptRunKeys().map(({ key }) => key)])].slice(0, MOST_RUN_KEYS),
    ...(administrator !== undefined && { administrator }),
  });
  const status = element('p', { class: 'hint', role: 'status' });
  const list = createRunList((run) => open(run));
  const show = () => list.show([...files, ...ofServer], stillOpen);
  const refresh = async (looks = MOST_LOOKS): Promise<string> => {
    clearTimeout(timer);
    const asked = keys();
    const listed = await listRuns(asked);
    if (!listed.ok) {
      show();
      return listed.error;
    }
    const { runs } = listed.value;
    ofServer = runs.filter(({ isOpen }) => !isOpen).map(shownOfServer);
    stillOpen = openWords(runs);
    show();
    if (ofServer.some(({ isPending }) => isPending) && looks > 0)
      timer = setTimeout(() => void refresh(looks - 1), LOOK_MS);
    const isUnknown = added.some((key) => listed.value.unknownKeys.includes(key));
    return isUnknown ? LOGBOOK.keyUnknown : '';
  };
  const tell = async (work: Promise<string>) => say(status, await work);
  const others = createOtherRuns({
    addKey: (key) => {
      added = [key, ...added];
      void tell(refresh());
    },
    administer: (key) => {
      administrator = key;
      void tell(
        refresh().then((problem) => {
          if (problem !== '') administrator = undefined;
          return problem === '' ? LOGBOOK.isAdministrator : problem;
        }),
      );
    },
    openFile: (text, name) => {
      const record = parseRecord(text);
      if (!record.ok) {
        say(status, RUN.noFile);
        return;
      }
      const run = shownOfFile(record.value, name);
      files = [run, ...files.filter(({ id }) => id !== run.id)];
      show();
      open(run);
    },
  });
  const shelf = element(
    'div',
    { class: 'logbook-shelf' },
    element('h1', { tabindex: -1 }, LOGBOOK.title),
    element('p', { class: 'why' }, LOGBOOK.lead),
    list.node,
    status,
    others,
  );
  const toList = button(LOGBOOK.toList, () => close(), { hidden: true });
  const main = element('main', { class: 'logbook-main' }, shelf);
  const page = element(
    'div',
    { class: 'logbook' },
    element('header', { class: 'logbook-head' }, button(LOGBOOK.back, leave), toList),
    main,
    element('footer', { class: 'logbook-foot' }, exerciseLine()),
  );

  const close = () => {
    opened?.end();
    opened = undefined;
    toList.hidden = true;
    main.replaceChildren(shelf);
    shelf.querySelector('h1')?.focus();
    void tell(refresh());
  };
  const open = (run: ShownRun) => {
    opened?.end();
    const rest = [...files, ...ofServer].filter(({ id }) => id !== run.id);
    opened = createRunPage(run, rest, {
      keys: keys(),
      gone: close,
      changed: () =>
        void refresh().then(() => {
          const again = ofServer.find(({ id }) => id === run.id);
          if (again !== undefined) open(again);
        }),
    });
    toList.hidden = false;
    main.replaceChildren(opened.node);
    scrollTo(0, 0);
    opened.node.querySelector('h1')?.focus();
  };
  holder.replaceChildren(page);
  shelf.querySelector('h1')?.focus();
  void tell(refresh());
  return {
    end() {
      clearTimeout(timer);
      opened?.end();
    },
  };
}
