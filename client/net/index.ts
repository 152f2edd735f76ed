import { refuse } from '../../engine/result.ts';
import { NO_SERVER } from './answers.ts';
import { TAB_STORE } from './place.ts';
import type { JoiningOptions, OpenedTable, OpeningOptions, SharedTableOptions } from './sharedTable.ts';

export { flyForkAside } from './flyForkAside.ts';
export { openLocalTable, type FrameClock, type LocalTable, type RecordKeeper } from './localTable.ts';
export { cutClipAside, logDescentAside } from './replayAside.ts';
export { createSmoothing, readingBetween, type Smoothing } from './smoothing.ts';
export { LINK_STATES, type LinkListener, type LinkState, type TableLink } from './tableLink.ts';
export type { OpenedTable, OpeningOptions, SharedTableOptions } from './sharedTable.ts';

// The network part comes over the wire only when a table is shared: these three load it first.

/** Opens a new table on the server; its code is in the link. */
export async function openSharedTable(options: OpeningOptions): OpenedTable {
  const shared = await loadShared();
  return shared?.openSharedTable(options) ?? refuse(NO_SERVER);
}

/** Joins the table with this code, typed however a person types it. */
export async function joinSharedTable(options: JoiningOptions): OpenedTable {
  const shared = await loadShared();
  return shared?.joinSharedTable(options) ?? refuse(NO_SERVER);
}

/** Goes back to the place that this tab had before it was reloaded; undefined when it had none. */
export async function resumeSharedTable(options: SharedTableOptions = {}): Promise<Awaited<OpenedTable> | undefined> {
  if ((options.store ?? TAB_STORE).load() === undefined) return undefined;
  const shared = await loadShared();
  return shared === undefined ? refuse(NO_SERVER) : shared.resumeSharedTable(options);
}

function loadShared() {
  return import('./sharedTable.ts').catch(() => undefined);
}
