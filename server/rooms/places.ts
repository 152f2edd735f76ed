import { nanoid } from 'nanoid';
import { MOST_MEMBERS, type MemberId } from '../../engine/table/index.ts';
import type { TableJournal } from '../storage/index.ts';

/** Places of one table that one address may hold: those of a class behind the router at which the table was opened, and of a few elsewhere. */
export const PLACES_PER_ADDRESS = { where: MOST_MEMBERS - 8, elsewhere: 12 } as const;

/** Who belongs to a table, and what proves it. */
export interface Places {
  readonly size: number;
  /** Gives a new member a place; returns the token that proves it. */
  give(memberId: MemberId, address: string): string;
  /** Whose token that is; it is good until the one that takes its place has been used. */
  memberOf(token: string): MemberId | undefined;
  /** A new token for who has come back with the given one. */
  renew(memberId: MemberId, used: string): string;
  forget(memberId: MemberId): void;
  /** Whether one more from there is too many. */
  isCrowded(address: string): boolean;
  /** Whether somebody from there has a place. */
  isKnown(address: string): boolean;
  /** Writes all of them to another record. */
  keepIn(journal: TableJournal): void;
}

/** `opener`: address from which the table was opened; undefined where that is not known any more. `kept`: from the journal of an earlier process. */
export function createPlaces(
  journal: () => TableJournal,
  opener: string | undefined,
  kept: readonly (readonly [MemberId, string])[] = [],
): Places {
  // the newest first, then the one that it takes the place of: the message that brings a new one may be lost
  const tokens = new Map<MemberId, readonly string[]>(kept.map(([memberId, text]) => [memberId, text.split(' ')]));
  const addresses = new Map<MemberId, string>();
  const keep = (memberId: MemberId, list: readonly string[]) => {
    tokens.set(memberId, list);
    journal().keepPlace(memberId, list.join(' '));
    return list[0] ?? '';
  };
  return {
    get size() {
      return tokens.size;
    },
    give(memberId, address) {
      addresses.set(memberId, address);
      return keep(memberId, [nanoid()]);
    },
    memberOf: (token) => [...tokens].find(([, list]) => list.includes(token))?.[0],
    renew: (memberId, used) => keep(memberId, [nanoid(), used]),
    forget(memberId) {
      tokens.delete(memberId);
      addresses.delete(memberId);
      journal().forgetPlace(memberId);
    },
    isCrowded(address) {
      const most = opener === undefined || address === opener ? PLACES_PER_ADDRESS.where : PLACES_PER_ADDRESS.elsewhere;
      return [...addresses.values()].filter((other) => other === address).length >= most;
    },
    isKnown: (address) => [...addresses.values()].includes(address),
    keepIn(other) {
      for (const [memberId, list] of tokens) other.keepPlace(memberId, list.join(' '));
    },
  };
}
