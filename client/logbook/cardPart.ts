import { beliefTable, defectLine, failureLine, surpriseLine } from '../panels/beliefTable.ts';
import { contactList } from '../panels/contactList.ts';
import { element } from '../panels/element.ts';
import { turnLine } from '../panels/turnLine.ts';
import { verdictOf } from '../panels/verdict.ts';
import { LOGBOOK, RUN } from '../text/logbook.ts';
import type { PlayedRun } from './playedRun.ts';

/** How the run ended, in the words of its scorecard. */
export function createCardPart({ track: { card, points } }: PlayedRun): HTMLElement {
  const last = points.at(-1)?.truth;
  if (card === undefined || last === undefined) return section(element('p', {}, LOGBOOK.unfinished));
  const { headline, why } = verdictOf(card, last);
  return section(
    element('p', { class: 'run-verdict' }, headline),
    element('p', { class: 'why' }, why),
    failureLine(card),
    defectLine(card),
    turnLine(card),
    surpriseLine(card),
    contactList(card),
    beliefTable(card),
  );
}

function section(...children: readonly (HTMLElement | undefined)[]): HTMLElement {
  return element('section', { class: 'run-card' }, element('h2', {}, RUN.card), ...children);
}
