import { GIVEN_ROLES, SEATS, type Command, type OtherView, type TableView } from '../../../engine/table/index.ts';
import { ROLE_NAMES } from '../../text/drill.ts';
import { SIDE } from '../../text/control.ts';
import { SEAT_NAMES } from '../../text/en.ts';
import { button, element } from '../element.ts';
import type { Ask } from '../seatCard.ts';

/** Everybody at the table, and for the facilitator what to make of each: admitted, moved to a seat, another part, gone. */
export function createPeople(
  ask: Ask,
  code: string | undefined,
): { readonly part: HTMLElement; refresh(view: TableView): void } {
  const list = element('ul', { class: 'people' });
  const joining = element('p', {}, SIDE.code, ' ', element('strong', { class: 'code' }, code));
  const part = element('div', {}, ...(code === undefined ? [] : [joining]), list);
  let shown = '';
  return {
    part,
    refresh(view) {
      const { others, waiting, you } = view;
      const key = JSON.stringify([others, waiting, you.role]);
      // a list that is in use is not taken from under the hand
      if (key === shown) return;
      shown = key;
      const rows = others.map((other) => personRow(other, view, ask));
      list.replaceChildren(...(rows.length === 0 ? [element('li', { class: 'hint' }, SIDE.alone)] : rows));
    },
  };
}

function personRow(other: OtherView, { you, waiting }: TableView, ask: Ask): HTMLElement {
  const { name, connected } = other;
  const what = other.seat === undefined ? ROLE_NAMES[other.role] : SEAT_NAMES[other.seat];
  const words = element('span', {}, element('strong', {}, name), ` ${what}${connected ? '' : `, ${SIDE.away}`}`);
  if (you.role !== 'facilitator') return element('li', {}, words);
  const acts = actsFor(
    other,
    waiting.some(({ id }) => id === other.id),
  );
  const choices = element(
    'select',
    { 'aria-label': SIDE.person(name) },
    element('option', { value: '' }, SIDE.choose),
    ...acts.map(([label], i) => element('option', { value: i }, label)),
  );
  const set = button(
    SIDE.set,
    () => {
      const command = choices.value === '' ? undefined : acts[Number(choices.value)]?.[1];
      if (command !== undefined) ask(command);
    },
    { 'aria-label': SIDE.setFully(name) },
  );
  return element('li', {}, words, choices, set);
}

/** What may be made of somebody, in the order in which it is mostly wanted. */
function actsFor(other: OtherView, waits: boolean): readonly (readonly [string, Command])[] {
  const { id: member, role, seat } = other;
  const letIn: readonly (readonly [string, Command])[] = waits ? [[SIDE.letIn, { kind: 'letIn', member }]] : [];
  const seats = SEATS.filter((one) => one !== seat).map((one): readonly [string, Command] => [
    SIDE.seatOf(SEAT_NAMES[one]),
    { kind: 'deal', member, seat: one },
  ]);
  const roles = GIVEN_ROLES.filter((one) => one !== role).map((one): readonly [string, Command] => [
    one === 'crew' ? SIDE.crew : SIDE.roles[one],
    { kind: 'setRole', member, role: one },
  ]);
  return [
    ...letIn,
    ...(role === 'crew' ? seats : []),
    ...roles,
    [SIDE.handOver, { kind: 'handOverTable', member }],
    [SIDE.remove, { kind: 'remove', member }],
  ];
}
