/**
 * The browser's Back at a table. Sitting down adds one entry to the history, so that Back leads from the table to the start
 * page and not off the site; the page decides what becomes of the press.
 */
interface WayBack {
  /** The person stays: the entry that Back took away is put back. */
  stay(): void;
  /** The person has left: the entry goes too, unless Back has taken it. */
  end(): void;
  /** Another table is laid in place of this one: the entry stays, for it. */
  handOn(): void;
}

/** Marks the entry of a table in the history. */
const MARK = 'kilter-table';

/** Whether this entry of the history is that of a table: after a reload, or after Forward. */
export function isAtTable(): boolean {
  return history.state === MARK;
}

/** `end`: of the address that leads to the table, such as '#table=HKTVRQ'; '' for a table of one's own. */
export function openWayBack(end: string, onBack: () => void): WayBack {
  const start = startAddress();
  const table = end === '' ? start : location.pathname + end;
  const add = () => history.pushState(MARK, '', table);
  if (history.state === MARK) {
    // reloaded, or come back to: the entry is there already
    history.replaceState(MARK, '', table);
  } else {
    history.replaceState(undefined, '', start);
    add();
  }
  const onPop = () => {
    if (history.state !== MARK) onBack();
  };
  addEventListener('popstate', onPop);
  return {
    stay: add,
    handOn: () => removeEventListener('popstate', onPop),
    end() {
      removeEventListener('popstate', onPop);
      if (history.state === MARK) history.back();
    },
  };
}

/** The start page's own address: this one without the table or the page that it leads to. */
function startAddress(): string {
  const search = new URLSearchParams(location.search);
  // a study says much more in its address
  if (search.has('workbench')) return location.pathname;
  for (const name of ['table', 'logbook', 'hall', 'vote', 'network', 'about']) search.delete(name);
  return location.pathname + (search.size === 0 ? '' : `?${search.toString()}`);
}
