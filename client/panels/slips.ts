import type { Seat, TableView } from '../../engine/table/index.ts';
import type { CallView } from '../../engine/talk/index.ts';
import { SEAT_NAMES, TALK } from '../text/en.ts';
import { withKeys } from '../text/keyNames.ts';
import type { Announcer } from './announcer.ts';
import { button, element, say } from './element.ts';
import { HANDHELD } from './handheld.ts';
import { keepFocus } from './keepFocus.ts';
import type { Ask } from './seatCard.ts';
import { addresseeWords, callWords, whoWords } from './sentenceWords.ts';

/** So many lie on the table at a time, fewer under a poll, and one on a phone until more are asked for; the oldest that wait come first. */
const MOST_SLIPS = { alone: 3, underPoll: 2, handheld: 1 };

/** Slips of paper: what was said to this seat and by it, as long as the loop is open. */
export function createSlips(
  ask: Ask,
  announcer: Announcer,
): { readonly tray: HTMLElement; refresh(view: TableView): void } {
  const list = element('ul', { class: 'slips', 'aria-label': TALK.slips });
  const slips = new Map<number, Slip>();
  let heard: number | undefined;
  const more = button('', () => tray.toggleAttribute('data-all'), { class: 'more-slips' });
  const tray = element('div', { class: 'slips-tray' }, list, more);

  const lay = (view: TableView) => {
    const { seat } = view.you;
    const open = shownCalls(view.talk.calls, seat);
    const most = mostOf(view);
    if (open.length <= most) tray.removeAttribute('data-all');
    const isAll = tray.hasAttribute('data-all');
    const shown = isAll ? open : open.slice(0, most);
    const rest = open.slice(most);
    more.hidden = rest.length === 0;
    more.setAttribute('aria-expanded', String(isAll));
    const waits = rest.filter((call) => actOf(call, seat) !== undefined).length;
    say(more, isAll ? TALK.fewer : waits > 0 ? TALK.moreWait(waits) : TALK.more(rest.length));
    for (const [id, { node }] of slips)
      if (shown.every((call) => call.id !== id)) {
        node.remove();
        slips.delete(id);
      }
    for (const call of shown) {
      const slip = slips.get(call.id) ?? createSlip(ask, call.id);
      slips.set(call.id, slip);
      slip.refresh(call, seat);
    }
    const nodes = shown.flatMap(({ id }) => slips.get(id)?.node ?? []);
    // laid anew only where the order changed: and the focus stays
    const focus = document.activeElement;
    if (nodes.some((node, i) => list.children[i] !== node)) list.replaceChildren(...nodes);
    if (focus instanceof HTMLElement && list.contains(focus)) focus.focus();
  };
  return {
    tray,
    refresh(view) {
      keepFocus(tray, () => lay(view), 'next');
      heard = tellNew(announcer, view, heard);
    },
  };
}

function mostOf({ talk }: TableView): number {
  if (HANDHELD.matches) return MOST_SLIPS.handheld;
  return talk.poll === undefined ? MOST_SLIPS.alone : MOST_SLIPS.underPoll;
}

/** Open ones: first those that wait for this seat. */
function shownCalls(calls: readonly CallView[], seat: Seat | undefined): readonly CallView[] {
  const open = calls.filter(({ isConfirmed }) => !isConfirmed);
  const waiting = open.filter((call) => actOf(call, seat) !== undefined);
  const others = open.filter((call) => actOf(call, seat) === undefined).toReversed();
  return [...waiting, ...others];
}

/** What a seat has to do about a callout. */
function actOf({ from, waitsFor, isConfirmed }: CallView, seat: Seat | undefined): 'readBack' | 'confirm' | undefined {
  if (seat === undefined || isConfirmed) return undefined;
  if (waitsFor.includes(seat)) return 'readBack';
  return from === seat && waitsFor.length === 0 ? 'confirm' : undefined;
}

interface Slip {
  readonly node: HTMLElement;
  refresh(call: CallView, seat: Seat | undefined): void;
}

function createSlip(ask: Ask, id: number): Slip {
  const who = element('small', {});
  const words = element('strong', {});
  const state = element('small', { class: 'slip-state' });
  const readBack = button(TALK.readBack, () => ask({ kind: 'readBack', callout: id }));
  const confirm = button(TALK.confirm, () => ask({ kind: 'confirm', callout: id }));
  const node = element('li', { class: 'slip' }, element('p', {}, who, words, state), readBack, confirm);
  return {
    node,
    refresh(call, seat) {
      const act = actOf(call, seat);
      const said = callWords(call);
      say(who, `${whoWords(call, seat)}${call.byStandIn ? ` (${TALK.standIn})` : ''}`);
      say(words, said);
      say(state, stateWords(call, act, seat));
      readBack.hidden = act !== 'readBack';
      confirm.hidden = act !== 'confirm';
      readBack.setAttribute('aria-label', TALK.readBackFully(said));
      confirm.setAttribute('aria-label', TALK.confirmFully(said));
      node.dataset['act'] = act ?? 'none';
    },
  };
}

function stateWords(call: CallView, act: ReturnType<typeof actOf>, seat: Seat | undefined): string {
  if (act === 'readBack') return '';
  if (act === 'confirm') return TALK.isReadBack;
  const { waitsFor } = call;
  if (waitsFor.length === 0) return TALK.waitsForConfirm;
  if (call.from !== seat && waitsFor.length > 2) return TALK.waitsForConfirm;
  return waitsFor.length > 2
    ? TALK.waitsForAll(waitsFor.length)
    : TALK.waitsFor(waitsFor.map((one) => SEAT_NAMES[one]).join(', '));
}

/** Tells a reader of the page what is new: what waits for this seat, and for whoever watches what is said to all. */
function tellNew(announcer: Announcer, { talk, you }: TableView, heard: number | undefined): number {
  const last = talk.calls.at(-1);
  const latest = last?.id ?? 0;
  // what lay there when the page was laid is read where it lies; numbers begin anew with a descent
  if (heard === undefined || latest <= heard || last === undefined) return latest;
  if (last.from !== you.seat) {
    const told = TALK.heard(
      SEAT_NAMES[last.from],
      last.to === you.seat ? TALK.you : addresseeWords(last.to),
      callWords(last),
    );
    announcer.announce(actOf(last, you.seat) === 'readBack' ? `${told} ${withKeys(TALK.readBackWith)}` : told, 'now');
  }
  return latest;
}
