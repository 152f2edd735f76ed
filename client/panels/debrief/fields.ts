import { element, type Attributes } from '../element.ts';

/** One line to type in, under its name. */
export function lineField(
  label: string,
  most: number,
  attributes: Attributes = {},
): { readonly field: HTMLElement; readonly input: HTMLInputElement } {
  const input = element('input', { type: 'text', maxlength: most, autocomplete: 'off', ...attributes });
  return { field: element('label', { class: 'typed' }, element('span', {}, label), input), input };
}

/** One of a few, under its name. */
export function pickField<Choice extends string>(
  label: string,
  choices: readonly (readonly [Choice, string])[],
): { readonly field: HTMLElement; readonly select: HTMLSelectElement; chosen(): Choice; choose(choice: Choice): void } {
  const options = choices.map(([value, words]) => element('option', { value }, words));
  const select = element('select', {}, ...options);
  return {
    field: element('label', { class: 'typed' }, element('span', {}, label), select),
    select,
    chosen: () => choices[Math.max(0, select.selectedIndex)]?.[0] ?? choices[0]![0],
    choose(choice) {
      select.value = choice;
    },
  };
}

/** Whether somebody is typing or choosing there. */
export function isTypingIn(holder: HTMLElement): boolean {
  const { activeElement: node } = document;
  return node !== null && holder.contains(node) && node.matches('input, select, textarea');
}

/** What stands in a field becomes what the table has, unless somebody is typing there. */
export function follow(input: HTMLInputElement | HTMLTextAreaElement, value: string): void {
  if (document.activeElement !== input && input.dataset['laid'] !== value) {
    input.value = value;
    input.dataset['laid'] = value;
  }
}
