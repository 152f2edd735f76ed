import { VEHICLE_FAULT_SOURCES, VEHICLE_PARTS } from '../../engine/faults/index.ts';
import { SOURCES } from '../../engine/sensors/index.ts';
import {
  CHANGE_KINDS,
  DESCENT_RATE_RANGE_TENTHS,
  STANCE_RANGE_PERCENT,
  type Change,
} from '../../engine/table/index.ts';
import { WORLDS } from '../../engine/worlds.ts';
import { layWhatIf } from '../../levels/index.ts';
import { flyForkAside } from '../net/index.ts';
import { element, say } from '../panels/element.ts';
import { createForkPart } from '../panels/forkPart.ts';
import { PART_NAMES, SOURCE_NAMES } from '../text/en.ts';
import { RUN } from '../text/logbook.ts';
import { unitOf } from '../text/numbers.ts';
import type { PlayedRun } from './playedRun.ts';
import { withLabel } from './withLabel.ts';

/** Asks what is to be otherwise, flies the rest of the run again with it, and draws the two beside each other. */
export function createWhatIfPart(run: PlayedRun): HTMLElement | undefined {
  const { card, points } = run.track;
  const last = points.at(-1);
  if (card === undefined || last === undefined) return undefined;
  const failed = (card.failures ?? []).map(({ source }) => source);
  const defects = (card.defects ?? []).map(({ kind: defect }) => VEHICLE_FAULT_SOURCES[defect]);
  const parts = VEHICLE_PARTS.filter((each) => defects.includes(each));
  const { instruments } = run.plan;
  const offered = CHANGE_KINDS.filter(
    (kind) =>
      (kind !== 'source healthy' || failed.length > 0) &&
      (kind !== 'part sound' || parts.length > 0) &&
      (kind !== 'source rejected' || instruments),
  );
  const kind = select(offered.map((each) => [each, RUN.changes[each]]));
  const healthy = select(failed.map((each) => [each, SOURCE_NAMES[each]]));
  const part = select(parts.map((each) => [each, PART_NAMES[each]]));
  const rejected = select(SOURCES.map((each) => [each, SOURCE_NAMES[each]]));
  const unit = unitOf('speed');
  const at = number({ min: 0, max: Math.floor(last.after), step: 1, value: Math.floor(last.after / 2) });
  const rate = number({
    min: 0,
    max: Math.floor((DESCENT_RATE_RANGE_TENTHS.most / 10 / unit.size) * 10) / 10,
    step: 'any',
    value: 1,
  });
  const world = select(WORLDS.filter(({ id }) => id !== run.plan.worldId).map(({ id, name }) => [id, name]));
  const { least, most } = STANCE_RANGE_PERCENT;
  const stance = number({ min: least, max: most, step: 1, value: 120 });
  const changeNow = (): Change | undefined => {
    const chosen = offered.find((each) => each === kind.value);
    const seconds = Number(at.value);
    switch (chosen) {
      case 'source healthy':
        return { kind: chosen, source: failed.find((each) => each === healthy.value) ?? 'altimeter' };
      case 'part sound':
        return { kind: chosen, part: parts.find((each) => each === part.value) ?? 'engine' };
      case 'source rejected':
        return { kind: chosen, source: SOURCES.find((each) => each === rejected.value) ?? 'altimeter', seconds };
      case 'descent rate':
        return { kind: chosen, seconds, tenths: Math.round(Number(rate.value) * unit.size * 10) };
      case 'world':
        return { kind: chosen, world: world.value };
      case 'stance':
        return { kind: chosen, percent: Number(stance.value) };
      case undefined:
        return undefined;
    }
    return chosen satisfies never;
  };
  const fields: readonly (readonly [HTMLElement, readonly Change['kind'][]])[] = [
    [withLabel(RUN.source, healthy), ['source healthy']],
    [withLabel(RUN.part, part), ['part sound']],
    [withLabel(RUN.source, rejected), ['source rejected']],
    [withLabel(RUN.at, at), ['source rejected', 'descent rate']],
    [withLabel(RUN.rate(unit.sign), rate), ['descent rate']],
    [withLabel(RUN.world, world), ['world']],
    [withLabel(RUN.stance, stance), ['stance']],
  ];
  const showFields = () => {
    for (const [field, kinds] of fields) field.hidden = !kinds.some((each) => each === kind.value);
  };
  kind.addEventListener('change', showFields);
  showFields();
  const status = element('p', { class: 'hint', role: 'status' });
  const shown = element('div', { class: 'run-fork' });
  const form = element(
    'form',
    { class: 'run-what-if' },
    withLabel(RUN.change, kind),
    ...fields.map(([field]) => field),
    element('button', { type: 'submit' }, RUN.fly),
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const change = changeNow();
    if (change === undefined) return;
    shown.replaceChildren();
    say(status, RUN.flying);
    const other = layWhatIf(run.plan, change);
    void flyForkAside({ record: run.record, plan: run.plan, change, ...(other && { other }) }).then((flown) => {
      say(status, flown?.ok === true ? '' : (flown?.error.reason ?? RUN.notFlown));
      if (flown?.ok === true) shown.replaceChildren(createForkPart(flown.value, card, last.truth));
    });
  });
  return element('section', { class: 'run-again' }, element('h2', {}, RUN.whatIf), form, status, shown);
}

function select(options: readonly (readonly [value: string, words: string])[]): HTMLSelectElement {
  return element('select', {}, ...options.map(([value, words]) => element('option', { value }, words)));
}

function number(range: {
  readonly min: number;
  readonly max: number;
  readonly step: number | 'any';
  readonly value: number;
}): HTMLInputElement {
  return element('input', { type: 'number', required: true, ...range });
}
