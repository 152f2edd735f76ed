import { customAlphabet } from 'nanoid';
import { TABLE_CODE_ALPHABET, TABLE_CODE_LENGTH } from '../../engine/table/index.ts';

/** Which table codes are in use, and how many tables there may be. */
export interface TableRegistry {
  /** A code that no open table has, the given one where it is free; undefined when no more tables are to be opened. */
  open(wanted?: string): string | undefined;
  close(code: string): void;
  readonly size: number;
}

export function createTableRegistry(options: {
  readonly mostTables: number;
  /** Of letters of the alphabet; the system's own randomness unless a test says otherwise. */
  readonly draw?: () => string;
}): TableRegistry {
  const draw = options.draw ?? customAlphabet(TABLE_CODE_ALPHABET, TABLE_CODE_LENGTH);
  const codes = new Set<string>();
  return {
    open(wanted) {
      if (codes.size >= options.mostTables) return undefined;
      let code = wanted ?? draw();
      while (codes.has(code)) code = draw();
      codes.add(code);
      return code;
    },
    close: (code) => void codes.delete(code),
    get size() {
      return codes.size;
    },
  };
}
