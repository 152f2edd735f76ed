import { element, say } from '../panels/element.ts';
import { isOnlyHere, reachableOrigin } from '../panels/elsewhere.ts';
import { drawQr } from '../panels/qr.ts';
import { VOTE } from '../text/hall.ts';
import { askVote, lookAtVotes, openVotes, type VoteKey } from './voteRequests.ts';

/** How often the hall counts [ms]. */
const COUNT_MS = 1000;

/** Where the phones of this hall vote: one code for all its questions. */
export interface VoteBooth {
  /** The large code to scan, and how many have voted: not for what. */
  readonly node: HTMLElement;
  /** Puts a question to the phones. */
  open(question: string, choices: readonly string[]): void;
  /** Takes no more votes, and tells the counts of the choices, once. */
  close(tell: (counts: readonly number[]) => void): void;
  end(): void;
}

export function createVoteBooth(): VoteBooth {
  const code = element('div', { class: 'hall-code' });
  const address = element('p', { class: 'hall-address' });
  const count = element('p', { class: 'hall-count', role: 'status' });
  const node = element('aside', { class: 'hall-vote', 'aria-label': VOTE.scan }, code, address, count);
  let key: Promise<VoteKey | undefined> | undefined;
  let turn: Promise<void> = Promise.resolve();
  let asked: { readonly question: string; readonly choices: readonly string[] } | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const isAsked = (one: typeof asked) => one !== undefined && one === asked;

  const begin = async () => {
    const opened = await openVotes();
    if (!opened.ok) {
      say(count, opened.error === '' ? VOTE.handsUp : opened.error);
      return undefined;
    }
    const origin = isOnlyHere(location.hostname) ? ((await reachableOrigin()) ?? location.origin) : location.origin;
    const link = new URL(`${location.pathname}?vote=${opened.value.code}`, origin).href;
    code.replaceChildren(element('h2', {}, VOTE.scan), drawQr(link));
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
    const seen = await lookAtVotes(opened.code, opened.key);
    if (!isAsked(own)) return;
    say(count, seen.ok ? VOTE.voted(sum(seen.value.counts ?? [])) : VOTE.lost);
    timer = setTimeout(() => void look(opened, own), COUNT_MS);
  };
  return {
    node,
    open(question, choices) {
      clearTimeout(timer);
      const own = { question, choices };
      asked = own;
      inTurn(async (opened) => {
        if (!isAsked(own)) return;
        const first = await askVote(opened, { ...own, isOpen: true });
        if (first.ok) void look(opened, own);
        else say(count, first.error === '' ? VOTE.lost : first.error);
      });
    },
    close(tell) {
      clearTimeout(timer);
      const own = asked;
      asked = undefined;
      if (own === undefined) return;
      inTurn(async (opened) => {
        const closed = await askVote(opened, { ...own, isOpen: false });
        if (closed.ok && closed.value.counts !== undefined) tell(closed.value.counts);
      });
    },
    end() {
      clearTimeout(timer);
      asked = undefined;
    },
  };
}

function sum(counts: readonly number[]): number {
  return counts.reduce((total, one) => total + one, 0);
}
