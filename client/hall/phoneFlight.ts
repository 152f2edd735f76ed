import { formatProblem, refuse, type Result } from '../../engine/result.ts';
import { playedModel, type Command, type Refusal } from '../../engine/table/index.ts';
import { choiceOfHall, layOut, type HallDescent, type PhoneLanding } from '../../levels/index.ts';
import { openLocalTable, type TableLink } from '../net/index.ts';
import { layTable } from '../panels/tablePage.ts';
import { LOBBY } from '../text/en.ts';
import { FLIGHT } from '../text/hall.ts';
import { keepPath, landingOf } from './flownLanding.ts';

/** Flies what the whole hall flies, in this page and at the controls of every flight alone. `done` hears how it ended; undefined: it was left. */
export function flyForHall(
  holder: HTMLElement,
  descent: HallDescent,
  done: (landing: PhoneLanding | undefined) => void,
): { end(): void } {
  const plan = layOut(choiceOfHall(descent));
  if (!plan.ok) throw new Error(plan.error.map(formatProblem).join('; '));
  const opened = openLocalTable({ plan: plan.value, model: playedModel, name: LOBBY.you });
  if (!opened.ok || opened.value.view === undefined) throw new Error('A table in this page is refused to nobody');
  const link = flownTogether(opened.value);
  const first = opened.value.view;
  void link.command({ kind: 'takeSeat', seat: 'flying' });
  void link.command({ kind: 'begin' });
  // what would take it out of step is not there to be pressed
  holder.dataset['flight'] = 'hall';
  const path = keepPath();
  let landing: PhoneLanding | undefined;
  const table = layTable(holder, link, first, {
    onLeave() {
      delete holder.dataset['flight'];
      done(landing);
    },
    // nobody chooses another landing here
    onOtherPlan: () => undefined,
  });
  const unsubscribe = link.subscribe(() => {
    const { view } = link;
    if (view?.stage === 'descending') path.add([view.flight.x, view.flight.y]);
    if (view?.stage !== 'resolved' || landing !== undefined) return;
    path.add([view.flight.x, view.flight.y]);
    landing = landingOf(view, path.points());
    unsubscribe();
    // not from within the call that tells everybody
    queueMicrotask(() => table.leave());
  });
  return {
    end() {
      unsubscribe();
      if (link.state !== 'closed') table.leave();
    },
  };
}

/** Everybody flies the same time: nobody holds it, slows it down or begins anew. */
const OUT_OF_STEP: readonly Command['kind'][] = ['hold', 'setPace', 'again'];

function flownTogether(link: TableLink): TableLink {
  const refused: Result<void, Refusal> = refuse({ code: 'table/hall', reason: FLIGHT.together });
  return {
    kind: link.kind,
    get state() {
      return link.state;
    },
    get view() {
      return link.view;
    },
    subscribe: (listener) => link.subscribe(listener),
    command: (asked) => (OUT_OF_STEP.includes(asked.kind) ? Promise.resolve(refused) : link.command(asked)),
    recordText: () => link.recordText(),
    drillText: () => link.drillText(),
    leave: () => link.leave(),
  };
}
