import { element } from '../panels/element.ts';

interface NumberFacts {
  readonly id: string;
  readonly words: string;
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly start: number;
  readonly whole?: boolean;
}

export interface NumberField {
  readonly node: HTMLElement;
  /** The last value that could be read. */
  value(): number;
  set(value: number): void;
  /** Says at the field what is wrong with what stands there; '' is nothing. */
  fault(words: string): void;
}

/** A number with its unit: what cannot be read is said at the field and changes nothing. */
export function numberField(facts: NumberFacts, changed: (value: number) => void): NumberField {
  const { id, words, unit, least, most, step, start, whole = false } = facts;
  let value = start;
  const input = element('input', {
    id,
    type: 'number',
    inputmode: 'decimal',
    step: whole ? 1 : 'any',
    value: start,
    'aria-describedby': `${id}-fault`,
  });
  const fault = element('span', { id: `${id}-fault`, class: 'bench-fault', role: 'alert' });
  const say = (text: string) => {
    fault.textContent = text;
    if (text === '') input.removeAttribute('aria-invalid');
    else input.setAttribute('aria-invalid', 'true');
  };
  const take = (next: number) => {
    if (input.value.trim() === '' || !(next >= least && next <= most) || (whole && !Number.isInteger(next))) {
      say(`${whole ? 'a whole number' : 'a number'} from ${least} to ${most}`);
      return;
    }
    say('');
    if (next === value) return;
    value = next;
    changed(next);
  };
  input.addEventListener('input', () => take(Number(input.value)));
  // steps of our own: those of the browser know no start between them
  input.addEventListener('keydown', (event) => {
    const way = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
    if (way === 0) return;
    event.preventDefault();
    const next = Number((value + way * step).toFixed(6));
    if (next < least || next > most) return;
    input.value = String(next);
    take(next);
  });
  const node = element(
    'p',
    { class: 'bench-field' },
    element('label', { for: id }, words),
    element('span', { class: 'bench-number' }, input, element('span', {}, unit === '-' ? '' : unit)),
    fault,
  );
  return {
    node,
    value: () => value,
    set(next) {
      value = next;
      // what a person is typing stays as they typed it
      if (document.activeElement !== input || Number(input.value) !== next)
        input.value = String(Number(next.toPrecision(4)));
      say('');
    },
    fault: say,
  };
}
