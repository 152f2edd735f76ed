import { LONGEST_NOTE, TOPICS, type ReviewMoment, type Topic } from '../../../engine/review/index.ts';
import { SEATS, type Seat, type TableView } from '../../../engine/table/index.ts';
import { TICK_RATE } from '../../../engine/world/index.ts';
import type { ClipShow } from '../../replay/clipShow.ts';
import { ANALYSIS, MEASURES, UTILISATION } from '../../text/debrief.ts';
import { SEAT_NAMES } from '../../text/en.ts';
import { surpriseWords } from '../beliefTable.ts';
import { button, drawing, element } from '../element.ts';
import { createPressedRow } from '../pressedRow.ts';
import type { ReadingContext } from '../readings.ts';
import type { Ask } from '../seatCard.ts';
import { createClipPanel } from './clipPanel.ts';
import { mayWrite, type DebriefPart, type KnownDescent } from './debriefPart.ts';
import { follow, pickField } from './fields.ts';
import { injectList } from './injectList.ts';
import { timedMoment } from './momentWords.ts';
import { createRelaid } from './relaid.ts';
import { createWhatIf } from './whatIfPart.ts';
import { drawUtilisation, LAST_SECONDS } from './utilisationDrawing.ts';
import { termed } from '../../terms/term.ts';

/** A clip begins so long before its moment, and goes on for so long after it: half of what one may last [s]. */
const BEFORE = 8;
const AFTER = 7;

/** Third step: by topic, with clips of the moments. */
export function createAnalysis(options: {
  readonly ask: Ask;
  readonly show: ClipShow;
  readonly known: KnownDescent;
  readonly context: ReadingContext;
}): DebriefPart {
  const { ask, known } = options;
  const clip = createClipPanel(options);
  const topics = createPressedRow<Topic>({
    label: ANALYSIS.topic,
    choices: TOPICS.map((topic) => [topic, ANALYSIS.topics[topic]]),
    press: (topic) => ask({ kind: 'setTopic', topic }),
  });
  topics.group.classList.add('topics');
  const prompt = createRelaid(element('div', { class: 'prompt' }));
  const note = createNote(ask);
  const seen = pickField<Seat | 'control'>(ANALYSIS.seenFrom, [
    ['control', ANALYSIS.control],
    ...SEATS.map((seat) => [seat, SEAT_NAMES[seat]] as const),
  ]);
  const moments = createRelaid(element('ol', { class: 'plain-list moments' }));
  const injects = createRelaid(element('section', {}));
  const margin = createRelaid(element('section', {}));
  const whatIf = createWhatIf(ask, known);
  const questions = createRelaid(element('section', {}));
  let end = Infinity;
  const play = (moment: ReviewMoment) => {
    const to = Math.min(moment.after + AFTER, end);
    const from = Math.max(0, Math.min(moment.after - BEFORE, to - 1));
    const seat = seen.chosen();
    ask({ kind: 'showClip', from, to, ...(seat !== 'control' && { seat }) });
  };
  return {
    part: element(
      'section',
      { class: 'debrief-part' },
      clip.panel,
      topics.group,
      prompt.holder,
      note.part,
      element('div', { class: 'moments-head' }, element('h3', {}, ANALYSIS.moments), seen.field),
      moments.holder,
      margin.holder,
      injects.holder,
      whatIf.part,
      questions.holder,
    ),
    refresh(view) {
      const { review, you } = view;
      if (review === undefined) return;
      clip.refresh(view);
      end = view.flight.tick / TICK_RATE;
      topics.refresh(review.topic, you.runs);
      seen.field.hidden = !you.runs;
      const drill = known.drill();
      prompt.lay([review.topic, you.runs], () => promptLines(review.topic, you.runs));
      note.refresh(view);
      moments.lay([review.moments, you.runs, drill?.id], () =>
        momentLines(review.moments, known, you.runs ? play : undefined),
      );
      injects.holder.hidden = review.topic === 'margin';
      const mayCorrect = mayWrite(view);
      injects.lay([review.measures, drill?.id, mayCorrect], () => [
        element('h3', {}, MEASURES.title),
        ...injectList(review.measures, drill, mayCorrect ? ask : undefined),
      ]);
      whatIf.refresh(view);
      margin.holder.hidden = review.topic !== 'margin';
      margin.lay([known.isFailed(), known.log() === undefined], () => marginPart(view, known));
      questions.holder.hidden = drill === undefined || drill.questions.length === 0;
      questions.lay(drill?.id, () => [
        element('h3', {}, ANALYSIS.questions),
        element('ul', {}, ...(drill?.questions ?? []).map(({ text }) => element('li', {}, text))),
      ]);
    },
  };
}

function promptLines(topic: Topic, isLeading: boolean): readonly HTMLElement[] {
  const lines = [ANALYSIS.prompts[topic], ANALYSIS.keepChange, ...(isLeading ? [ANALYSIS.ask] : [])];
  return lines.map((words, i) => element('p', { class: i === 0 ? 'why' : 'quiet' }, words));
}

function momentLines(
  moments: readonly ReviewMoment[],
  known: KnownDescent,
  play: ((moment: ReviewMoment) => void) | undefined,
): readonly HTMLElement[] {
  if (moments.length === 0) return [element('li', {}, ANALYSIS.noMoments)];
  return moments.map((moment) => {
    const words = timedMoment(moment, known.drill());
    const press = play && button(ANALYSIS.play, () => play(moment), { 'aria-label': ANALYSIS.playFully(words) });
    return element('li', {}, element('span', {}, words), press);
  });
}

/** What is agreed on about the topic: written by one, read by all. */
function createNote(ask: Ask): DebriefPart {
  const area = element('textarea', { rows: 2, maxlength: LONGEST_NOTE, 'aria-label': ANALYSIS.note });
  let topic: Topic = 'sharing';
  let laid = '';
  const keep = () => {
    const text = area.value.trim();
    if (text !== laid) ask({ kind: 'noteTopic', topic, text });
  };
  // nobody loses what they typed by going on
  area.addEventListener('change', keep);
  const save = button(ANALYSIS.save, keep);
  const written = element('div', { class: 'note-form' }, area, save);
  const read = createRelaid(element('p', { class: 'agreed' }));
  return {
    part: element('div', { class: 'note' }, element('h3', {}, ANALYSIS.note), written, read.holder),
    refresh(view) {
      const { review } = view;
      const isWriting = mayWrite(view);
      const text = review?.notes.find((one) => one.topic === review.topic)?.text ?? '';
      // another topic has another note, whoever is typing
      if (review !== undefined && review.topic !== topic) area.blur();
      topic = review?.topic ?? topic;
      laid = text;
      written.hidden = !isWriting;
      read.holder.hidden = isWriting;
      follow(area, text);
      read.lay(text, () => [text === '' ? ANALYSIS.noteNone : text]);
    },
  };
}

function marginPart({ scorecard }: TableView, known: KnownDescent): readonly (HTMLElement | undefined)[] {
  const log = known.log();
  const head = element('h3', {}, UTILISATION.title);
  const contact = scorecard?.contacts[0];
  const surprise = scorecard?.belief && contact && element('p', {}, surpriseWords(scorecard.belief, contact));
  const drawn = log && drawUtilisation(log.samples);
  if (drawn === undefined) {
    const isLoading = log === undefined && !known.isFailed();
    return [head, surprise, element('p', { class: 'quiet' }, isLoading ? UTILISATION.loading : UTILISATION.none)];
  }
  const { markup, viewBox, label } = drawn;
  return [
    head,
    surprise,
    element(
      'figure',
      {},
      element('figcaption', {}, ...termed(UTILISATION.caption(LAST_SECONDS), 'utilization', 'Share of the tip limit')),
      drawing(markup, { viewBox, label, class: 'measure-scale' }),
    ),
  ];
}
