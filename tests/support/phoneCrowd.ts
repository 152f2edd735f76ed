import { setTimeout as pause } from 'node:timers/promises';
import { askVotes, voterOf } from './askVotes.ts';

/** A hall full of phones without browsers: each looks now and then, votes on what is asked, flies where that is asked, and says what did not get through again. */
interface PhoneCrowd {
  /** What was answered otherwise than taken, such as 'POST /cast 429', and how often. */
  readonly refusals: ReadonlyMap<string, number>;
  /** Answers that came. */
  readonly answers: number;
  end(): Promise<void>;
}

/** The landing of a phone that flew nothing. */
const LANDING = {
  outcome: 'upright inside limit',
  path: Array.from({ length: 40 }, (_, i) => [i * 1.25 - 45, 85 - i * 2.11]),
  contact: { speed: 0.61, descentRate: 1.12, tip: 2.61, upTo: 6.02 },
};

/** `choiceOf`: what a phone says to each question. `flownMs`: how long it flies. `lookMs`: from look to look, and until something is said again; the page of a phone has 2000. */
export function openCrowd(options: {
  readonly origin: string;
  readonly code: string;
  readonly phones: number;
  readonly choiceOf: (phone: number) => number;
  readonly flownMs: (phone: number) => number;
  readonly lookMs: number;
}): PhoneCrowd {
  const { origin, code, phones, choiceOf, flownMs, lookMs } = options;
  const refusals = new Map<string, number>();
  const state = { answers: 0, isOver: false };
  const ask = async (path: string, body?: object, phone?: string) => {
    const what = `${body === undefined ? 'GET' : 'POST'} ${path}`;
    const answer = await askVotes(origin, path, body, { code, ...(phone !== undefined && { phone }) }).catch(
      (error: unknown) => ({ status: 0, json: undefined, error }),
    );
    state.answers += answer.status === 0 ? 0 : 1;
    if (answer.status === 200) return answer.json;
    const key = `${what} ${answer.status}`;
    refusals.set(key, (refusals.get(key) ?? 0) + 1);
    return undefined;
  };
  /** Until it is taken. */
  const insist = async (path: string, body: object) => {
    while (!state.isOver && (await ask(path, body)) === undefined) await pause(lookMs);
  };
  const phone = async (i: number) => {
    const voter = voterOf(i);
    // they did not all come at the same moment
    await pause((lookMs * i) / phones);
    let voted = 0;
    let landsAtMs: number | undefined;
    while (!state.isOver) {
      const seen = await ask('/seen', undefined, landsAtMs === undefined ? undefined : voter);
      const number = seen?.number ?? 0;
      if (seen?.isOpen === true && number > voted) {
        voted = number;
        landsAtMs = undefined;
        await insist('/cast', { number, voter, choice: choiceOf(i) });
      }
      if (seen?.startsInMs !== undefined && choiceOf(i) === 0)
        landsAtMs ??= performance.now() + Math.max(0, seen.startsInMs) + flownMs(i);
      if (landsAtMs !== undefined && performance.now() > landsAtMs) {
        landsAtMs = Infinity;
        await insist('/land', { number, voter, landing: LANDING });
      }
      await pause(lookMs);
    }
  };
  const all = Promise.all(Array.from({ length: phones }, (_, i) => phone(i)));
  return {
    refusals,
    get answers() {
      return state.answers;
    },
    async end() {
      state.isOver = true;
      await all;
    },
  };
}
