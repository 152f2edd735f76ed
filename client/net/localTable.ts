import {
  askTable,
  formatRecord,
  headerOf,
  joinTable,
  markLine,
  openKeptTable,
  resumeKeptTable,
  stepKeptTable,
  type ForkRefusal,
  type ForkRequest,
  type KeptTable,
  type RecordHeader,
  type RecordLine,
  type TableRecord,
} from '../../engine/record/index.ts';
import { accept, refuse, type Result } from '../../engine/result.ts';
import {
  askForDrill,
  paceNow,
  viewTable,
  wantedFork,
  type Command,
  type Fork,
  type MemberId,
  type Refusal,
  type TableModel,
  type TablePlan,
} from '../../engine/table/index.ts';
import type { DescentEvent } from '../../engine/world/index.ts';
import { layWhatIf } from '../../levels/index.ts';
import { createLinkCore } from './linkCore.ts';
import type { TableLink } from './tableLink.ts';

/** Time and frames of the page, so that a test can have both at will. */
export interface FrameClock {
  /** [ms] */
  now(): number;
  /** Calls back before the next frame is drawn; returns the function that calls it off. */
  nextFrame(callback: () => void): () => void;
}

const PAGE_FRAMES: FrameClock = {
  now: () => performance.now(),
  nextFrame(callback) {
    const handle = requestAnimationFrame(callback);
    return () => cancelAnimationFrame(handle);
  },
};

/** Length of a tick of the table at pace 1 [ms]. */
const TICK_MS = 1000 / 60;

/** Most ticks made up for in one frame. A page that was hidden for longer goes on from where it stopped. */
const MOST_TICKS_A_FRAME = 15;

export interface LocalTable extends TableLink {
  /** Everything so far. Opened as `flown`, it is gone on with where it stopped. */
  record(): TableRecord;
  /** Writes down where it stands now; between two marks a table that is taken up goes on from the earlier one. */
  keep(): void;
}

/** Where the record of a table in this page is written as it grows. */
export interface RecordKeeper {
  begin(header: RecordHeader, lines: readonly RecordLine[]): void;
  write(line: RecordLine): void;
}

/** Flies a fork without holding up the page; undefined where that could not be done. */
export type FlyFork = (request: ForkRequest) => Promise<Result<Fork, ForkRefusal> | undefined>;

/**
 * A table that runs in this page: the same authority as on the server, for one person, with nothing sent anywhere. Ticks
 * follow the page's clock on a fixed step; the physics never sees a measured time. With `flown`, a table that stopped
 * half-way is taken up there, to the bit, and held.
 */
export function openLocalTable(options: {
  readonly plan: TablePlan;
  readonly model: TableModel;
  readonly name: string;
  readonly clock?: FrameClock;
  readonly flown?: TableRecord | undefined;
  readonly keeper?: RecordKeeper;
  /** Without it no fork is flown. */
  readonly flyFork?: FlyFork;
}): Result<LocalTable, Refusal> {
  const { plan, model, clock = PAGE_FRAMES, flown, keeper, flyFork } = options;
  const header = headerOf(plan);
  const lines: RecordLine[] = [...(flown?.lines ?? [])];
  keeper?.begin(header, lines);
  const write = (line: RecordLine) => {
    keeper?.write(line);
    lines.push(line);
  };
  const set = flown === undefined ? begin({ plan, model, write }, options.name) : goOn(flown, { plan, model, write });
  if (!set.ok) return set;
  const { kept, id } = set.value;
  const { table } = kept;

  const record = () => ({ header, lines: [...lines, markLine(table)] });
  const forkAtRest = () => {
    const wanted = wantedFork(table);
    if (wanted === undefined || flyFork === undefined) return;
    const other = layWhatIf(plan, wanted.change);
    void flyFork({ record: record(), plan, change: wanted.change, ...(other && { other }) }).then((flownAgain) => {
      if (flownAgain?.ok === true) wanted.lay(flownAgain.value);
      else wanted.refuse(flownAgain?.error.reason ?? '');
    });
  };
  const core = createLinkCore('connected');
  core.view = viewTable(table, id);
  let lastMs = clock.now();
  let owedMs = 0;

  const advance = () => {
    const nowMs = clock.now();
    owedMs += Math.max(0, nowMs - lastMs);
    lastMs = nowMs;
    const events: DescentEvent[] = [];
    let ticks = 0;
    // looked at anew for each: a step may end the descent, and the slower pace with it
    while (owedMs >= tickMs(table) && ticks < MOST_TICKS_A_FRAME) {
      owedMs -= tickMs(table);
      ticks += 1;
      events.push(...stepKeptTable(kept));
    }
    if (owedMs >= tickMs(table)) owedMs = 0;
    if (ticks > 0) {
      core.view = viewTable(table, id);
      core.tell(events);
      forkAtRest();
    }
    if (core.state !== 'closed') callOff = clock.nextFrame(advance);
  };
  let callOff = clock.nextFrame(advance);

  return accept({
    kind: 'local',
    get state() {
      return core.state;
    },
    get view() {
      return core.view;
    },
    subscribe: (listener) => core.subscribe(listener),
    keep: () => write(markLine(table)),
    record,
    recordText: () => Promise.resolve(accept(formatRecord(record()))),
    drillText() {
      const drill = askForDrill(table, id);
      return Promise.resolve(drill.ok ? accept(JSON.stringify(drill.value)) : drill);
    },
    command(command: Command) {
      if (core.state === 'closed') {
        return Promise.resolve(refuse({ code: 'table/closed', reason: 'You have left this table.' }));
      }
      const result = askTable(kept, id, command);
      if (result.ok) {
        core.view = viewTable(table, id);
        core.tell([]);
      }
      return Promise.resolve(result);
    },
    leave() {
      if (core.state === 'closed') return;
      callOff();
      core.state = 'closed';
      core.tell([]);
    },
  });
}

/** Length of a tick of the table as it is now [ms]. */
function tickMs({ state }: KeptTable['table']): number {
  return TICK_MS / paceNow(state);
}

interface KeptPlace {
  readonly kept: KeptTable;
  readonly id: MemberId;
}

function begin(parts: Parameters<typeof openKeptTable>[0], name: string): Result<KeptPlace, Refusal> {
  const kept = openKeptTable(parts);
  const joined = joinTable(kept, name);
  return joined.ok ? accept({ kept, id: joined.value }) : joined;
}

/** As it was, and on hold. */
function goOn(flown: TableRecord, parts: Parameters<typeof resumeKeptTable>[1]): Result<KeptPlace, Refusal> {
  const resumed = resumeKeptTable(flown, parts);
  const [member] = resumed.ok ? resumed.value.table.state.members : [];
  if (!resumed.ok || member === undefined) {
    return refuse({ code: 'table/other-descent', reason: 'The descent could not be taken up where it stopped.' });
  }
  // refused when it is on hold, or does not run: then it stands as it is
  askTable(resumed.value, member.id, { kind: 'hold' });
  return accept({ kept: resumed.value, id: member.id });
}
