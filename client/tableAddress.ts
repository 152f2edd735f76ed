/** Where in an address the code of a table stands. */
interface TableAddress {
  /** After '?'. */
  readonly search: string;
  /** After '#'. */
  readonly hash: string;
}

const NAME = 'table';

/** The end of an address that leads to a table, such as '#table=HKTVRQ'. What stands after '#' is sent to nobody, so that no proxy on the way writes the code down. */
export function tableHash(code: string): string {
  return `#${NAME}=${code.replaceAll(' ', '')}`;
}

/** The code of the table that an address leads to, as it stands there; undefined where it leads to none. Older links have it after '?'. */
export function codeInAddress({ search, hash }: TableAddress): string | undefined {
  return new URLSearchParams(hash.slice(1)).get(NAME) ?? new URLSearchParams(search).get(NAME) ?? undefined;
}
