import type { MemberId, Refusal } from '../../engine/table/index.ts';
import { createTokenBucket, type TokenBucket } from '../tokenBucket.ts';

/** Commands of one member: keys held down repeat up to 30 times a second. Past this the answer is a refusal. */
export const COMMAND_RATE = { burst: 40, perSecond: 30 } as const;

/** What takes the server milliseconds, by one member and by all at a table: starting over, laying out anew, and whole records. */
export const DEAR_RATES = { ofMember: { burst: 4, perSecond: 0.5 }, ofTable: { burst: 8, perSecond: 1 } } as const;

/** What the members of one table may still ask for. It outlives their lines, so that coming back wins nothing. */
export interface Allowances {
  /** Takes one command; why not, where there were too many. */
  spend(memberId: MemberId): Refusal | undefined;
  /** The same for what takes milliseconds. */
  spendDear(memberId: MemberId): Refusal | undefined;
  forget(memberId: MemberId): void;
}

export function createAllowances(now: () => number = () => performance.now()): Allowances {
  const ofTable = createTokenBucket(DEAR_RATES.ofTable);
  const members = new Map<MemberId, { readonly commands: TokenBucket; readonly dear: TokenBucket }>();
  const of = (memberId: MemberId) => {
    let known = members.get(memberId);
    if (known === undefined) {
      known = { commands: createTokenBucket(COMMAND_RATE), dear: createTokenBucket(DEAR_RATES.ofMember) };
      members.set(memberId, known);
    }
    return known;
  };
  return {
    spend: (memberId) => (of(memberId).commands.draw(now()) ? undefined : TOO_MANY),
    spendDear: (memberId) => (of(memberId).dear.draw(now()) && ofTable.draw(now()) ? undefined : TOO_OFTEN),
    forget: (memberId) => void members.delete(memberId),
  };
}

const TOO_MANY: Refusal = {
  code: 'table/too-fast',
  reason: `Too many commands at once: at most ${COMMAND_RATE.perSecond} a second are carried out.`,
};

const TOO_OFTEN: Refusal = {
  code: 'table/too-fast',
  reason: 'That was asked for too often. Wait a few seconds, then try again.',
};
