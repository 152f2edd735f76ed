import type { Command, MemberId, Role } from './tableTypes.ts';

/**
 * What came to a table from outside, besides the ticks of its clock. The plan and the entries in their order are the whole memory of a table: the
 * same entries at the same ticks give the same table, to the bit.
 */
export interface Entry {
  /** Ticks of the table that lie behind it. */
  readonly tick: number;
  /** Whose doing it is; for `joined`, who that is from now on. */
  readonly member: MemberId;
  readonly content: EntryContent;
}

export type EntryContent = Happening | Command;

/**
 * joined: under a name that nobody else has here, as what that person is from now on. dropped, returned: the line to the member. left: for good, and so is who was away for too long. interrupted: the machine
 * of the table went away and is back; a descent that ran stands still until somebody resumes it.
 */
export type Happening =
  | { readonly kind: 'joined'; readonly name: string; readonly role: Role }
  | { readonly kind: 'dropped' }
  | { readonly kind: 'returned' }
  | { readonly kind: 'left' }
  | { readonly kind: 'interrupted' };

const HAPPENINGS = [
  'joined',
  'dropped',
  'returned',
  'left',
  'interrupted',
] as const satisfies readonly Happening['kind'][];

export function isHappening(content: EntryContent): content is Happening {
  const { kind } = content;
  return HAPPENINGS.some((happening) => happening === kind);
}
