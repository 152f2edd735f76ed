import { GIVEN_ROLES, SEATS, type Command, type OtherView, type TableView } from '../../../engine/table/index.ts';
import { BRIEF, ROLE_NAMES } from '../../text/drill.ts';
import { SIDE } from '../../text/control.ts';
import { SEAT_NAMES } from '../../text/en.ts';
import { createChoice } from '../choiceList.ts';
import { button, element, say } from '../element.ts';
import { originForOthers } from '../lobby.ts';
import { createLock } from '../moderation.ts';
import type { Ask } from '../seatCard.ts';

/** Everybody at the table, and for the facilitator what to make of each: admitted, moved to a seat, another part, gone. */
export function createPeople(
  ask: Ask,
  code: string | undefined,
): { readonly part: HTMLElement; refresh(view: TableView): void } {
  const rows = new Map<string, PersonRow>();
  const list = element('ul', { class: 'people' });
  const where = element('span', {});
  const joining = element('p', {}, SIDE.code, ' ', element('strong', { class: 'code' }, code), ' ', where);
  // whoever reads the code aloud says where it is typed
  if (code !== undefined)
    void originForOthers().then((origin) => {
      if (origin !== undefined) say(where, SIDE.joinAt(origin));
    });
  const lock = createLock(ask);
  const nobody = element('p', { class: 'hint' }, SIDE.alone);
  return {
    part: element('div', {}, ...(code === undefined ? [] : [joining, lock.part]), nobody, list),
    refresh(view) {
      const { others } = view;
      lock.refresh(view);
      nobody.hidden = others.length > 0;
      for (const [id, { node }] of rows)
        if (others.every((other) => other.id !== id)) {
          node.remove();
          rows.delete(id);
        }
      for (const other of others) {
        let row = rows.get(other.id);
        if (row === undefined) {
          row = createPersonRow(other, ask);
          rows.set(other.id, row);
          list.append(row.node);
        }
        row.refresh(other, view);
      }
    },
  };
}

interface PersonRow {
  readonly node: HTMLElement;
  /** Changes what differs and no more: a choice that is being made stays. */
  refresh(other: OtherView, view: TableView): void;
}

function createPersonRow({ name }: OtherView, ask: Ask): PersonRow {
  const what = element('span', {});
  const choice = createChoice(SIDE.person(name));
  let acts: readonly Act[] = [];
  const set = button(
    SIDE.set,
    () => {
      const act = acts.find(({ words }) => words === choice.value());
      if (act !== undefined) ask(act.command);
    },
    { 'aria-label': SIDE.setFully(name) },
  );
  return {
    node: element('li', {}, element('span', {}, element('strong', {}, name), ' ', what), choice.list, set),
    refresh(other, view) {
      say(what, personWords(other, view));
      acts = actsFor(
        other,
        view.waiting.some(({ id }) => id === other.id),
      );
      choice.refresh([['', SIDE.choose], ...acts.map(({ words }) => [words, words] as const)]);
      const mayMake = view.you.role === 'facilitator';
      choice.list.hidden = !mayMake;
      set.hidden = !mayMake;
    },
  };
}

/** What somebody is here, whether they are away, and before a descent whether they have read the brief. */
function personWords({ role, seat, ready, connected }: OtherView, { drill, stage }: TableView): string {
  const what = seat === undefined ? ROLE_NAMES[role] : SEAT_NAMES[seat];
  if (!connected) return `${what}, ${SIDE.away}`;
  const isAsked = drill !== undefined && stage === 'gathering' && role === 'crew';
  return isAsked ? `${what} · ${ready ? BRIEF.readIt : BRIEF.reads}` : what;
}

interface Act {
  readonly words: string;
  readonly command: Command;
}

/** What may be made of somebody, in the order in which it is mostly wanted. */
function actsFor({ id: member, role, seat }: OtherView, waits: boolean): readonly Act[] {
  const seats = SEATS.filter((one) => role === 'crew' && one !== seat);
  return [
    ...(waits ? [{ words: SIDE.letIn, command: { kind: 'letIn', member } } as const] : []),
    ...seats.map((one): Act => ({ words: SIDE.seatOf(SEAT_NAMES[one]), command: { kind: 'deal', member, seat: one } })),
    ...GIVEN_ROLES.filter((one) => one !== role).map((one): Act => ({
      words: one === 'crew' ? SIDE.crew : SIDE.roles[one],
      command: { kind: 'setRole', member, role: one },
    })),
    { words: SIDE.handOver, command: { kind: 'handOverTable', member } },
    { words: SIDE.remove, command: { kind: 'remove', member } },
  ];
}
