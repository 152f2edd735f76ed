import type { TableView } from '../../engine/table/index.ts';
import type { CommandDesk } from '../controls/commands.ts';
import { LEAVING } from '../text/en.ts';
import { button, element } from './element.ts';
import { createPause, isAlone } from './pause.ts';

export interface LeaveQuestion {
  readonly sheet: HTMLDialogElement;
  /**
   * Whether leaving now loses nothing, or was asked for twice. Otherwise asks, and for someone alone holds the descent
   * until the answer.
   */
  mayLeave(view: TableView): boolean;
}

/** The question that comes before a descent is left by the browser's Back. */
export function createLeaveQuestion(desk: CommandDesk, leave: () => void): LeaveQuestion {
  const title = element('h2', { id: 'leave-title' }, LEAVING.title);
  const words = element('p', {});
  const stay = button(LEAVING.stay, () => sheet.close(), { class: 'primary' });
  const sheet = element(
    'dialog',
    { class: 'question', 'aria-labelledby': 'leave-title' },
    title,
    words,
    element('div', { class: 'sheet-actions' }, stay, button(LEAVING.leave, leave)),
  );
  const pause = createPause(desk);
  // also after Escape
  sheet.addEventListener('close', () => pause.end());
  return {
    sheet,
    mayLeave(view) {
      const runs = view.you.role === 'facilitator';
      if ((view.stage !== 'descending' && !runs) || sheet.open) return true;
      const { seat } = view.you;
      pause.begin(view);
      const crewWords = seat === undefined ? LEAVING.watching : LEAVING.crew;
      const ownWords = isAlone(view) && seat !== undefined ? LEAVING.alone : crewWords;
      title.textContent = runs ? LEAVING.facilitatorTitle : LEAVING.title;
      words.textContent = runs ? LEAVING.facilitator : ownWords;
      sheet.showModal();
      return false;
    },
  };
}
