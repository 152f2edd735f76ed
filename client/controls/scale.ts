import { element, say } from '../panels/element.ts';

/** A ruled scale with a hollow cursor (commanded) that can be set, and a filled mark (actual) that follows. */
interface Scale {
  readonly body: HTMLElement;
  readonly cursor: HTMLInputElement;
  /** Moves the marks: values of the scale. */
  show(commanded: number, actual: number, words: string): void;
  /** Places the named tick, such as the thrust that holds the present speed. */
  showTick(value: number): void;
  /** Marks the most that is given, and what lies beyond it; nothing where all of it is. */
  showMost(value: number): void;
  allow(allowed: boolean): void;
  /** Writes the figures anew, such as in other units. */
  figure(words: (value: number) => string): void;
}

interface ScaleOptions {
  readonly name: string;
  readonly direction: 'upright' | 'level';
  readonly least: number;
  readonly most: number;
  /** Ruled lines, and every how many of them a longer one with its figure. */
  readonly ruling: number;
  readonly figures: readonly { readonly value: number; readonly words: string }[];
  /** Name of the extra tick. */
  readonly tick?: string;
  readonly set: (value: number) => void;
}

export function createScale(options: ScaleOptions): Scale {
  const { least, most } = options;
  const share = (value: number) => (value - least) / (most - least);
  const place = (value: number) => `${100 * share(value)}%`;
  const cursor = element('input', {
    type: 'range',
    min: least,
    max: most,
    step: 1,
    'aria-label': options.name,
    'aria-orientation': options.direction === 'upright' ? 'vertical' : 'horizontal',
  });
  cursor.addEventListener('input', () => options.set(Number(cursor.value)));
  const actual = element('span', { class: 'scale-actual', 'aria-hidden': 'true' });
  const ruler = element('span', { class: 'scale-ruler', 'aria-hidden': 'true' });
  for (let value = least; value <= most; value += options.ruling) {
    const line = element('i', {});
    line.style.setProperty('--at', place(value));
    ruler.append(line);
  }
  const figures = options.figures.map(({ value, words }) => {
    const mark = element('b', {}, words);
    mark.style.setProperty('--at', place(value));
    ruler.append(mark);
    return { value, mark };
  });
  const tick = element('span', { class: 'scale-tick', 'aria-hidden': 'true', hidden: true }, options.tick ?? '');
  const beyond = element('span', { class: 'scale-beyond', hidden: true });
  const body = element('div', { class: `scale scale-${options.direction}` }, ruler, tick, actual, cursor);
  ruler.append(beyond);
  return {
    body,
    cursor,
    show(commanded, actualValue, words) {
      const value = String(Math.round(commanded));
      if (cursor.value !== value) cursor.value = value;
      if (cursor.getAttribute('aria-valuetext') !== words) cursor.setAttribute('aria-valuetext', words);
      actual.style.setProperty('--share', String(share(Math.min(most, Math.max(least, actualValue)))));
    },
    showTick(value) {
      tick.hidden = !(value >= least && value <= most);
      tick.style.setProperty('--share', String(share(value)));
    },
    showMost(value) {
      beyond.hidden = value >= most;
      beyond.style.setProperty('--at', place(value));
    },
    allow(allowed) {
      cursor.disabled = !allowed;
    },
    figure(words) {
      for (const { value, mark } of figures) say(mark, words(value));
    },
  };
}
