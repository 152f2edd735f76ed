import type { RATINGS } from '../review/index.ts';
import type { CardOutcome, CrewEntry, MemberId, Role, Table } from '../table/index.ts';
import { scorecardOf } from '../table/table.ts';
import type { TableRecord } from './record.ts';

/** What a list of runs says of one, without playing it again. */
export interface RunSummary {
  /** How its last descent ended; absent where it did not. */
  readonly outcome?: CardOutcome;
  /** How many descents it has. */
  readonly descents: number;
  /** Everybody who ever came to the table, in order. */
  readonly people: readonly PersonOfRun[];
  /** Who sat where when the last descent ended. */
  readonly crew: readonly CrewEntry[];
  readonly objectives: readonly RatedObjective[];
  /** How many actions the plan of improvement has. */
  readonly actions: number;
}

interface PersonOfRun {
  readonly member: MemberId;
  readonly name: string;
  readonly role: Role;
}

interface RatedObjective {
  readonly id: string;
  readonly text: string;
  readonly rating?: (typeof RATINGS)[number];
}

/** `table`: as it is at the end of the record. */
export function summarizeRun({ lines }: Pick<TableRecord, 'lines'>, table: Table): RunSummary {
  const { state, plan } = table;
  const card = scorecardOf(table);
  const people = lines.flatMap((line) =>
    line.line === 'entry' && line.content.kind === 'joined'
      ? [{ member: line.member, name: line.content.name, role: line.content.role }]
      : [],
  );
  return {
    ...(card && { outcome: card.outcome }),
    descents: state.descents,
    people,
    crew: card?.crew ?? [],
    objectives: (plan.drill?.objectives ?? []).map(({ id, text }) => {
      const rating = state.review.ratings[id]?.rating;
      return { id, text, ...(rating && { rating }) };
    }),
    actions: state.review.actions.length,
  };
}
