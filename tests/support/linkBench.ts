import { openLocalTable, openSharedTable, type FrameClock, type TableLink } from '../../client/net/index.ts';
import { playedModel, type Command, type TablePlan } from '../../engine/table/index.ts';
import { STEPS_PER_PATCH } from '../../server/rooms/index.ts';
import { createHandTicker, createTabStore, startTestServer, until } from './tableServer.ts';

/** One kind of link with its table under the test's hand: the same commands between the same ticks, whatever is between. */
export interface LinkBench {
  readonly link: TableLink;
  /** Gives a command through the link; 'done', or the code of the refusal. */
  say(command: Command): Promise<string>;
  /** Lets the table make the ticks between two sendings, and the view after them arrive. */
  turn(): Promise<void>;
  close(): Promise<void>;
}

const TICKS_A_TURN = STEPS_PER_PATCH;

export const BENCHES: Readonly<Record<TableLink['kind'], (plan: TablePlan) => Promise<LinkBench>>> = {
  local: openLocalBench,
  shared: openSharedBench,
};

function openLocalBench(plan: TablePlan): Promise<LinkBench> {
  const clock = createHandClock();
  const opened = openLocalTable({ plan, model: playedModel, name: 'Ada', clock });
  if (!opened.ok) throw new Error(opened.error.reason);
  return Promise.resolve({
    link: opened.value,
    say: (command) => sayTo(opened.value, command),
    turn: () => Promise.resolve(clock.turn(TICKS_A_TURN)),
    close: () => Promise.resolve(opened.value.leave()),
  });
}

async function openSharedBench(plan: TablePlan): Promise<LinkBench> {
  const ticker = createHandTicker();
  const server = await startTestServer({ ticker, model: playedModel, plan: () => plan });
  const opened = await openSharedTable({ origin: server.origin, store: createTabStore(), name: 'Ada' });
  if (!opened.ok) throw new Error(opened.error.reason);
  const link = opened.value;
  let isRunning = false;
  return {
    link,
    async say(command) {
      const answer = await sayTo(link, command);
      if (answer !== 'done') return answer;
      if (command.kind === 'begin' || command.kind === 'again' || command.kind === 'resume') isRunning = true;
      if (command.kind === 'hold') isRunning = false;
      return answer;
    },
    async turn() {
      const before = link.view?.flight;
      ticker.turn(TICKS_A_TURN);
      if (isRunning && before?.outcome === undefined) {
        await until('the next reading', () => link.view?.flight.tick !== before?.tick);
      } else {
        // answers and papers come in order: once this impossible command is refused, the papers before it are here
        await link.command({ kind: 'setThrust', percent: -1 });
      }
    },
    async close() {
      link.leave();
      await server.close();
    },
  };
}

async function sayTo(link: TableLink, command: Command): Promise<string> {
  const result = await link.command(command);
  return result.ok ? 'done' : result.error.code;
}

/** A page whose frames come when the test says so, one a tick. */
export function createHandClock(): FrameClock & { turn(ticks: number): void; wait(ms: number): void } {
  let nowMs = 0;
  let callback: (() => void) | undefined;
  const wait = (ms: number) => {
    nowMs += ms;
    const due = callback;
    callback = undefined;
    due?.();
  };
  return {
    now: () => nowMs,
    nextFrame(next) {
      callback = next;
      return () => (callback = undefined);
    },
    wait,
    turn(ticks) {
      // a hair more than a tick, so that rounding owes none
      for (let i = 0; i < ticks; i += 1) wait(1000 / 60 + 1e-6);
    },
  };
}
