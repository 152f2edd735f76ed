import type { Source } from '../../engine/sensors/index.ts';
import { NAMED_CAUSES, type NamedCause, type NamedSource, type SourceReading } from '../../engine/table/index.ts';
import { NAMED_CAUSE_WORDS, SENSORS_CARD, SOURCE_NAMES } from '../text/en.ts';
import { createChoice } from './choiceList.ts';
import type { Ask } from './seatCard.ts';
import { Wish } from './wish.ts';

/** What is wrong with a source, to be named from a list; there once something seems to be wrong with it. */
export function createCauseChoice(
  source: Source,
  ask: Ask,
): {
  readonly list: HTMLSelectElement;
  refresh(reading: SourceReading, named: readonly NamedSource[], isOpen: boolean): void;
  /** Opens the list, where there is something to name. */
  open(): void;
} {
  const choice = createChoice(SENSORS_CARD.cause(SOURCE_NAMES[source]));
  const wish = new Wish<NamedCause>();
  choice.refresh(NAMED_CAUSES.map((cause) => [cause, NAMED_CAUSE_WORDS[cause]]));
  choice.list.addEventListener('change', () => {
    const cause = NAMED_CAUSES.find((one) => one === choice.value());
    if (cause === undefined) return;
    wish.ask(cause);
    ask({ kind: 'nameCause', source, cause });
  });
  return {
    list: choice.list,
    open() {
      if (choice.list.hidden || choice.list.disabled) return;
      choice.list.focus();
      choice.list.showPicker();
    },
    refresh({ state, judgment }, named, isOpen) {
      const shown = wish.shown(named.find((one) => one.source === source)?.cause ?? 'nothing');
      // a list that is being chosen from is left alone
      if (document.activeElement !== choice.list && choice.list.value !== shown) choice.list.value = shown;
      choice.list.disabled = !isOpen;
      choice.list.hidden = state === 'valid' && judgment === 'accepted' && shown === 'nothing';
    },
  };
}
