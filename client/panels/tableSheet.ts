import { element } from './element.ts';
import { settingsButton } from './settingsSheet.ts';
import { exerciseLine } from './titleBlock.ts';

/** A sheet laid on the table. What is read scrolls where it must; what is pressed, and the caution, stay in reach. */
export function tableSheet(
  options: {
    readonly kind: string;
    readonly label: string;
    readonly actions: readonly (HTMLElement | undefined)[];
    /** Nothing on it is pressed: it has the focus itself, to be scrolled by keys. */
    readonly isRead?: boolean;
  },
  ...children: readonly (HTMLElement | undefined)[]
): HTMLElement {
  return element(
    'section',
    { class: `sheet ${options.kind}`, 'aria-label': options.label },
    element(
      'div',
      {
        class: 'sheet-body',
        ...(options.isRead === true && { tabindex: 0, role: 'group', 'aria-label': options.label }),
      },
      ...children,
    ),
    element(
      'div',
      { class: 'sheet-foot' },
      element('div', { class: 'sheet-actions' }, ...options.actions, settingsButton()),
      exerciseLine(),
    ),
  );
}
