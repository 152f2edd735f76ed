import type { ReplayRefusal, TableRecord } from '../record/index.ts';
import { accept, type Result } from '../result.ts';
import { wholeTalk, type TalkView } from '../talk/index.ts';
import { sampleTable, type Sample } from './sampleDescent.ts';
import { statementsOf, type Statement } from './statements.ts';
import { watchDescent, type ReplayParts } from './watchDescent.ts';

/** What is written of the last descent of a record for others to read. */
export interface DescentLog {
  readonly samples: readonly Sample[];
  readonly statements: readonly Statement[];
  /** The whole log of the crew, whoever heard it. */
  readonly talk: Pick<TalkView, 'calls' | 'log'>;
}

/** Plays a record again for what it does not hold itself: samples ten a second, the whole log of the crew, and statements about its end. */
export function logDescent(record: TableRecord, parts: ReplayParts): Result<DescentLog, ReplayRefusal> {
  const watched = watchDescent(record, parts, sampleTable);
  if (!watched.ok) return watched;
  const { looks, table } = watched.value;
  return accept({ samples: looks, statements: statementsOf(record, table), talk: wholeTalk(table.state) });
}
