import { LONGEST_NOTE } from '../../../engine/review/index.ts';
import type { TableView } from '../../../engine/table/index.ts';
import { DECLINE } from '../../text/debrief.ts';
import { button, element } from '../element.ts';
import { lineField } from './fields.ts';

interface DeclineQuestion {
  readonly sheet: HTMLDialogElement;
  /** Asks why there is to be no debrief; then goes on. Goes on at once where none is owed. */
  ask(view: TableView, goOn: () => void): void;
  /** Asks in any case. */
  open(): void;
}

/** A drill without a debrief is half a drill: whoever leads out of it says why, and the record keeps it. */
export function createDeclineQuestion(decline: (reason: string) => Promise<unknown>): DeclineQuestion {
  const reason = lineField(DECLINE.reason, LONGEST_NOTE, { required: true });
  let then: (() => void) | undefined;
  const form = element(
    'form',
    {},
    reason.field,
    element(
      'div',
      { class: 'sheet-actions' },
      button(DECLINE.stay, () => sheet.close(), { class: 'primary' }),
      element('button', { type: 'submit' }, DECLINE.decline),
    ),
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    sheet.close();
    void decline(reason.input.value.trim()).then(() => then?.());
  });
  const sheet = element(
    'dialog',
    { class: 'question', 'aria-labelledby': 'decline-title' },
    element('h2', { id: 'decline-title' }, DECLINE.title),
    element('p', {}, DECLINE.words),
    form,
  );
  return {
    sheet,
    ask(view, goOn) {
      if (!isOwed(view)) {
        goOn();
        return;
      }
      then = goOn;
      sheet.showModal();
    },
    open() {
      then = undefined;
      sheet.showModal();
    },
  };
}

/** Of a drill that was flown, to whoever runs it, until it was held or declined. */
function isOwed({ stage, drill, review, you }: TableView): boolean {
  return stage === 'resolved' && drill !== undefined && you.runs && review !== undefined && review.step !== 'closed';
}
