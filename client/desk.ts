import { formatTableCode, parseTableCode, playedModel, type TableView } from '../engine/table/index.ts';
import { firstLanding, layPlan } from '../levels/index.ts';
import { createFlightKeeper, forgetFlight, readKeptFlight } from './keptFlight.ts';
import { joinSharedTable, openLocalTable, openSharedTable, resumeSharedTable, type TableLink } from './net/index.ts';
import { ownName } from './ownName.ts';
import { layTable } from './panels/tablePage.ts';
import { LEAVING, LOBBY, STATUS, TABLE } from './text/en.ts';
import { openWayBack } from './wayBack.ts';
import './styles/desk.css';

/** Everyone's first landing is over the same ground; a link may name another with `?seed=`. */
const FIRST_SEED = 1;

/** What went wrong, in words; undefined when the table is laid. */
type Problem = string | undefined;

/** A table in this page: the person flies at once. */
export async function flyAlone(): Promise<Problem> {
  const seed = Number(new URLSearchParams(location.search).get('seed') ?? FIRST_SEED);
  const plan = firstLanding(Number.isSafeInteger(seed) && seed >= 0 ? seed : FIRST_SEED);
  const opened = openLocalTable({ plan, model: playedModel, name: LOBBY.you, keeper: createFlightKeeper() });
  if (!opened.ok) return opened.error.reason;
  const link = opened.value;
  await link.command({ kind: 'takeSeat', seat: 'flying' });
  await link.command({ kind: 'begin' });
  return lay(link, () => link.keep());
}

/** The flight in this page before it was reloaded, on hold where it stopped; nothing when there was none. */
export async function goOnFlying(): Promise<Problem> {
  const flown = readKeptFlight();
  if (flown === undefined) return undefined;
  const plan = layPlan(flown.header.plan.choice);
  if (!plan.ok) return undefined;
  const keeper = createFlightKeeper();
  const opened = openLocalTable({ plan: plan.value, model: playedModel, name: LOBBY.you, flown, keeper });
  if (!opened.ok) return opened.error.reason;
  const link = opened.value;
  return lay(link, () => link.keep());
}

/** A table on the server, for a crew. */
export async function openTable(given: string): Promise<Problem> {
  const opened = await openSharedTable({ name: ownName(given) });
  return opened.ok ? lay(opened.value) : opened.error.reason;
}

/** The table with this code; the seat that this tab had there before a reload, if any. */
export async function joinTable(code: string, given: string): Promise<Problem> {
  const resumed = await resumeSharedTable();
  if (resumed?.ok === true && sameCode(resumed.value.code, code)) return lay(resumed.value);
  if (resumed?.ok === true) resumed.value.leave();
  const joined = await joinSharedTable({ name: ownName(given), code });
  return joined.ok ? lay(joined.value) : joined.error.reason;
}

/** `keep`: what to write down when the page goes while the table lies. */
async function lay(link: TableLink, keep: () => void = () => undefined): Promise<Problem> {
  const view = await firstView(link);
  if (view === undefined) return link.closedBecause ?? STATUS.closed;
  const start = document.getElementById('start');
  const holder = document.getElementById('desk');
  const startTitle = document.title;
  if (start === null || holder === null) throw new Error('The page has no start or no desk');
  start.hidden = true;
  document.title = TABLE.title(view.plan.title);
  const search = link.code === undefined ? '' : `?table=${link.code.replaceAll(' ', '')}`;
  const table = layTable(holder, link, view, (words = LEAVING.left(link.code)) => {
    way.end();
    removeEventListener('pagehide', keep);
    if (link.kind === 'local') forgetFlight();
    holder.replaceChildren();
    start.hidden = false;
    document.title = startTitle;
    const status = document.getElementById('start-status');
    if (status !== null) status.textContent = words;
    const field = document.getElementById('code');
    if (field instanceof HTMLInputElement && link.code !== undefined) field.value = link.code;
    document.getElementById('fly')?.focus();
  });
  addEventListener('pagehide', keep);
  const way = openWayBack(search, () => {
    if (table.mayLeave()) table.leave();
    else way.stay();
  });
  return undefined;
}

function firstView(link: TableLink): Promise<TableView | undefined> {
  return new Promise((resolve) => {
    const look = () => {
      if (link.view === undefined && link.state !== 'closed') return false;
      resolve(link.view);
      return true;
    };
    if (look()) return;
    const unsubscribe = link.subscribe(() => {
      if (look()) unsubscribe();
    });
  });
}

function sameCode(shown: string | undefined, typed: string): boolean {
  const code = parseTableCode(typed);
  return shown !== undefined && code.ok && formatTableCode(code.value) === shown;
}
