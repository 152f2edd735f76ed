import type { Drill } from '../../../engine/drill/index.ts';
import type { DescentLog } from '../../../engine/replay/index.ts';
import type { Command, TableView } from '../../../engine/table/index.ts';
import type { TableLink } from '../../net/index.ts';
import type { PlayedPlan } from '../../plan.ts';
import { createClipShow, type ShownMoment } from '../../replay/clipShow.ts';
import { createLookBack, type LookBack } from '../../replay/lookBack.ts';
import { createReportSheet, type ReportSheet } from '../../report/reportSheet.ts';
import { CLIP, DEBRIEF } from '../../text/debrief.ts';
import type { Announcer } from '../announcer.ts';
import { button, element, say } from '../element.ts';
import type { ReadingContext } from '../readings.ts';
import type { KnownDescent } from './debriefPart.ts';
import { createDebriefSheet, leaderOf, stepOf, type DebriefSheet } from './debriefSheet.ts';
import { createDeclineQuestion } from './declineQuestion.ts';
import { explained } from '../../terms/term.ts';

/** All that looks back at a descent at rest: clips, the debrief, the report. */
export interface LookingBack {
  /** Asked before a drill is left without a debrief. */
  readonly question: HTMLElement;
  follow(view: TableView): void;
  /** The descent is not at rest any more. */
  forget(): void;
  /** The moment of a clip that is to be drawn now. */
  moment(): ShownMoment | undefined;
  /** Whether a step of the debrief is on. */
  isOn(): boolean;
  layDebrief(ways: { readonly card: () => void; readonly report: () => void }): DebriefSheet;
  layReport(back: () => void): ReportSheet;
  createWays(ways: { readonly goBack: (view: TableView) => void; readonly report: (view: TableView) => void }): Ways;
  /** Goes on at once, or after it was said why there is no debrief. */
  beforeGoing(goOn: () => void): void;
}

interface Ways {
  readonly buttons: readonly HTMLElement[];
  refresh(view: TableView): void;
}

export function createLookingBack(options: {
  readonly link: TableLink;
  readonly ask: (command: Command) => void;
  readonly plan: () => PlayedPlan;
  readonly readings: ReadingContext;
  readonly note: (words: string) => void;
  readonly announcer: Announcer;
  readonly leave: () => void;
}): LookingBack {
  const { link, ask, announcer } = options;
  const kept = keepKnown(link, options.plan);
  const show = createClipShow(kept.lookBack);
  const decline = createDeclineQuestion((reason) => link.command({ kind: 'declineDebrief', reason }));
  const beforeGoing = (goOn: () => void) => {
    if (link.view === undefined) goOn();
    else decline.ask(link.view, goOn);
  };
  let told: string | undefined;
  return {
    question: decline.sheet,
    follow(view) {
      show.follow(view);
      kept.follow(view);
      const step = stepOf(view);
      if (step !== undefined && step !== told) announcer.announce(DEBRIEF.aloud(DEBRIEF.steps[step]), 'now');
      told = step;
    },
    forget() {
      told = undefined;
      kept.forget();
    },
    moment: () => (link.view?.review?.clip === undefined ? undefined : show.moment()),
    isOn: () => link.view !== undefined && stepOf(link.view) !== undefined,
    layDebrief: (ways) =>
      createDebriefSheet({
        ...ways,
        ask,
        show,
        known: kept.known,
        context: options.readings,
        decline: () => decline.open(),
        leave: () => beforeGoing(options.leave),
      }),
    layReport(back) {
      kept.wantLog();
      return createReportSheet({
        facts: { known: kept.known, code: link.code },
        recordText: () => link.recordText().then((text) => (text.ok ? text.value : undefined)),
        log: () => kept.lookBack().log(),
        whyNoLog: () => kept.lookBack().refusal ?? CLIP.unread,
        note: options.note,
        back,
        leave: () => beforeGoing(options.leave),
      });
    },
    createWays: ({ goBack, report }) =>
      createWays({
        open: () => ask({ kind: 'setDebriefStep', step: 'hot wash' }),
        goBack: () => link.view && goBack(link.view),
        report: () => link.view && report(link.view),
      }),
    beforeGoing,
  };
}

interface KeptKnown {
  readonly known: KnownDescent;
  readonly lookBack: () => LookBack;
  follow(view: TableView): void;
  /** Samples are wanted: they take a second or two to be made. */
  wantLog(): void;
  forget(): void;
}

/** What is made once for a descent at rest, and gone with it. */
function keepKnown(link: TableLink, plan: () => PlayedPlan): KeptKnown {
  let lookBack: LookBack | undefined;
  let drill: Drill | undefined;
  let log: DescentLog | undefined;
  let isFailed = false;
  let isWanted = false;
  const current = () => (lookBack ??= createLookBack(link));
  const wantLog = () => {
    if (isWanted) return;
    isWanted = true;
    const of = current();
    void of.log().then((made) => {
      if (of !== lookBack) return;
      log = made;
      isFailed = made === undefined;
    });
  };
  return {
    known: { plan, drill: () => drill, log: () => log, isFailed: () => isFailed },
    lookBack: current,
    follow(view) {
      if (lookBack === undefined && view.drill !== undefined) {
        const of = current();
        void of.drill().then((read) => {
          if (of === lookBack) drill = read;
        });
      }
      if (view.review?.step === 'analysis' || view.review?.step === 'summary') wantLog();
    },
    wantLog,
    forget() {
      lookBack = undefined;
      drill = undefined;
      log = undefined;
      isFailed = false;
      isWanted = false;
    },
  };
}

/** On the scorecard: to the debrief, for whoever may open it or once it is on, and to the report. */
function createWays(acts: {
  readonly open: () => void;
  readonly goBack: () => void;
  readonly report: () => void;
}): Ways {
  const open = explained(button(DEBRIEF.open, acts.open, { class: 'to-debrief' }), 'debrief');
  const goBack = button(DEBRIEF.goBack, acts.goBack, { class: 'primary' });
  const waits = element('span', { class: 'hint' });
  return {
    buttons: [open, goBack, waits, button(DEBRIEF.report, acts.report)],
    refresh(view) {
      const isOpen = view.review?.step === 'scorecard';
      open.hidden = !isOpen || !view.you.runs;
      // what comes after a drill is its debrief, before another run
      open.classList.toggle('primary', view.drill !== undefined);
      goBack.hidden = stepOf(view) === undefined;
      waits.hidden = !isOpen || view.you.runs || view.drill === undefined;
      say(waits, DEBRIEF.opens(leaderOf(view)));
    },
  };
}
