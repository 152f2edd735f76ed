import type { Recording } from '../../engine/replay/index.ts';
import { accept, refuse, type Result } from '../../engine/result.ts';
import {
  commandTable,
  createTable,
  joinTable,
  recordingOf,
  stepTable,
  viewTable,
  type Command,
  type MemberId,
  type Refusal,
  type Table,
  type TableModel,
  type TablePlan,
} from '../../engine/table/index.ts';
import type { DescentEvent } from '../../engine/world/index.ts';
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

/** Length of a tick of the table [ms]. */
const TICK_MS = 1000 / 60;

/** Most ticks made up for in one frame. A page that was hidden for longer goes on from where it stopped. */
const MOST_TICKS_A_FRAME = 15;

export interface LocalTable extends TableLink {
  /** The descent so far; opened as `flown`, it is gone on with where it stopped. */
  recording(): Recording;
}

/**
 * A table that runs in this page: the same authority as on the server, for one person, with nothing sent anywhere. Ticks
 * follow the page's clock on a fixed step; the physics never sees a measured time. With `flown`, a descent that stopped
 * half-way is flown again up to there, to the bit, and held.
 */
export function openLocalTable(options: {
  readonly plan: TablePlan;
  readonly model: TableModel;
  readonly name: string;
  readonly clock?: FrameClock;
  readonly flown?: Recording | undefined;
}): Result<LocalTable, Refusal> {
  const { plan, model, clock = PAGE_FRAMES, flown } = options;
  const table = createTable({ plan, model });
  const joined = joinTable(table, { name: options.name });
  if (!joined.ok) return joined;
  const { id } = joined.value;
  if (flown !== undefined && !flyAgain(table, id, flown)) {
    return refuse({ code: 'table/other-descent', reason: 'The descent could not be taken up where it stopped.' });
  }

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
    while (owedMs >= TICK_MS && ticks < MOST_TICKS_A_FRAME) {
      owedMs -= TICK_MS;
      ticks += 1;
      events.push(...stepTable(table));
    }
    if (owedMs >= TICK_MS) owedMs = 0;
    if (ticks > 0) {
      core.view = viewTable(table, id);
      core.tell(events);
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
    recording: () => recordingOf(table),
    command(command: Command) {
      if (core.state === 'closed') {
        return Promise.resolve(refuse({ code: 'table/closed', reason: 'You have left this table.' }));
      }
      const result = commandTable(table, id, command);
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

/** Flies what was flown, from Flying, and holds; false when it came out otherwise than recorded. */
function flyAgain(table: Table, id: MemberId, { inputs, marks }: Recording): boolean {
  commandTable(table, id, { kind: 'takeSeat', seat: 'flying' });
  commandTable(table, id, { kind: 'begin' });
  for (const { ticks, thrustPercent, tiltDeg } of inputs) {
    for (let i = 0; i < ticks; i += 1) {
      // each tick anew: at contact the table itself shuts the engine down
      commandTable(table, id, { kind: 'setThrust', percent: thrustPercent });
      commandTable(table, id, { kind: 'setTilt', degrees: tiltDeg });
      stepTable(table);
    }
  }
  commandTable(table, id, { kind: 'hold' });
  const [was, is] = [marks.at(-1), recordingOf(table).marks.at(-1)];
  return was?.tick === is?.tick && was?.hash === is?.hash;
}
