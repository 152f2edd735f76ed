import { customAlphabet, nanoid } from 'nanoid';
import { TABLE_CODE_ALPHABET, TABLE_CODE_LENGTH } from '../../engine/table/index.ts';
import { accept, refuse, type Result } from '../../engine/result.ts';
import { createTokenBuckets } from '../tokenBucket.ts';

/** Halls that vote at once, and from one address. */
const MOST_HALLS = { ofAll: 60, ofAddress: 6 } as const;

/** Phones of one hall. */
export const MOST_VOTERS = 1000;

/** A hall in which nothing is asked for so long is forgotten [ms]. */
const KEPT_MS = 2 * 3600 * 1000;

/** Codes that no hall has, from one address. */
const GUESS_RATE = { burst: 20, perSecond: 0.2 } as const;

/** What the phones of a hall are asked. */
interface HallQuestion {
  readonly question: string;
  readonly choices: readonly string[];
  /** Whether votes are taken now. */
  readonly isOpen: boolean;
}

/** What a phone sees; `number` tells one question from the next, 0: nothing has been asked. */
interface Seen extends HallQuestion {
  readonly number: number;
}

/** And what the presenter sees besides. */
interface Counted extends Seen {
  /** Of each choice, in their order. */
  readonly counts: readonly number[];
}

interface VoteRefusal {
  readonly status: 400 | 403 | 404 | 409 | 429;
  readonly reason: string;
}

export interface Votes {
  open(address: string): Result<{ readonly code: string; readonly key: string }, VoteRefusal>;
  /** A question in other words is a new one, and begins without votes. */
  ask(code: string, key: string, question: HallQuestion, address: string): Result<Counted, VoteRefusal>;
  /** One vote a phone: the last one counts. */
  cast(code: string, vote: Vote, address: string): Result<Seen, VoteRefusal>;
  /** `key`: undefined for a phone. */
  look(code: string, key: string | undefined, address: string): Result<Seen | Counted, VoteRefusal>;
}

interface Vote {
  /** Of the question that was seen. */
  readonly number: number;
  readonly voter: string;
  readonly choice: number;
}

interface HallVotes {
  readonly key: string;
  readonly address: string;
  asked: Seen;
  askedAtMs: number;
  readonly votes: Map<string, number>;
}

export function createVotes({ now = () => performance.now() }: { readonly now?: () => number } = {}): Votes {
  const halls = new Map<string, HallVotes>();
  const draw = customAlphabet(TABLE_CODE_ALPHABET, TABLE_CODE_LENGTH);
  const guesses = createTokenBuckets(GUESS_RATE);

  const find = (code: string, address: string): Result<HallVotes, VoteRefusal> => {
    const hall = halls.get(code);
    if (hall !== undefined) return accept(hall);
    return guesses.draw(address, now()) ? refusal(404, 'No hall votes under this code.') : refusal(429, TOO_MANY_CODES);
  };

  return {
    open(address) {
      for (const [code, hall] of halls) if (now() - hall.askedAtMs > KEPT_MS) halls.delete(code);
      const fromThere = [...halls.values()].filter((hall) => hall.address === address).length;
      if (halls.size >= MOST_HALLS.ofAll || fromThere >= MOST_HALLS.ofAddress) return refusal(429, TOO_MANY_HALLS);
      let code = draw();
      while (halls.has(code)) code = draw();
      const key = nanoid();
      halls.set(code, { key, address, asked: NOTHING, askedAtMs: now(), votes: new Map() });
      return accept({ code, key });
    },
    ask(code, key, question, address) {
      const found = find(code, address);
      if (!found.ok) return found;
      const hall = found.value;
      if (hall.key !== key) return refusal(403, 'Only the presenter asks here.');
      const isSame =
        hall.asked.question === question.question && hall.asked.choices.join('\n') === question.choices.join('\n');
      if (!isSame) hall.votes.clear();
      hall.asked = { ...question, number: hall.asked.number + (isSame ? 0 : 1) };
      hall.askedAtMs = now();
      return accept(countsOf(hall));
    },
    cast(code, { number, voter, choice }, address) {
      const found = find(code, address);
      if (!found.ok) return found;
      const { asked, votes } = found.value;
      if (number !== asked.number || !asked.isOpen) return refusal(409, 'The vote on this question is over.');
      if (choice >= asked.choices.length)
        return refusal(400, `choice: expected 0 to ${asked.choices.length - 1}, got ${choice}`);
      if (!votes.has(voter) && votes.size >= MOST_VOTERS) return refusal(429, 'As many have voted as can.');
      votes.set(voter, choice);
      return accept(asked);
    },
    look(code, key, address) {
      const found = find(code, address);
      if (!found.ok) return found;
      if (key === undefined) return accept(found.value.asked);
      return key === found.value.key ? accept(countsOf(found.value)) : refusal(403, 'This key opens no votes.');
    },
  };
}

const NOTHING: Seen = { question: '', choices: [], isOpen: false, number: 0 };
const TOO_MANY_CODES = 'Too many wrong codes came in. Wait a minute, then try again.';
const TOO_MANY_HALLS = 'Too many halls vote at once. Try again later.';

function countsOf({ asked, votes }: HallVotes): Counted {
  const all = [...votes.values()];
  return { ...asked, counts: asked.choices.map((_, i) => all.filter((choice) => choice === i).length) };
}

function refusal(status: VoteRefusal['status'], reason: string) {
  return refuse<VoteRefusal>({ status, reason });
}
