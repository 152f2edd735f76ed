import { LOAD_RANGE, LOAD_SIDES, LONGEST_NOTE, type Load, type LoadSide } from '../../../engine/review/index.ts';
import { SEATS } from '../../../engine/table/index.ts';
import { WORKLOAD } from '../../text/debrief.ts';
import { SEAT_NAMES } from '../../text/en.ts';
import { element, say } from '../element.ts';
import type { Ask } from '../seatCard.ts';
import type { DebriefPart } from './debriefPart.ts';
import { lineField, pickField } from './fields.ts';
import { createRelaid } from './relaid.ts';

/** How hard it was: six short questions and a line, on the device of each who sat; the answers for the control side. */
export function createWorkload(ask: Ask): DebriefPart {
  const { form, give } = createForm(ask);
  const given = createRelaid(element('div', {}));
  const part = element('section', { class: 'workload' }, element('h3', {}, WORKLOAD.title), form, given.holder);
  return {
    part,
    refresh({ review, you }) {
      const loads = review?.loads ?? [];
      const isControl = you.role === 'facilitator' || you.role === 'evaluator';
      const isSeated = you.seat !== undefined;
      part.hidden = !isControl && !isSeated;
      form.hidden = !isSeated;
      say(give, loads.some(({ seat }) => seat === you.seat) ? WORKLOAD.again : WORKLOAD.give);
      given.holder.hidden = !isControl;
      given.lay([loads, isControl], () => (isControl ? [loadTable(loads)] : []));
    },
  };
}

type Said = Omit<Load, 'member'>;

function createForm(ask: Ask): { readonly form: HTMLFormElement; readonly give: HTMLButtonElement } {
  const { least, most } = LOAD_RANGE;
  const steps = Array.from({ length: most - least + 1 }, (_, i) => String(least + i));
  const asked = LOAD_SIDES.map((side) => {
    const pick = pickField<string>(WORKLOAD.asks[side], [
      ['', WORKLOAD.choose],
      ...steps.map((step) => [step, WORKLOAD.step(Number(step))] as const),
    ]);
    // nothing is said before somebody says it
    pick.select.required = true;
    return { side, ...pick };
  });
  const text = lineField(WORKLOAD.text, LONGEST_NOTE);
  const give = element('button', { type: 'submit' }, WORKLOAD.give);
  const form = element(
    'form',
    { class: 'load-form' },
    element('p', { class: 'quiet' }, WORKLOAD.lead),
    ...asked.map(({ field }) => field),
    text.field,
    give,
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    ask({
      kind: 'sayLoad',
      thought: saidOf(asked, 'thought'),
      hands: saidOf(asked, 'hands'),
      haste: saidOf(asked, 'haste'),
      success: saidOf(asked, 'success'),
      effort: saidOf(asked, 'effort'),
      strain: saidOf(asked, 'strain'),
      text: text.input.value.trim(),
    });
  });
  return { form, give };
}

function saidOf(
  asked: readonly { readonly side: LoadSide; readonly chosen: () => string }[],
  wanted: LoadSide,
): number {
  return Number(asked.find(({ side }) => side === wanted)?.chosen());
}

/** A row a seat, in the order of the seats, and no sums: nobody is held against anybody. */
export function loadTable(loads: readonly Said[]): HTMLElement {
  if (loads.length === 0) return element('p', { class: 'quiet' }, WORKLOAD.none);
  return element(
    'div',
    { class: 'load-table' },
    element(
      'table',
      {},
      element('caption', {}, WORKLOAD.caption),
      element(
        'thead',
        {},
        element('tr', {}, ...[WORKLOAD.seat, ...LOAD_SIDES.map((side) => WORKLOAD.sides[side])].map(headOf)),
      ),
      element('tbody', {}, ...inOrder(loads).map(loadRow)),
    ),
    ...inOrder(loads).flatMap(({ seat, text }) =>
      text === '' ? [] : [element('p', {}, `${SEAT_NAMES[seat]}: ${text}`)],
    ),
  );
}

function headOf(words: string): HTMLElement {
  return element('th', { scope: 'col' }, words);
}

function loadRow(load: Said): HTMLElement {
  const figures = LOAD_SIDES.map((side) => element('td', {}, String(load[side])));
  return element('tr', {}, element('th', { scope: 'row' }, SEAT_NAMES[load.seat]), ...figures);
}

function inOrder(loads: readonly Said[]): readonly Said[] {
  return loads.toSorted((one, other) => SEATS.indexOf(one.seat) - SEATS.indexOf(other.seat));
}
