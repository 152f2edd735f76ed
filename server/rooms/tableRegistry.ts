import { customAlphabet } from 'nanoid';
import { TABLE_CODE_ALPHABET, TABLE_CODE_LENGTH } from '../../engine/table/index.ts';

/** What is known of an open table without looking at what is played there. */
export interface OpenTable {
  readonly roomId: string;
  /** From where it was opened; undefined: by an earlier process. */
  readonly opener: string | undefined;
  /** Somebody has joined it: until then it takes nothing from anybody. */
  readonly isJoined: boolean;
  /** Since when nobody has a line to it [ms]; undefined: somebody has. */
  readonly desertedSinceMs: number | undefined;
  hasPlace(token: string): boolean;
  hasAddress(address: string): boolean;
  end(): void;
}

/** Which tables are open, under which codes, and how many there may be. */
export interface TableRegistry {
  /** Why no table may be opened from there now; undefined: one may. Where all are in use, one that everybody has left makes room. */
  refusalFor(address: string): 'all in use' | 'too many from there' | undefined;
  /** A code that no table here has. */
  draw(): string;
  /** Puts a table under the given code, or where it is not free, under another. */
  open(table: OpenTable, wanted?: string): string;
  close(code: string): void;
  find(code: string): OpenTable | undefined;
  /** Whether somebody from there has a place at a table. */
  isKnown(address: string): boolean;
  /** Whether a table that nobody has joined yet may be. */
  hasRoom(): boolean;
  /** Tables that somebody has joined. */
  readonly joined: number;
}

/** How long everybody has to be away before a table makes room for another [ms]. */
const DESERTED_MS = 30_000;

export function createTableRegistry(options: {
  /** With somebody at them. */
  readonly mostTables: number;
  readonly mostPerAddress: number;
  /** Of letters of the alphabet; the system's own randomness unless a test says otherwise. */
  readonly draw?: () => string;
  readonly now?: () => number;
}): TableRegistry {
  const { mostTables, mostPerAddress, now = () => performance.now() } = options;
  const draw = options.draw ?? customAlphabet(TABLE_CODE_ALPHABET, TABLE_CODE_LENGTH);
  const tables = new Map<string, OpenTable>();
  const joined = () => [...tables.values()].filter(({ isJoined }) => isJoined);

  /** Ends the table that everybody left the longest ago. */
  const makeRoom = (): boolean => {
    const deserted = joined()
      .filter(({ desertedSinceMs }) => desertedSinceMs !== undefined && now() - desertedSinceMs > DESERTED_MS)
      .toSorted((a, b) => (a.desertedSinceMs ?? 0) - (b.desertedSinceMs ?? 0));
    deserted[0]?.end();
    return deserted.length > 0;
  };

  const drawFree = () => {
    let code = draw();
    while (tables.has(code)) code = draw();
    return code;
  };

  return {
    draw: drawFree,
    refusalFor(address) {
      const all = [...tables.values()];
      if (all.filter(({ opener }) => opener === address).length >= mostPerAddress) return 'too many from there';
      const isFull = joined().length >= mostTables || all.length >= 2 * mostTables;
      return isFull && !makeRoom() ? 'all in use' : undefined;
    },
    open(table, wanted) {
      const code = wanted === undefined || tables.has(wanted) ? drawFree() : wanted;
      tables.set(code, table);
      return code;
    },
    close: (code) => void tables.delete(code),
    find: (code) => tables.get(code),
    isKnown: (address) => [...tables.values()].some((table) => table.hasAddress(address)),
    hasRoom: () => joined().length < mostTables,
    get joined() {
      return joined().length;
    },
  };
}
