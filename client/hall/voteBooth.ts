import { codeHash } from '../codeAddress.ts';
import { element, say } from '../panels/element.ts';
import { isOnlyHere, reachableOrigin } from '../panels/elsewhere.ts';
import { drawQr } from '../panels/qr.ts';
import { VOTE } from '../text/hall.ts';
import { askVote, beginFlight, lookAtVotes, openVotes } from './voteRequests.ts';
import type { AskedVote, Question, VoteKey } from './voteRequests.ts';

/** How often the hall counts [ms]. */
const COUNT_MS = 1000;

/** What is said beside the code. */
interface BoothWords {
  readonly scan: string;
  readonly count: (counts: readonly number[]) => string;
}

/** Where the phones of this hall vote: one code for all its questions. */
export interface VoteBooth {
  /** The large code to scan, and how many have voted: not for what. */
  readonly node: HTMLElement;
  /** Puts a question to the phones. */
  open(question: Question, words: BoothWords): void;
  /** All who said so fly: `tell` hears of it every second until it is closed. Refused, it goes on asking, and `refused` is called. */
  begin(tell: (seen: AskedVote) => void, refused: () => void): void;
  /** Takes no more votes, and tells the counts of the choices, once. */
  close(tell: (counts: readonly number[]) => void): void;
  end(): void;
}

export function createVoteBooth(): VoteBooth {
  const heading = element('h2', {});
  const code = element('div', { class: 'hall-code' });
  const address = element('p', { class: 'hall-address' });
  const count = element('p', { class: 'hall-count', role: 'status' });
  const node = element('aside', { class: 'hall-vote', 'aria-label': VOTE.scan }, code, address, count);
  let key: Promise<VoteKey | undefined> | undefined;
  let turn: Promise<void> = Promise.resolve();
  let asked: (Question & { readonly words: BoothWords }) | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const isAsked = (one: typeof asked) => one !== undefined && one === asked;

  const begin = async () => {
    const opened = await openVotes();
    if (!opened.ok) {
      say(count, opened.error === '' ? VOTE.handsUp : opened.error);
      return undefined;
    }
    const origin = isOnlyHere(location.hostname) ? ((await reachableOrigin()) ?? location.origin) : location.origin;
    const link = new URL(location.pathname + codeHash('vote', opened.value.code), origin).href;
    code.replaceChildren(heading, drawQr(link));
    say(address, VOTE.typed(link.replace(/^https?:\/\//, '')));
    return opened.value;
  };
  /** One request after the other: what was asked last is what stands. */
  const inTurn = (act: (opened: VoteKey) => Promise<void>) => {
    key ??= begin();
    const opening = key;
    turn = turn.then(async () => {
      const opened = await opening;
      if (opened !== undefined) await act(opened);
    });
  };
  const look = async (opened: VoteKey, own: typeof asked) => {
    const seen = await lookAtVotes(opened.code, { key: opened.key });
    if (own === undefined || !isAsked(own)) return;
    say(count, seen.ok ? own.words.count(seen.value.counts ?? []) : VOTE.lost);
    timer = setTimeout(() => void look(opened, own), COUNT_MS);
  };
  const follow = async (opened: VoteKey, own: typeof asked, tell: (seen: AskedVote) => void, from: number) => {
    const seen = await lookAtVotes(opened.code, { key: opened.key, from });
    if (!isAsked(own)) return;
    if (seen.ok) tell(seen.value);
    const known = from + (seen.ok ? (seen.value.flown?.landings.length ?? 0) : 0);
    timer = setTimeout(() => void follow(opened, own, tell, known), COUNT_MS);
  };
  return {
    node,
    open(question, words) {
      clearTimeout(timer);
      const own = { ...question, words };
      asked = own;
      say(heading, words.scan);
      node.setAttribute('aria-label', words.scan);
      inTurn(async (opened) => {
        if (!isAsked(own)) return;
        const first = await askVote(opened, { ...question, isOpen: true });
        if (first.ok) void look(opened, own);
        else say(count, first.error === '' ? VOTE.lost : first.error);
      });
    },
    begin(tell, refused) {
      clearTimeout(timer);
      const own = asked;
      inTurn(async (opened) => {
        if (!isAsked(own)) return;
        const begun = await beginFlight(opened);
        if (begun.ok) {
          tell(begun.value);
          void follow(opened, own, tell, 0);
        } else {
          refused();
          void look(opened, own);
        }
      });
    },
    close(tell) {
      clearTimeout(timer);
      const own = asked;
      asked = undefined;
      if (own === undefined) return;
      inTurn(async (opened) => {
        const { words: _, ...question } = own;
        const closed = await askVote(opened, { ...question, isOpen: false });
        if (closed.ok && closed.value.counts !== undefined) tell(closed.value.counts);
      });
    },
    end() {
      clearTimeout(timer);
      asked = undefined;
    },
  };
}
