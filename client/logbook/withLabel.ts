import { element } from '../panels/element.ts';

/** A field with its words over it. */
export function withLabel(words: string, field: HTMLElement): HTMLElement {
  return element('label', { class: 'run-field' }, element('span', {}, words), field);
}
