import type { TableView } from '../../engine/table/index.ts';
import type { DescentEvent } from '../../engine/world/index.ts';
import type { LinkListener, LinkState } from './tableLink.ts';

/** What both kinds of link share: the newest view, the state, and who wants to know. */
export interface LinkCore {
  state: LinkState;
  view: TableView | undefined;
  closedBecause: string | undefined;
  subscribe(listener: LinkListener): () => void;
  /** Tells every listener once. */
  tell(events: readonly DescentEvent[]): void;
}

export function createLinkCore(state: LinkState): LinkCore {
  const listeners = new Set<LinkListener>();
  return {
    state,
    view: undefined,
    closedBecause: undefined,
    subscribe(listener) {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    tell(events) {
      // a copy: a listener may end its own subscription
      for (const listener of Array.from(listeners)) listener(events);
    },
  };
}
