import { SIMPLIFICATIONS } from '../../engine/checks/index.ts';
import { TOPICS } from '../../engine/review/index.ts';
import type { Scorecard, TableView } from '../../engine/table/index.ts';
import type { KnownDescent } from '../panels/debrief/debriefPart.ts';
import { washedList } from '../panels/debrief/hotWash.ts';
import { injectList } from '../panels/debrief/injectList.ts';
import { timedMoment } from '../panels/debrief/momentWords.ts';
import { actionTable } from '../panels/debrief/planTable.ts';
import { ratedLine } from '../panels/debrief/ratings.ts';
import { loadTable } from '../panels/debrief/workload.ts';
import { element } from '../panels/element.ts';
import { lineWords } from '../panels/talkLog.ts';
import { exerciseLine } from '../panels/titleBlock.ts';
import { ANALYSIS, DESCRIPTION, MEASURES, REPORT, SUMMARY, WORKLOAD } from '../text/debrief.ts';
import { lineList, numbersPart, outcomePart } from './outcomeParts.ts';
import { headPart, seatsPart } from './headParts.ts';

/** What a report is made from: the view at rest, what is known besides, and when and where it is made. */
export interface ReportFacts {
  readonly view: TableView & { readonly scorecard: Scorecard };
  readonly known: KnownDescent;
  /** Of the table; undefined alone. */
  readonly code: string | undefined;
  /** As it is to be read. */
  readonly date: string;
}

/** The after-action report: the same on screen, on paper and as a file. No script, nothing from elsewhere. */
export function reportArticle(facts: ReportFacts): HTMLElement {
  const { view, known } = facts;
  const { review } = view;
  const log = known.log();
  const said = log?.talk.log.flatMap((line) => lineWords(line, log.talk.calls)) ?? [];
  const moments = review?.moments ?? [];
  return element(
    'article',
    { class: 'report' },
    exerciseLine(),
    headPart(facts),
    part(REPORT.seats, seatsPart(view)),
    part(REPORT.outcome, ...outcomePart(facts)),
    part(REPORT.objectives, ...objectivesPart(view)),
    part(
      REPORT.happened,
      moments.length === 0
        ? element('p', {}, DESCRIPTION.nothing)
        : lineList(moments.map((moment) => timedMoment(moment, known.drill()))),
    ),
    part(MEASURES.title, ...injectList(review?.measures ?? [], known.drill(), undefined, ['h3', 'h4'])),
    part(REPORT.numbers, ...numbersPart(facts)),
    part(REPORT.notes, notesPart(view)),
    part(REPORT.hotWash, washedList(review?.hotWash ?? [])),
    part(WORKLOAD.title, loadTable(review?.loads ?? [])),
    part(
      REPORT.plan,
      review?.declined === undefined ? undefined : element('p', {}, REPORT.declined(review.declined)),
      element('p', {}, `${SUMMARY.goal}: ${review?.goal || SUMMARY.goalNone}`),
      actionTable(review?.actions ?? []),
    ),
    part(REPORT.log, said.length === 0 ? element('p', {}, noLogWords(known)) : lineList(said)),
    part(REPORT.simplified, lineList(SIMPLIFICATIONS)),
    exerciseLine(),
  );
}

/** Nobody has said anything, or nobody knows yet. */
function noLogWords({ log, isFailed }: KnownDescent): string {
  if (log() !== undefined) return REPORT.logNone;
  return isFailed() ? REPORT.logUnread : REPORT.logLoading;
}

function part(title: string, ...children: readonly (HTMLElement | undefined)[]): HTMLElement {
  return element('section', {}, element('h2', {}, title), ...children);
}

function objectivesPart({ drill, review }: TableView): readonly HTMLElement[] {
  const objectives = drill?.objectives ?? [];
  return objectives.flatMap(({ id, text }) => [
    element('h3', {}, text),
    ratedLine(review?.ratings.find(({ objective }) => objective === id)),
  ]);
}

function notesPart({ review }: TableView): HTMLElement {
  const notes = TOPICS.flatMap((topic) => {
    const text = review?.notes.find((note) => note.topic === topic)?.text ?? '';
    return text === '' ? [] : [`${ANALYSIS.topics[topic]}: ${text}`];
  });
  return notes.length === 0 ? element('p', {}, REPORT.notesNone) : lineList(notes);
}
