import type { TableView } from '../../../engine/table/index.ts';
import { SIDE } from '../../text/control.ts';
import { SEAT_NAMES } from '../../text/en.ts';
import { clock } from '../../text/numbers.ts';
import { createNoteList } from '../crewNotes.ts';
import { element } from '../element.ts';
import { createPressedRow } from '../pressedRow.ts';
import type { Ask } from '../seatCard.ts';
import { addresseeWords, callWords } from '../sentenceWords.ts';
import { lineWords } from '../talkLog.ts';
import { createPeople } from './people.ts';

type Tab = keyof typeof SIDE.tabs;
const TABS: readonly Tab[] = ['log', 'loops', 'cards', 'people'];

/** What the crew said and did, which loops are open, which cards lie where, and who is here: one of them at a time. */
export function createSidePanel(
  ask: Ask,
  code: string | undefined,
): { readonly card: HTMLElement; refresh(view: TableView): void } {
  let tab: Tab = 'people';
  let hasBegun = false;
  const log = createNoteList();
  const loops = createNoteList();
  const cards = createNoteList();
  const people = createPeople(ask, code);
  const parts: Readonly<Record<Tab, HTMLElement>> = {
    log: log.list,
    loops: loops.list,
    cards: cards.list,
    people: people.part,
  };
  const show = (wanted: Tab) => {
    tab = wanted;
    for (const one of TABS) parts[one].hidden = one !== tab;
  };
  const keys = createPressedRow<Tab>({
    label: SIDE.label,
    choices: TABS.map((one) => [one, SIDE.tabs[one]]),
    press: show,
  });
  const body = element(
    'div',
    { class: 'side-body', tabindex: 0, role: 'group', 'aria-label': SIDE.label },
    ...TABS.map((one) => parts[one]),
  );
  return {
    card: element('section', { class: 'card side-card', 'aria-label': SIDE.label }, keys.group, body),
    refresh(view) {
      // while people gather they matter most, and then what they say
      if (!hasBegun && view.stage === 'descending') show('log');
      hasBegun = view.stage === 'descending';
      const { talk, dealt } = view;
      const said = talk.log.toReversed().flatMap((line) => lineWords(line, talk.calls));
      log.show(said.length === 0 ? [SIDE.noLog] : said);
      loops.show(loopLines(view));
      cards.show(
        dealt.length === 0 ? [SIDE.noCards] : dealt.toReversed().map(({ after, text }) => `${clock(after)} ${text}`),
      );
      people.refresh(view);
      show(tab);
      keys.refresh(tab, true);
    },
  };
}

/** Which loops are open, the latest first. */
export function loopLines({ talk }: TableView): readonly string[] {
  if (talk.open.length === 0) return [SIDE.noLoops];
  return talk.open.toReversed().map((loop) => {
    const call = talk.calls.find(({ id }) => id === loop.id);
    const said = call === undefined ? '' : ` “${callWords(call)}”`;
    const state = loop.isReadBack ? SIDE.readBack : SIDE.waits;
    return `${clock(loop.after)} ${SEAT_NAMES[loop.from]} → ${addresseeWords(loop.to)}${said}: ${state}`;
  });
}
