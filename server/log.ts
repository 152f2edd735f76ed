import { pino } from 'pino';
import { createTokenBucket, type TokenBucket } from './tokenBucket.ts';

/** What the server has to say, and how urgent it is. No kind names a person, a table or an address of the network. */
const LINE_KINDS = {
  start: 'info',
  stop: 'info',
  records: 'error',
  fault: 'error',
  late: 'warn',
  library: 'warn',
  refused: 'info',
  crowded: 'warn',
} as const;
type LineKind = keyof typeof LINE_KINDS;

/** Gets one line for each thing worth a person's notice. */
export type Report = (kind: LineKind, line: string) => void;

/** Lines of one kind: what strangers set off fills no disk. */
const LINE_RATE = { burst: 20, perSecond: 1 / 30 } as const;

/** What may wait to be written [byte]; where nobody takes it, the rest is lost. */
const MOST_WAITING = 256 * 1024;

interface Log {
  readonly report: Report;
  /** Writes what waits, if it is taken. */
  end(): void;
}

/** The log of the process, on its error output. One that nobody reads, or that is closed, costs its lines and nothing else. */
export function openLog(form: 'plain' | 'json'): Log {
  const destination = pino.destination({ dest: 2, sync: false, maxLength: MOST_WAITING });
  // closed at the other end, or the disk is full: there is nowhere to say it
  destination.on('error', () => undefined);
  const logger = pino(
    { base: null, timestamp: pino.stdTimeFunctions.isoTime, formatters: { level: (level) => ({ level }) } },
    destination,
  );
  return {
    report: limitLines((kind, line, omitted) => {
      if (form === 'json') logger[LINE_KINDS[kind]]({ kind, ...(omitted > 0 && { omitted }) }, line);
      else destination.write(`${plainTime()} ${line}${omitted > 0 ? ` (and ${omitted} more of this kind)` : ''}\n`);
    }),
    end() {
      try {
        destination.flushSync();
      } catch {
        // as above
      }
    },
  };
}

/** The words of a library as one line: without its traces, and without what it quotes, which names rooms and sessions. */
export function libraryLine(parts: readonly unknown[]): string {
  return (parts.map(String).join(' ').split('\n')[0] ?? '').replaceAll(/"[^"]*"|'[^']*'/g, '"…"');
}

/** What libraries write past every logger goes the way of the log: strangers set it off as well. */
export function takeConsole(report: Report): void {
  console.error = console.warn = (...parts: readonly unknown[]) => report('library', libraryLine(parts));
}

/** Lets through so many lines of each kind, and says with the next how many were left out. */
export function limitLines(
  write: (kind: LineKind, line: string, omitted: number) => void,
  now: () => number = () => performance.now(),
): Report {
  const kinds = new Map<LineKind, { readonly bucket: TokenBucket; omitted: number }>();
  return (kind, line) => {
    let known = kinds.get(kind);
    if (known === undefined) kinds.set(kind, (known = { bucket: createTokenBucket(LINE_RATE), omitted: 0 }));
    if (known.bucket.draw(now())) {
      const { omitted } = known;
      known.omitted = 0;
      write(kind, line, omitted);
    } else {
      known.omitted += 1;
    }
  };
}

/** For a person at a terminal. */
function plainTime(): string {
  return new Date().toTimeString().slice(0, 8);
}
