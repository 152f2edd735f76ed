import { customAlphabet, nanoid } from 'nanoid';
import { TABLE_CODE_ALPHABET, TABLE_CODE_LENGTH } from '../../engine/table/index.ts';
import { accept, type Result } from '../../engine/result.ts';
import { FLIES, type HallDescent, type PhoneLanding } from '../../levels/index.ts';
import { createTokenBuckets } from '../tokenBucket.ts';
import { createFlight, type Flown, type HallFlight } from './flight.ts';
import { refusal, type VoteRefusal } from './refusal.ts';

/** Halls that vote at once, and from one address. */
const MOST_HALLS = { ofAll: 60, ofAddress: 6 } as const;

/** Phones of one hall. */
export const MOST_VOTERS = 1000;

/** A hall in which nothing is asked for so long is forgotten; so long, where nothing was ever asked: nobody stands in it [ms]. */
const KEPT_MS = 2 * 3600 * 1000;
const KEPT_UNASKED_MS = 60 * 1000;

/** Codes that no hall has, from one address. */
const GUESS_RATE = { burst: 20, perSecond: 0.2 } as const;

/** What the phones of a hall are asked. */
interface HallQuestion {
  readonly question: string;
  readonly choices: readonly string[];
  /** Whether votes are taken now. */
  readonly isOpen: boolean;
  /** What those fly who say that they do. */
  readonly descent?: HallDescent | undefined;
}

/** What a phone sees; `number` tells one question from the next, 0: nothing has been asked. */
interface Seen extends HallQuestion {
  readonly number: number;
  /** Until the flight starts [ms], below 0: since then. Absent before the presenter has begun it. */
  readonly startsInMs?: number;
}

/** And what the presenter sees besides. */
interface Counted extends Seen {
  /** Of each choice, in their order. */
  readonly counts: readonly number[];
  /** Once a flight has begun. */
  readonly flown?: Flown;
}

export interface Votes {
  open(address: string): Result<{ readonly code: string; readonly key: string }, VoteRefusal>;
  /** A question in other words is a new one, and begins without votes. */
  ask(code: string, key: string, question: HallQuestion, address: string): Result<Counted, VoteRefusal>;
  /** One vote a phone: the last one counts. */
  cast(code: string, vote: Vote, address: string): Result<Seen, VoteRefusal>;
  /** All who said that they fly do so, some seconds from now. */
  begin(code: string, key: string, address: string): Result<Counted, VoteRefusal>;
  /** How the flight of one phone ended. */
  land(code: string, landed: Landed, address: string): Result<Seen, VoteRefusal>;
  look(code: string, as: Looking, address: string): Result<Seen | Counted, VoteRefusal>;
}

/** Who looks: the presenter by the key, to whom landings are told `from` that one on; a phone that flies by its word. */
interface Looking {
  readonly key?: string | undefined;
  readonly voter?: string | undefined;
  readonly from?: number;
}

interface Landed {
  /** Of the question that was seen. */
  readonly number: number;
  readonly voter: string;
  readonly landing: PhoneLanding;
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
  flight: HallFlight | undefined;
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
      for (const [code, { asked, askedAtMs }] of halls)
        if (now() - askedAtMs > (asked === NOTHING ? KEPT_UNASKED_MS : KEPT_MS)) halls.delete(code);
      const fromThere = [...halls.values()].filter((hall) => hall.address === address).length;
      if (halls.size >= MOST_HALLS.ofAll || fromThere >= MOST_HALLS.ofAddress) return refusal(429, TOO_MANY_HALLS);
      let code = draw();
      while (halls.has(code)) code = draw();
      const key = nanoid();
      halls.set(code, { key, address, asked: NOTHING, askedAtMs: now(), votes: new Map(), flight: undefined });
      return accept({ code, key });
    },
    ask(code, key, question, address) {
      const found = find(code, address);
      if (!found.ok) return found;
      const hall = found.value;
      if (hall.key !== key) return refusal(403, ASKED_BY_PRESENTER);
      // a flight that was flown is asked about anew
      const isSame = isSameQuestion(hall.asked, question) && !(question.isOpen && hall.flight !== undefined);
      if (!isSame) {
        hall.votes.clear();
        hall.flight = undefined;
      }
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
    begin(code, key, address) {
      const found = find(code, address);
      if (!found.ok) return found;
      const hall = found.value;
      if (hall.key !== key) return refusal(403, ASKED_BY_PRESENTER);
      if (hall.asked.descent === undefined || !hall.asked.isOpen) return refusal(409, 'There is no flight to begin.');
      const pilots = [...hall.votes].filter(([, choice]) => choice === FLIES).map(([voter]) => voter);
      if (pilots.length === 0) return refusal(409, 'Nobody is ready to fly.');
      hall.asked = { ...hall.asked, isOpen: false };
      hall.flight = createFlight(pilots, now);
      return accept(countsOf(hall));
    },
    land(code, { number, voter, landing }, address) {
      const found = find(code, address);
      if (!found.ok) return found;
      const { asked, flight } = found.value;
      if (number !== asked.number || flight === undefined) return refusal(409, 'This flight is over.');
      const landed = flight.land(voter, landing);
      return landed.ok ? accept(seenOf(found.value)) : landed;
    },
    look(code, { key, voter, from = 0 }, address) {
      const found = find(code, address);
      if (!found.ok) return found;
      if (voter !== undefined) found.value.flight?.meet(voter);
      if (key === undefined) return accept(seenOf(found.value));
      return key === found.value.key ? accept(countsOf(found.value, from)) : refusal(403, 'This key opens no votes.');
    },
  };
}

const NOTHING: Seen = { question: '', choices: [], isOpen: false, number: 0 };
const ASKED_BY_PRESENTER = 'Only the presenter asks here.';
const TOO_MANY_CODES = 'Too many wrong codes came in. Wait a minute, then try again.';
const TOO_MANY_HALLS = 'Too many halls vote at once. Try again later.';

function isSameQuestion(one: HallQuestion, other: HallQuestion): boolean {
  const wordsOf = ({ question, choices, descent }: HallQuestion) => JSON.stringify([question, choices, descent]);
  return wordsOf(one) === wordsOf(other);
}

function seenOf({ asked, flight }: HallVotes): Seen {
  return { ...asked, ...(flight && { startsInMs: Math.round(flight.startsIn()) }) };
}

function countsOf(hall: HallVotes, from = 0): Counted {
  const all = [...hall.votes.values()];
  const counts = hall.asked.choices.map((_, i) => all.filter((choice) => choice === i).length);
  return { ...seenOf(hall), counts, ...(hall.flight && { flown: hall.flight.tell(from) }) };
}
