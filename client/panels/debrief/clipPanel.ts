import type { Command, Seat, TableView } from '../../../engine/table/index.ts';
import type { ClipShow } from '../../replay/clipShow.ts';
import { CLIP } from '../../text/debrief.ts';
import { READINGS, SEAT_NAMES } from '../../text/en.ts';
import { clock } from '../../text/numbers.ts';
import { button, element, entry, say } from '../element.ts';
import { readingText, SEAT_READINGS, type ReadingContext } from '../readings.ts';
import { callWords, whoWords } from '../sentenceWords.ts';
import { createTaskCards } from '../taskCards.ts';
import type { KnownDescent } from './debriefPart.ts';
import { createRelaid } from './relaid.ts';

/** Of what was said so many are shown, the newest first. */
const LATEST = 4;

/** Beside the section that plays: what stood before the chosen seat, and what had been said. */
export function createClipPanel(options: {
  readonly ask: (command: Command) => void;
  readonly show: ClipShow;
  readonly known: KnownDescent;
  readonly context: ReadingContext;
}): { readonly panel: HTMLElement; refresh(view: TableView): void } {
  const { ask, show, known, context } = options;
  const head = element('h3', {});
  const time = element('strong', { class: 'clip-time' });
  const state = element('p', { class: 'quiet' });
  const readings = createRelaid(element('dl', { class: 'clip-readings' }));
  const said = createRelaid(element('ul', { class: 'plain-list' }));
  // as they were: nothing on them can be pressed
  const tasks = createTaskCards({ ask: () => undefined, plan: known.plan });
  const cards = element('div', { class: 'clip-cards', inert: true }, ...tasks.cards);
  let clip: NonNullable<TableView['review']>['clip'];
  const again = button(CLIP.again, () => {
    if (clip === undefined) return;
    const { from, to, seat } = clip;
    ask({ kind: 'showClip', from, to, ...(seat && { seat }) });
  });
  const stop = button(CLIP.stop, () => ask({ kind: 'hideClip' }));
  const ways = element('div', { class: 'sheet-actions' }, again, stop);
  const seen = element('div', {}, readings.holder, cards, element('h4', {}, CLIP.said), said.holder);
  const panel = element(
    'section',
    { class: 'clip', 'aria-label': CLIP.label, hidden: true },
    element('p', { class: 'clip-head' }, head, time),
    state,
    seen,
    ways,
  );
  return {
    panel,
    refresh(view) {
      clip = view.review?.clip;
      panel.hidden = clip === undefined;
      if (clip === undefined) return;
      const { from, to, seat } = clip;
      ways.hidden = !view.you.runs;
      const by = seat === undefined ? CLIP.control : CLIP.seen(SEAT_NAMES[seat]);
      say(head, `${CLIP.head(clock(from), clock(to))}, ${by}`);
      say(state, stateWords(show));
      const frame = show.frame();
      seen.hidden = frame === undefined || show.state === 'failed';
      if (frame === undefined) return;
      say(time, clock(frame.after));
      layReadings(readings, seat, frame.view, context);
      cards.hidden = seat === undefined || !tasks.refresh(frame.view);
      const calls = frame.view.talk.calls.slice(-LATEST).toReversed();
      const lines = calls.map((call) => `${clock(call.after)} ${whoWords(call, undefined)}: ${callWords(call)}`);
      said.lay(lines, () => (lines.length === 0 ? [CLIP.nothingSaid] : lines).map((words) => element('li', {}, words)));
    },
  };
}

function stateWords({ state, whyNot }: ClipShow): string {
  if (state === 'loading') return CLIP.loading;
  if (state === 'failed') return CLIP.failed(whyNot);
  return state === 'ended' ? CLIP.ended : CLIP.legend;
}

function layReadings(
  readings: { lay(shown: unknown, make: () => readonly Node[]): void },
  seat: Seat | undefined,
  view: TableView,
  context: ReadingContext,
): void {
  const names = SEAT_READINGS[seat ?? 'observer'];
  const figures = names.map((name) => [READINGS[name], readingText(name, view, context)] as const);
  readings.lay(figures, () => figures.map(([name, value]) => entry(name, value)));
}
