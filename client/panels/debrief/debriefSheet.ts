import type { DebriefStep } from '../../../engine/review/index.ts';
import type { Command, TableView } from '../../../engine/table/index.ts';
import type { ClipShow } from '../../replay/clipShow.ts';
import { DEBRIEF } from '../../text/debrief.ts';
import { button, element, leaveButton, say } from '../element.ts';
import type { ReadingContext } from '../readings.ts';
import { tableSheet } from '../tableSheet.ts';
import { createAnalysis } from './analysis.ts';
import type { DebriefPart, KnownDescent } from './debriefPart.ts';
import { createHotWash } from './hotWash.ts';
import { createSummary } from './summary.ts';
import { createDescription, createReactions } from './tellParts.ts';
import { explained } from '../../terms/term.ts';

/** The steps that lie on this sheet, in order. */
const STEPS = ['hot wash', 'reactions', 'description', 'analysis', 'summary'] as const;
type Step = (typeof STEPS)[number];

/** What each is meant to take [min]: common practice for a run of this length. */
const MINUTES: Readonly<Record<Step, number>> = {
  'hot wash': 2,
  reactions: 2,
  description: 2,
  analysis: 15,
  summary: 5,
};

export interface DebriefSheet {
  readonly sheet: HTMLElement;
  refresh(view: TableView): void;
}

/** The debrief on every screen at once: whoever runs the table turns to the next step, and all follow. */
export function createDebriefSheet(options: {
  readonly ask: (command: Command) => void;
  readonly show: ClipShow;
  readonly known: KnownDescent;
  readonly context: ReadingContext;
  /** Looks at the scorecard in between, on this screen alone. */
  readonly card: () => void;
  readonly report: () => void;
  readonly decline: () => void;
  readonly leave: () => void;
}): DebriefSheet {
  const { ask } = options;
  const parts: Readonly<Record<Step, DebriefPart>> = {
    'hot wash': createHotWash(ask),
    reactions: createReactions(),
    description: createDescription(options.known),
    analysis: createAnalysis(options),
    summary: createSummary(ask),
  };
  const head = element('h2', { tabindex: -1 });
  const who = element('span', {});
  const time = element('span', {});
  const steps = createSteps(ask);
  const move = createMoves(options);
  const holder = element('div', {});
  let shown: Step | undefined;
  return {
    sheet: tableSheet(
      {
        kind: 'scorecard debrief',
        label: DEBRIEF.label,
        actions: [
          ...move.buttons,
          button(DEBRIEF.steps.scorecard, options.card),
          button(DEBRIEF.report, options.report),
          leaveButton(options.leave),
        ],
      },
      element('p', { class: 'sheet-head' }, who, time),
      steps.bar,
      head,
      holder,
    ),
    refresh(view) {
      const step = stepOf(view);
      if (step === undefined) return;
      say(who, view.you.runs ? DEBRIEF.youLead : DEBRIEF.leads(leaderOf(view)));
      if (step !== shown) {
        shown = step;
        say(head, DEBRIEF.steps[step]);
        say(time, DEBRIEF.about(MINUTES[step]));
        holder.replaceChildren(parts[step].part);
      }
      steps.refresh(step, view.you.runs);
      move.refresh(step, view.you.runs);
      parts[step].refresh(view);
    },
  };
}

/** The step that is shown on this sheet; undefined before the debrief, and after it. */
export function stepOf({ review }: Pick<TableView, 'review'>): Step | undefined {
  return STEPS.find((step) => step === review?.step);
}

/** By name: the facilitator, else the first seat that is taken. */
export function leaderOf({ others, seats }: TableView): string {
  return (
    others.find(({ role }) => role === 'facilitator')?.name ?? seats.find(({ name }) => name !== undefined)?.name ?? ''
  );
}

function createSteps(ask: (command: Command) => void): {
  readonly bar: HTMLElement;
  refresh(step: DebriefStep, isLeading: boolean): void;
} {
  const keys = STEPS.map((step) => {
    const key = button(DEBRIEF.steps[step], () => ask({ kind: 'setDebriefStep', step }));
    return [step, step === 'hot wash' ? explained(key, step) : key] as const;
  });
  return {
    bar: element('ol', { class: 'steps' }, ...keys.map(([, key]) => element('li', {}, key))),
    refresh(step, isLeading) {
      for (const [of, key] of keys) {
        key.disabled = !isLeading || of === step;
        if (of === step) key.setAttribute('aria-current', 'step');
        else key.removeAttribute('aria-current');
      }
    },
  };
}

/** For whoever runs: on, and out. */
function createMoves({ ask, decline }: { readonly ask: (command: Command) => void; readonly decline: () => void }): {
  readonly buttons: readonly HTMLElement[];
  refresh(step: Step, isLeading: boolean): void;
} {
  let at: Step = 'hot wash';
  const next = button(
    '',
    () => {
      const step = STEPS[STEPS.indexOf(at) + 1];
      ask(step === undefined ? { kind: 'closeDebrief' } : { kind: 'setDebriefStep', step });
    },
    { class: 'primary' },
  );
  const out = button(DEBRIEF.decline, decline);
  return {
    buttons: [next, out],
    refresh(step, isLeading) {
      at = step;
      const following = STEPS[STEPS.indexOf(step) + 1];
      say(next, following === undefined ? DEBRIEF.close : DEBRIEF.next(DEBRIEF.steps[following]));
      next.hidden = !isLeading;
      out.hidden = !isLeading || following === undefined;
    },
  };
}
