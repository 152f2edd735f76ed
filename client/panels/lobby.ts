import type { Seat, TableView } from '../../engine/table/index.ts';
import { STARTS } from '../../levels/index.ts';
import type { TableLink } from '../net/index.ts';
import { codeHash } from '../codeAddress.ts';
import { LOBBY, PACE } from '../text/en.ts';
import { isOnlyHere, reachableOrigin } from './elsewhere.ts';
import { button, element, leaveButton, say } from './element.ts';
import { createModeration } from './moderation.ts';
import type { Ask } from './seatCard.ts';
import { createSeatRows } from './seatRows.ts';
import { tableSheet } from './tableSheet.ts';
import { term } from '../terms/term.ts';

export interface Lobby {
  readonly sheet: HTMLElement;
  refresh(view: TableView): void;
}

/** The sheet on which a crew gathers: the code to share, who is here, and a seat for each. */
export function createLobby(options: {
  readonly link: TableLink;
  readonly takeSeat: (seat: Seat) => void;
  readonly ask: Ask;
  readonly begin: () => void;
  /** Something else is to be played. */
  readonly choose: () => void;
  readonly leave: () => void;
}): Lobby {
  const { link } = options;
  const seats = createSeatRows(options.takeSeat, false);
  const planLine = element('p', { class: 'lobby-plan' });
  const choose = button(LOBBY.choose, options.choose, { class: 'choose' });
  const watching = element('span', {});
  const begin = button(LOBBY.begin, options.begin, { class: 'primary' });
  const hint = element('p', { class: 'hint' });
  const moderation = createModeration(options.ask);
  const sheet = tableSheet(
    { kind: 'lobby', label: LOBBY.title, actions: [begin, leaveButton(options.leave), hint] },
    ...(link.code === undefined ? [] : [invitation(link.code)]),
    element('div', { class: 'lobby-chosen' }, planLine, choose),
    element('h2', {}, term('seat', LOBBY.seats)),
    seats.list,
    element('p', { class: 'watching' }, element('strong', {}, `${LOBBY.withoutSeat}: `), watching),
    moderation.part,
  );
  sheet.hidden = true;
  return {
    sheet,
    refresh(view) {
      sheet.hidden = view.stage !== 'gathering';
      if (sheet.hidden) return;
      seats.refresh(view);
      say(planLine, LOBBY.plan(planWords(view), view.drawnIn === 'pencil'));
      choose.hidden = link.choose === undefined || !view.you.runs;
      say(watching, watchingNames(view));
      moderation.refresh(view);
      begin.disabled = view.you.seat === undefined && !view.you.runs;
      say(hint, begin.disabled ? LOBBY.beginHint : '');
    },
  };
}

/** What is to be played: 'Trivet over Saddler's Bench, high start, by orders, ×0.5'. `title`: in place of that of the plan. */
export function planWords({ plan, pace }: TableView, title = plan.title): string {
  const { mode, start } = plan.choice;
  const startName = STARTS.find(({ id }) => id === start)?.name.toLowerCase() ?? start;
  const words = [title, LOBBY.start(startName), mode, ...(pace === 1 ? [] : [PACE.words[pace]])];
  return words.join(', ');
}

/** Who is here without a seat, the reader first. */
export function watchingNames({ you, watching }: TableView): string {
  const names = you.seat === undefined ? [LOBBY.yours(you.name), ...watching] : watching;
  return names.length === 0 ? LOBBY.nobody : names.join(' · ');
}

/** The address that leads straight to a table, on this page's origin or another of the same server. */
export function tableAddress(code: string, origin = ''): string {
  const address = new URL(origin + location.pathname, location.href);
  address.search = '';
  address.hash = codeHash('table', code);
  return address.href;
}

/** The origin that others open: this page's, or, where that leads every other device to itself, another of the same server; undefined where none is known. */
export function originForOthers(): Promise<string | undefined> {
  return isOnlyHere(location.hostname) ? reachableOrigin() : Promise.resolve(location.origin);
}

/** The code to share, with its link as a picture. */
export function invitation(code: string): HTMLElement {
  let address = tableAddress(code);
  const qr = element('div', { class: 'qr' });
  const where = element('p', { class: 'where' }, LOBBY.invite);
  void originForOthers().then((origin) => {
    if (origin === undefined) {
      say(where, LOBBY.onlyHere);
      return;
    }
    if (origin !== location.origin) say(where, LOBBY.inviteFrom(origin));
    address = tableAddress(code, origin);
    // the code is drawn by a part of its own, which solo play never loads
    void import('./qr.ts').then(({ drawQr }) => qr.append(drawQr(address)));
  });
  const copied = element('span', { role: 'status' });
  const copy = button(LOBBY.copy, () => {
    navigator.clipboard.writeText(address).then(
      () => say(copied, LOBBY.copied),
      () => say(copied, `${LOBBY.copyByHand}: ${address}`),
    );
  });
  return element(
    'div',
    { class: 'invitation' },
    element(
      'div',
      {},
      element('p', { class: 'label' }, term('table code', LOBBY.codeLabel)),
      element('p', { class: 'big-code' }, code),
      where,
      element('p', { class: 'copy-row' }, copy, copied),
    ),
    qr,
  );
}
