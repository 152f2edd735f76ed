import { accept, refuse, type Result } from '../../engine/result.ts';
import { parseTableCode, type PlanChoice, type Refusal } from '../../engine/table/index.ts';
import type { EnteringBody } from '../../server/messages/index.ts';
import { readJoinRefusal } from './answers.ts';
import { TAB_STORE, type PlaceStore } from './place.ts';
import { adoptRoom, comeBack, createSharedLine, linkOf } from './sharedLine.ts';
import { TableClient, type TableRoom } from './tableClient.ts';
import type { TableLink } from './tableLink.ts';

export interface SharedTableOptions {
  /** Of the server, such as 'http://localhost:2567', with its path if it has one; in a page, where the page lies. */
  readonly origin?: string;
  /** Where the way back to the seat is kept; the tab's own storage unless a test says otherwise. */
  readonly store?: PlaceStore;
}

export interface OpeningOptions extends SharedTableOptions {
  readonly name: string;
  /** Whether whoever opens it runs it, instead of sitting at it. */
  readonly facilitates?: boolean;
  /** What the table is to play; without it, what the server has. */
  readonly choice?: PlanChoice | undefined;
}

export interface JoiningOptions extends SharedTableOptions {
  readonly name: string;
  readonly code: string;
  /** Crew unless it is said otherwise. */
  readonly role?: 'crew' | 'observer' | 'room screen';
}

/** Resolves to a link with its first view, or to the reason why there is none; never rejects. */
export type OpenedTable = Promise<Result<TableLink, Refusal>>;

/** Opens a new table on the server, for a choice if there is one; its code is in the link. */
export function openSharedTable(options: OpeningOptions): OpenedTable {
  const { name, choice, facilitates } = options;
  const body: EnteringBody = { name, ...(choice && { choice }), ...(facilitates === true && { role: 'facilitator' }) };
  return connect(options, name, (client) => client.enter(body));
}

/** Joins the table with this code, typed however a person types it. */
export function joinSharedTable(options: JoiningOptions): OpenedTable {
  const code = parseTableCode(options.code);
  if (!code.ok) return Promise.resolve(code);
  const { name, role } = options;
  const body: EnteringBody = { code: code.value, name, ...(role && { role }) };
  return connect(options, name, (client) => client.enter(body));
}

/** Goes back to the place that this tab had before it was reloaded; undefined when it had none. */
export function resumeSharedTable(options: SharedTableOptions = {}): OpenedTable | undefined {
  const place = (options.store ?? TAB_STORE).load();
  if (place === undefined) return undefined;
  return connect(options, place.name, (client) => comeBack(client, place));
}

async function connect(
  { origin, store = TAB_STORE }: SharedTableOptions,
  name: string,
  enter: (client: TableClient) => Promise<TableRoom>,
): OpenedTable {
  const client = new TableClient(origin ?? new URL('.', location.href).href);
  try {
    const line = createSharedLine({ client, store, name });
    await adoptRoom(line, await enter(client));
    return accept(linkOf(line));
  } catch (error) {
    const refusal = readJoinRefusal(error);
    if (refusal.code === 'table/no-place' || refusal.code === 'table/no-table') store.clear();
    return refuse(refusal);
  }
}
