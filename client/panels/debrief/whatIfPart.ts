import { VEHICLE_FAULT_SOURCES, VEHICLE_PARTS, type VehiclePart } from '../../../engine/faults/index.ts';
import { SOURCES, type Source } from '../../../engine/sensors/index.ts';
import { CHANGE_KINDS, type Change, type TableView } from '../../../engine/table/index.ts';
import { findLander, worldsFor } from '../../../levels/index.ts';
import { changeWords } from '../../text/changeWords.ts';
import { WHAT_IF_ASKED } from '../../text/debrief.ts';
import { PART_NAMES, SOURCE_NAMES } from '../../text/en.ts';
import { percent, speed } from '../../text/numbers.ts';
import { createChoice } from '../choiceList.ts';
import { button, element } from '../element.ts';
import { createForkPart } from '../forkPart.ts';
import type { Ask } from '../seatCard.ts';
import { mayWrite, type DebriefPart, type KnownDescent } from './debriefPart.ts';
import { timedMoment } from './momentWords.ts';
import { createRelaid } from './relaid.ts';

/** Descent rates that may be asked for [dm/s], and stances [%]. */
const RATES = [8, 12, 15, 20, 25] as const;
const STANCES = [70, 85, 120, 150] as const;

/** "What if we had ...": the control side asks, the engine flies the rest again, and everybody sees it beside what happened. */
export function createWhatIf(ask: Ask, known: KnownDescent): DebriefPart {
  const kind = createChoice(WHAT_IF_ASKED.what);
  const source = createChoice(WHAT_IF_ASKED.source);
  source.refresh(SOURCES.map((each) => [each, SOURCE_NAMES[each]]));
  const part = createChoice(WHAT_IF_ASKED.part);
  const rate = createChoice(WHAT_IF_ASKED.rate);
  rate.refresh(RATES.map((tenths) => [String(tenths), speed(tenths / 10, 1)]));
  const stance = createChoice(WHAT_IF_ASKED.stance);
  stance.refresh(STANCES.map((share) => [String(share), percent(share / 100)]));
  const world = createChoice(WHAT_IF_ASKED.world);
  const moment = createChoice(WHAT_IF_ASKED.moment);
  const asked = (): Change => {
    const chosen = CHANGE_KINDS.find((each) => each === kind.value()) ?? 'source healthy';
    return {
      kind: chosen,
      ...(takes(chosen, 'source') && { source: sourceOf(source.value()) }),
      ...(chosen === 'part sound' && { part: partOf(part.value()) }),
      ...(takes(chosen, 'moment') && { seconds: Number(moment.value()) }),
      ...(chosen === 'descent rate' && { tenths: Number(rate.value()) }),
      ...(chosen === 'world' && { world: world.value() }),
      ...(chosen === 'stance' && { percent: Number(stance.value()) }),
    };
  };
  const fly = button(WHAT_IF_ASKED.fly, () => {
    const { kind: change, ...rest } = asked();
    ask({ kind: 'askWhatIf', change, ...rest });
  });
  const show = () => {
    const chosen = CHANGE_KINDS.find((each) => each === kind.value());
    source.list.hidden = !takes(chosen, 'source');
    part.list.hidden = chosen !== 'part sound';
    moment.list.hidden = !takes(chosen, 'moment');
    rate.list.hidden = chosen !== 'descent rate';
    world.list.hidden = chosen !== 'world';
    stance.list.hidden = chosen !== 'stance';
  };
  kind.list.addEventListener('change', show);
  const form = element(
    'div',
    { class: 'what-if-form' },
    ...[kind, source, part, rate, world, stance, moment].map(({ list }) => list),
    fly,
  );
  const answers = createRelaid(element('div', {}));
  return {
    part: element('section', { class: 'what-if' }, element('h3', {}, WHAT_IF_ASKED.title), form, answers.holder),
    refresh(view) {
      form.hidden = !mayWrite(view);
      const parts = partsOutOfOrder(view);
      part.refresh(parts.map((each) => [each, PART_NAMES[each]]));
      const kinds = CHANGE_KINDS.filter((each) => each !== 'part sound' || parts.length > 0);
      kind.refresh(kinds.map((each) => [each, WHAT_IF_ASKED.kinds[each]]));
      world.refresh(otherWorlds(view));
      moment.refresh(
        (view.review?.moments ?? []).map((each) => [String(each.after), timedMoment(each, known.drill())]),
      );
      show();
      answers.lay(view.review?.whatIfs, () => answersOf(view));
    },
  };
}

type Kind = Change['kind'];

function takes(kind: Kind | undefined, what: 'source' | 'moment'): boolean {
  if (kind === 'source rejected') return true;
  return what === 'source' ? kind === 'source healthy' : kind === 'descent rate';
}

function sourceOf(value: string): Source {
  return SOURCES.find((each) => each === value) ?? 'altimeter';
}

function partOf(value: string): VehiclePart {
  return VEHICLE_PARTS.find((each) => each === value) ?? 'engine';
}

function partsOutOfOrder({ scorecard }: TableView): readonly VehiclePart[] {
  const parts = (scorecard?.defects ?? []).map(({ kind }) => VEHICLE_FAULT_SOURCES[kind]);
  return VEHICLE_PARTS.filter((each) => parts.includes(each));
}

function otherWorlds({ plan }: TableView): readonly (readonly [string, string])[] {
  const lander = findLander(plan.landerId);
  const flown = lander === undefined ? [] : worldsFor(lander);
  return flown.filter(({ id }) => id !== plan.worldId).map(({ id, name }) => [id, name]);
}

/** The latest first: each as it came, or that it is being flown. */
function answersOf({ review, scorecard, flight }: TableView): readonly HTMLElement[] {
  const asked = review?.whatIfs ?? [];
  if (asked.length === 0) return [element('p', { class: 'quiet' }, WHAT_IF_ASKED.none)];
  return asked.toReversed().map(({ change, fork, refused }) => {
    if (fork !== undefined && scorecard !== undefined) return createForkPart(fork, scorecard, flight);
    const words = refused === undefined ? WHAT_IF_ASKED.flying : WHAT_IF_ASKED.refused(refused);
    return element('p', { role: 'status' }, `${WHAT_IF_ASKED.and(changeWords(change))} ${words}`);
  });
}
