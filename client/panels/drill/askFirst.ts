import { button, element } from '../element.ts';

/** A press that asks before a second one does it: what cannot be taken back is not done by a slip of the hand. */
export function askFirst(words: {
  /** Of the part of the page that asks. */
  readonly id: string;
  readonly title: string;
  readonly why: string;
  readonly act: string;
  readonly no: string;
  readonly does: () => void;
}): HTMLElement {
  const { id, title, why, act, no, does } = words;
  const question: HTMLElement = element(
    'div',
    { class: 'card laid-beside', id, popover: true, role: 'group', 'aria-label': title },
    element('h2', { class: 'card-head' }, title),
    element('p', {}, why),
    element(
      'p',
      { class: 'sheet-actions' },
      button(
        act,
        () => {
          question.hidePopover();
          does();
        },
        { class: 'primary' },
      ),
      button(no, () => question.hidePopover()),
    ),
  );
  return question;
}
