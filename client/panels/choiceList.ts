import { element } from './element.ts';

/** A list to choose from that is made anew only when what is in it changes; what was chosen stays so where it still can. */
export function createChoice(label: string): {
  readonly list: HTMLSelectElement;
  value(): string;
  refresh(options: readonly (readonly [value: string, words: string])[]): void;
} {
  const list = element('select', { 'aria-label': label });
  let shown = '';
  return {
    list,
    value: () => list.value,
    refresh(options) {
      const key = options.map((option) => option.join('\t')).join('\n');
      if (key === shown) return;
      shown = key;
      const before = list.value;
      list.replaceChildren(...options.map(([value, words]) => element('option', { value }, words)));
      if (options.some(([value]) => value === before)) list.value = before;
    },
  };
}
