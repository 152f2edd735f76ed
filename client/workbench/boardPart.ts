import { button, element, say } from '../panels/element.ts';
import { BENCH, BOARD, SPREAD_CARD } from '../text/workbench.ts';
import { copyText } from './benchCard.ts';
import { CAMPAIGN_FILE } from './commandLine.ts';

interface BoardPart {
  readonly node: HTMLElement;
  /** The case has changed: the command shown is no longer its own. */
  clear(): void;
}

interface BoardActs {
  readonly command: () => string;
  /** The file that the lander must be saved to first; undefined where the command line knows it. */
  readonly landerFile: () => string | undefined;
  readonly saveLander: () => void;
  readonly saveCampaign: () => void;
}

/** The command that makes the report for a board, and the files that it reads. */
export function createBoardPart(acts: BoardActs): BoardPart {
  const line = element('code', {});
  const hint = element('span', { class: 'hint' });
  const copied = element('span', { role: 'status', class: 'bench-copied' });
  const saveLander = button(BENCH.saveFile, acts.saveLander);
  const shown = element(
    'div',
    { class: 'bench-files', hidden: '' },
    element(
      'p',
      { class: 'bench-file-buttons' },
      saveLander,
      button(SPREAD_CARD.campaign, acts.saveCampaign),
      button(BENCH.copyCommand, () => void copyText(line.textContent ?? '', copied)),
      copied,
    ),
    line,
    hint,
  );
  const show = button(BOARD.show, () => {
    const file = acts.landerFile();
    saveLander.hidden = file === undefined;
    say(line, acts.command());
    say(hint, BOARD.needs([...(file === undefined ? [] : [file]), CAMPAIGN_FILE].join(', ')));
    shown.hidden = false;
  });
  return {
    node: element(
      'section',
      { class: 'bench-card', 'data-kind': 'board', 'aria-labelledby': 'bench-board' },
      element('h2', { id: 'bench-board' }, BOARD.title),
      element('p', { class: 'bench-note' }, BOARD.lead),
      element('p', { class: 'bench-row' }, show),
      shown,
    ),
    clear() {
      shown.hidden = true;
    },
  };
}
