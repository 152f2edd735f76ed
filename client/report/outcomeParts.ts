import { turnLine } from '../panels/turnLine.ts';
import { beliefTable, surpriseWords } from '../panels/beliefTable.ts';
import { CONTACT_HEIGHT, drawContact } from '../panels/contactDrawing.ts';
import { drawUtilisation, LAST_SECONDS } from '../panels/debrief/utilisationDrawing.ts';
import { drawing, element, entry } from '../panels/element.ts';
import { limitWords } from '../panels/speedScale.ts';
import { decidingContact, verdictOf } from '../panels/verdict.ts';
import { isBroken } from '../scenes/pose.ts';
import { REPORT, UTILISATION } from '../text/debrief.ts';
import { SCORECARD } from '../text/en.ts';
import { mass, percent, speed } from '../text/numbers.ts';
import { figureOf } from '../views/lander/figure.ts';
import type { ReportFacts } from './reportArticle.ts';

/** Outcome and reason in words, surprise, and the contact that decided, drawn. */
export function outcomePart({ view, known }: ReportFacts): readonly (HTMLElement | undefined)[] {
  const { scorecard, flight } = view;
  const verdict = verdictOf(scorecard, flight);
  const first = scorecard.contacts[0];
  const deciding = decidingContact(scorecard)?.contact;
  const { setup } = known.plan();
  const drawn =
    deciding &&
    drawContact(deciding, figureOf(setup.lander), {
      broken: [isBroken(flight, 'left'), isBroken(flight, 'right')],
      fill: scorecard.propellantLeft / Math.max(1, setup.propellant),
      height: CONTACT_HEIGHT.full,
    });
  return [
    element('p', { class: 'report-outcome' }, verdict.headline),
    element('p', {}, verdict.why),
    turnLine(scorecard),
    scorecard.belief && first && element('p', {}, surpriseWords(scorecard.belief, first)),
    drawn &&
      element(
        'figure',
        {},
        drawing(drawn.markup, { viewBox: drawn.viewBox, label: REPORT.drawing, class: 'report-drawing' }),
        element('figcaption', {}, REPORT.drawing),
      ),
  ];
}

/** What was believed and what was so at the first contact, the limit, and how near it was over the last seconds. */
export function numbersPart({ view, known }: ReportFacts): readonly (HTMLElement | undefined)[] {
  const { scorecard } = view;
  const deciding = decidingContact(scorecard)?.contact;
  const log = known.log();
  const drawn = log && drawUtilisation(log.samples);
  return [
    beliefTable(scorecard),
    element(
      'dl',
      { class: 'report-facts' },
      ...(deciding === undefined
        ? []
        : [
            entry(SCORECARD.movedAt, speed(Math.abs(deciding.arrival.vx))),
            entry(SCORECARD.descentRate, speed(deciding.arrival.descentRate)),
            ...(deciding.limit === undefined
              ? []
              : [entry(REPORT.limit, limitWords({ tip: deciding.limit.tip, upTo: deciding.limit.upTo }))]),
            ...(deciding.utilisation === undefined ? [] : [entry(REPORT.share, percent(deciding.utilisation))]),
          ]),
      entry(SCORECARD.propellant, mass(scorecard.propellantLeft)),
    ),
    drawn &&
      element(
        'figure',
        {},
        drawing(drawn.markup, { viewBox: drawn.viewBox, label: drawn.label, class: 'report-drawing' }),
        element('figcaption', {}, UTILISATION.caption(LAST_SECONDS)),
      ),
  ];
}

export function lineList(lines: readonly string[]): HTMLElement {
  return element('ul', {}, ...lines.map((words) => element('li', {}, words)));
}
