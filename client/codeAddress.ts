/** Where in an address a code stands: of a table, or of the votes of a hall. */
interface CodeAddress {
  /** After '?'. */
  readonly search: string;
  /** After '#'. */
  readonly hash: string;
}

/** What a code opens. */
type Opens = 'table' | 'vote';

/** The end of an address that leads to a table, such as '#table=HKTVRQ', or to a vote. What stands after '#' is sent to nobody, so that no proxy on the way writes the code down. */
export function codeHash(opens: Opens, code: string): string {
  return `#${opens}=${code.replaceAll(' ', '')}`;
}

/** The code of what the address leads to, as it stands there; undefined where it leads to none. Older links have it after '?'. */
export function codeInAddress(opens: Opens, { search, hash }: CodeAddress): string | undefined {
  return new URLSearchParams(hash.slice(1)).get(opens) ?? new URLSearchParams(search).get(opens) ?? undefined;
}
