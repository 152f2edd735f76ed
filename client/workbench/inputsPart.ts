import { parseLanderText } from '../../engine/lander/index.ts';
import { formatProblem } from '../../engine/result.ts';
import { SHAPE_FACTS, SHAPE_FIELDS, shapeOf, type ShapeField, type StudyCase } from '../../engine/study/index.ts';
import { WORLDS } from '../../engine/worlds.ts';
import { LANDERS } from '../../levels/index.ts';
import { button, element, say } from '../panels/element.ts';
import { BENCH, FIELD_WORDS } from '../text/workbench.ts';
import {
  ARRIVAL_BOUNDS,
  ARRIVAL_NAMES,
  baseLander,
  FROM_FILE,
  type ArrivalName,
  type BenchState,
} from './benchState.ts';
import { numberField, type NumberField } from './numberField.ts';
import { termLine } from '../terms/term.ts';

interface InputsPart {
  readonly node: HTMLElement;
  show(state: BenchState, asked: StudyCase | undefined, fault: string): void;
}

/** Steps of the arrow keys for what can be changed of a lander, in its unit. */
const SHAPE_STEPS: { readonly [Field in ShapeField]: number } = {
  legCount: 1,
  footRadius: 0.1,
  crushForce: 500,
  stroke: 0.02,
  mass: 100,
  fill: 0.05,
  centerHeight: 0.1,
};

/** Everything that is set, as fields. */
export function createInputsPart(
  change: (next: Partial<BenchState>) => void,
  save: () => void,
  drawing: HTMLElement,
): InputsPart {
  let state: BenchState | undefined;
  const shelf = element('select', { id: 'bench-shelf' });
  const status = element('p', { class: 'bench-fault', role: 'alert' });
  const file = element('input', { type: 'file', accept: '.json,application/json', id: 'bench-file' });
  shelf.addEventListener('change', () => {
    if (shelf.value !== FROM_FILE) change({ lander: shelf.value, file: undefined, shape: {}, missing: [] });
  });
  file.addEventListener('change', () => {
    const [given] = file.files ?? [];
    if (given === undefined) return;
    void given.text().then((text) => {
      const read = parseLanderText(text);
      file.value = '';
      say(status, read.ok ? '' : BENCH.noSuchFile(given.name, read.error.map(formatProblem)[0] ?? ''));
      if (read.ok) change({ lander: FROM_FILE, file: read.value, shape: {}, missing: [] });
    });
  });
  const shapeFields = new Map<ShapeField, { readonly field: NumberField; readonly back: HTMLButtonElement }>();
  for (const name of SHAPE_FIELDS) {
    const { unit, least, most, whole, meaning } = SHAPE_FACTS[name];
    const facts = {
      id: `bench-${name}`,
      words: FIELD_WORDS[name],
      unit,
      least,
      most,
      step: SHAPE_STEPS[name],
      start: 0,
    };
    const field = numberField({ ...facts, ...(whole !== undefined && { whole }) }, (value) => {
      if (state !== undefined) change({ shape: { ...state.shape, [name]: value } });
    });
    field.node.title = meaning;
    const back = button(BENCH.asDrawn, () => {
      if (state === undefined) return;
      const { [name]: _, ...rest } = state.shape;
      change({ shape: rest });
    });
    back.classList.add('bench-back');
    back.setAttribute('aria-label', `${BENCH.asDrawn}: ${FIELD_WORDS[name]}`);
    field.node.append(back);
    shapeFields.set(name, { field, back });
  }
  const arrivalFields = new Map<ArrivalName, NumberField>();
  for (const name of ARRIVAL_NAMES) {
    const { unit, least, most, step, start } = ARRIVAL_BOUNDS[name];
    const field = numberField(
      { id: `bench-${name}`, words: FIELD_WORDS[name], unit, least, most, step, start },
      (value) => {
        if (state !== undefined) change({ arrival: { ...state.arrival, [name]: value } });
      },
    );
    arrivalFields.set(name, field);
  }
  const world = element('select', { id: 'bench-world' });
  world.append(
    ...WORLDS.map(({ id, name, gravity }) => element('option', { value: id }, `${name}, ${gravity.toFixed(2)} m/s²`)),
  );
  world.addEventListener('change', () => change({ world: world.value }));
  const legs = element('span', { class: 'bench-legs' });
  const node = element(
    'section',
    { class: 'bench-inputs', 'aria-label': BENCH.inputs },
    drawing,
    status,
    element(
      'fieldset',
      {},
      element('legend', {}, BENCH.ground),
      element('p', { class: 'bench-field' }, element('label', { for: 'bench-world' }, BENCH.world), world),
      ...[...arrivalFields.values()].map((field) => field.node),
      element(
        'div',
        { class: 'bench-field', role: 'group', 'aria-labelledby': 'bench-missing' },
        element('span', { id: 'bench-missing' }, BENCH.missing),
        legs,
      ),
      termLine('friction', 'descent rate', 'horizontal speed'),
    ),
    element(
      'fieldset',
      {},
      element('legend', {}, BENCH.lander),
      element('p', { class: 'bench-field' }, element('label', { for: 'bench-shelf' }, BENCH.shelf), shelf),
      ...[...shapeFields.values()].map(({ field }) => field.node),
      termLine('crush force', 'stroke', 'center of mass'),
      element(
        'p',
        { class: 'bench-row' },
        element('label', { class: 'bench-open', for: 'bench-file' }, BENCH.openFile, file),
        button(BENCH.saveFile, save),
        button(BENCH.asDrawnWhole, () => change({ shape: {}, missing: [] })),
      ),
    ),
  );
  return {
    node,
    show(now, asked, fault) {
      state = now;
      const base = baseLander(now);
      shelf.replaceChildren(
        ...LANDERS.map(({ id, name }) => element('option', { value: id }, name)),
        ...(now.file === undefined ? [] : [element('option', { value: FROM_FILE }, BENCH.fromFile(now.file.name))]),
      );
      shelf.value = now.lander;
      world.value = now.world;
      const values = shapeOf(asked?.lander ?? base);
      for (const [name, { field, back }] of shapeFields) {
        const own = now.shape[name];
        field.set(own ?? values[name]);
        back.hidden = own === undefined;
        field.node.classList.toggle('changed', own !== undefined);
      }
      for (const [name, field] of arrivalFields) field.set(now.arrival[name]);
      say(status, fault);
      layLegs(legs, asked?.lander.legs.length ?? base.legs.length, now.missing, (missing) => change({ missing }));
    },
  };
}

function layLegs(
  holder: HTMLElement,
  count: number,
  missing: readonly number[],
  change: (missing: readonly number[]) => void,
): void {
  while (holder.children.length > count) holder.lastElementChild?.remove();
  for (let leg = holder.children.length; leg < count; leg++) {
    const box = element('input', { type: 'checkbox', value: leg });
    box.addEventListener('change', () => {
      const checked = [...holder.querySelectorAll<HTMLInputElement>('input:checked')].map(({ value }) => Number(value));
      change(checked);
    });
    holder.append(element('label', { 'aria-label': BENCH.missingLeg(leg + 1) }, box, String(leg + 1)));
  }
  for (const box of holder.querySelectorAll('input')) box.checked = missing.includes(Number(box.value));
}
