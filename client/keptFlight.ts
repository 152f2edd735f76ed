import {
  formatRecord,
  parseRecord,
  type RecordHeader,
  type RecordLine,
  type TableRecord,
} from '../engine/record/index.ts';
import type { RecordKeeper } from './net/index.ts';

/** Pieces of the record stand under this and a number. */
const KEY = 'kilter-flight-';

/** Lines in one piece: each new line writes its whole piece again. */
const LINES_A_PIECE = 32;

/**
 * Keeps a flight alone over a reload, or the loss, of its page: each line is stored before it takes effect. Kept by the tab, gone with it. Where storage is
 * blocked or full nothing is kept, and a reload begins anew.
 */
export function createFlightKeeper(): RecordKeeper {
  let piece = 0;
  let lines: RecordLine[] = [];
  let isKept = true;
  const store = (text: string) => {
    if (!isKept) return;
    try {
      sessionStorage.setItem(`${KEY}${piece}`, text);
    } catch {
      isKept = false;
      forgetFlight();
    }
  };
  return {
    begin(header: RecordHeader, flown: readonly RecordLine[]) {
      forgetFlight();
      store(formatRecord({ header, lines: flown }));
      piece = 1;
    },
    write(line) {
      if (lines.length === LINES_A_PIECE) {
        piece += 1;
        lines = [];
      }
      lines.push(line);
      store(lines.map((kept) => `${JSON.stringify(kept)}\n`).join(''));
    },
  };
}

/** The flight that was kept; undefined when there is none, or none of this version. */
export function readKeptFlight(): TableRecord | undefined {
  try {
    let text = '';
    for (let piece = 0; ; piece += 1) {
      const part = sessionStorage.getItem(`${KEY}${piece}`);
      if (part === null) break;
      text += part;
    }
    const parsed = parseRecord(text);
    return parsed.ok ? parsed.value : undefined;
  } catch {
    return undefined;
  }
}

/** Keeps it no longer: whoever leaves the table has done with it. */
export function forgetFlight(): void {
  try {
    for (let piece = 0; sessionStorage.getItem(`${KEY}${piece}`) !== null; piece += 1)
      sessionStorage.removeItem(`${KEY}${piece}`);
  } catch {
    // where storage is blocked there is nothing to forget
  }
}
