import { nanoid } from 'nanoid';
import {
  headerOf,
  markLine,
  openKeptTable,
  relayKeptTable,
  resumeKeptTable,
  stepKeptTable,
  type KeptTable,
  type RecordLine,
} from '../../engine/record/index.ts';
import type { Entry, TablePlan } from '../../engine/table/index.ts';
import type { DescentEvent } from '../../engine/world/index.ts';
import { RUN_KEY_LETTERS } from '../logbook/index.ts';
import type { TableJournal, UnfinishedTable } from '../storage/index.ts';
import { createForkKeeper, type ForkKeeper } from './forkKeeper.ts';
import type { RoomServices } from './roomServices.ts';

/** What a recorded table is made with. */
interface Parts {
  readonly services: Pick<RoomServices, 'model' | 'plan' | 'journal' | 'flyFork' | 'onFault'>;
  /** Under which it is recorded. */
  readonly code: () => string;
  /** Somebody came, went, or did something. */
  readonly onEntry: () => void;
}

/** The table of one room with its record in the journal, and what is flown again from that. */
export class RecordedTable {
  readonly #parts: Parts;
  #kept!: KeptTable;
  #journal!: TableJournal;
  #forks!: ForkKeeper;
  #runKey = nanoid(RUN_KEY_LETTERS);
  /** What came to the table before its first descent: it is laid out anew with them when something else is chosen. */
  #gathered: Entry[] = [];

  private constructor(parts: Parts) {
    this.#parts = parts;
  }

  static open(parts: Parts, plan: TablePlan): RecordedTable {
    const opened = new RecordedTable(parts);
    opened.#kept = openKeptTable(opened.#begin(plan));
    return opened;
  }

  /** As the table was when the process before this one ended. */
  static takeUp(parts: Parts, { record, journal, runKey }: UnfinishedTable): RecordedTable {
    const { plan: lay, model, flyFork, onFault } = parts.services;
    const taken = new RecordedTable(parts);
    const resumed =
      record === undefined
        ? undefined
        : resumeKeptTable(record, {
            plan: lay(record.header.plan.choice, record.header.plan.drill),
            model,
            write: (line) => taken.#write(line),
          });
    if (record === undefined || resumed?.ok !== true) {
      journal.end();
      throw new Error('A table of another version cannot be taken up.');
    }
    taken.#journal = journal;
    taken.#runKey = runKey ?? taken.#runKey;
    taken.#forks = createForkKeeper({ fly: flyFork, onFault, lines: record.lines });
    taken.#gathered = record.lines.filter((line) => line.line === 'entry');
    taken.#kept = resumed.value;
    return taken;
  }

  get kept(): KeptTable {
    return this.#kept;
  }

  get journal(): TableJournal {
    return this.#journal;
  }

  /** Opens the record of this table in the logbook, whatever the table comes to play. */
  get runKey(): string {
    return this.#runKey;
  }

  step(): readonly DescentEvent[] {
    return stepKeptTable(this.#kept);
  }

  /** Has flown again what is worth it. */
  lookForForks(): void {
    this.#forks.look(this.#kept.table);
  }

  /** Something else to play: who came does so again, under a new record. */
  layAnew(plan: TablePlan): void {
    const before = { gathered: this.#gathered, tick: this.#kept.table.state.tick };
    this.#journal.drop();
    this.#kept = relayKeptTable(before, this.#begin(plan));
  }

  /** Writes the table down as it is now. */
  mark(): void {
    this.#journal.write(markLine(this.#kept.table));
  }

  /** Begins a record for what is to be played. */
  #begin(plan: TablePlan): Parameters<typeof openKeptTable>[0] {
    const { services, code } = this.#parts;
    const { model, journal, flyFork, onFault } = services;
    this.#journal = journal.open(code(), headerOf(plan), this.#runKey);
    this.#forks = createForkKeeper({ fly: flyFork, onFault });
    this.#gathered = [];
    return { plan, model, write: (line) => this.#write(line) };
  }

  #write(line: RecordLine): void {
    this.#journal.write(line);
    this.#forks.note(line);
    if (line.line !== 'entry') return;
    this.#parts.onEntry();
    if (this.#kept.table.state.stage === 'gathering') this.#gathered.push(line);
  }
}
