import { formatProblem } from '../engine/result.ts';
import {
  formatTableCode,
  parseTableCode,
  playedModel,
  type PlanChoice,
  type Seat,
  type TablePlan,
  type TableView,
} from '../engine/table/index.ts';
import { firstChoice, firstLanding, layOut } from '../levels/index.ts';
import { codeHash, codeInAddress } from './codeAddress.ts';
import { createFlightKeeper, forgetFlight, readKeptFlight } from './keptFlight.ts';
import {
  flyForkAside,
  joinSharedTable,
  openLocalTable,
  openSharedTable,
  resumeSharedTable,
  type LocalTable,
  type TableLink,
} from './net/index.ts';
import { ownName } from './ownName.ts';
import { layControlPage } from './panels/control/controlPage.ts';
import { pageFor } from './panels/laidPage.ts';
import { layRoomPage } from './panels/room/roomPage.ts';
import { openChoiceSheet } from './panels/choiceSheet.ts';
import { openSettings } from './panels/settingsSheet.ts';
import { layTable } from './panels/tablePage.ts';
import { addressOf, choiceInAddress, FIRST_SEED, withoutChoice } from './planAddress.ts';
import { CHOICE, LEAVING, LOBBY, STATUS, TABLE } from './text/en.ts';
import { openWayBack } from './wayBack.ts';
import './styles/desk.css';

/** What went wrong, in words; undefined when the table is laid. */
type Problem = string | undefined;

/** Of every table in this page. */
const ALONE = { model: playedModel, name: LOBBY.you, flyFork: flyForkAside };

/** The first landing in this page: the person flies at once. */
export function flyAlone(): Promise<Problem> {
  const named = choiceInAddress(location.search);
  return fly(firstLanding(named?.ok === true ? named.value.seed : FIRST_SEED));
}

/** A landing of the person's own choice in this page. */
export async function flyChosen(choice: PlanChoice, seat: Seat): Promise<Problem> {
  const plan = layOut(choice);
  return plan.ok ? fly(plan.value, seat) : plan.error.map(formatProblem).join('; ');
}

/** A drill in this page, from one seat: its brief first, and its event list runs by itself. */
export async function flyDrill(choice: PlanChoice, seat: Seat): Promise<Problem> {
  const plan = (await loadShelf()).layPlan(choice);
  return plan.ok ? fly(plan.value, seat, 'brief first') : plan.error.map(formatProblem).join('; ');
}

/** What there is of drills is fetched by whoever plays one. */
function loadShelf() {
  return import('./drillShelf.ts');
}

/** From one seat; the others are left to stand-ins. */
async function fly(
  plan: TablePlan,
  seat: Seat = 'flying',
  begins: 'at once' | 'brief first' = 'at once',
): Promise<Problem> {
  const opened = openLocalTable({ ...ALONE, plan, keeper: createFlightKeeper() });
  if (!opened.ok) return opened.error.reason;
  const link = opened.value;
  await link.command({ kind: 'takeSeat', seat });
  if (begins === 'at once') await link.command({ kind: 'begin' });
  return lay(link, link);
}

/** The flight in this page before it was reloaded, on hold where it stopped; nothing when there was none. */
export async function goOnFlying(): Promise<Problem> {
  const flown = readKeptFlight();
  if (flown === undefined) return undefined;
  const { choice, drill } = flown.header.plan;
  const plan = choice.drill === undefined ? layOut(choice) : (await loadShelf()).layPlan(choice, drill);
  if (!plan.ok) return undefined;
  const keeper = createFlightKeeper();
  const opened = openLocalTable({ ...ALONE, plan: plan.value, flown, keeper });
  return opened.ok ? lay(opened.value, opened.value) : opened.error.reason;
}

/** The first landing, with something that fails: what, and when, is new each time. */
function troubledChoice(): PlanChoice {
  return { ...firstChoice(drawSeed()), sensorTrouble: 'seeded' };
}

function drawSeed(): number {
  return 1 + Math.floor(Math.random() * 9999);
}

/** The same page with another address; no way back is added. */
function goTo(search: string): void {
  history.replaceState(history.state, '', location.pathname + search);
}

/** What becomes of a landing that was chosen: it is flown alone, or a table is opened for a crew. */
interface ChosenActions {
  readonly fly: (choice: PlanChoice, seat: Seat) => void;
  readonly open: (choice: PlanChoice) => void;
}

/** Lays out what can be chosen, as the address has it, and does with it what the person asks for. */
export function chooseLanding(does: ChosenActions, isTroubled = false): Problem {
  const named = choiceInAddress(location.search);
  const usual = isTroubled ? troubledChoice() : firstChoice(FIRST_SEED);
  const choice = named?.ok === true ? named.value : usual;
  const problem = named?.ok === false ? CHOICE.wrongLink(named.error.map(formatProblem).join('; ')) : '';
  // where an address led here: the sheet gives the focus back to what had it
  if (document.activeElement === document.body) document.getElementById('choose')?.focus();
  openChoiceSheet(
    choice,
    {
      ways: [
        { words: CHOICE.fly, act: does.fly },
        { words: CHOICE.open, act: does.open },
      ],
      asksSeat: true,
      changed: (changed) => goTo(addressOf(changed, location.search)),
      dismissed: () => goTo(withoutChoice(location.search)),
      addressOf: (chosen) => new URL(location.pathname + addressOf(chosen), location.href).href,
    },
    problem,
  );
  return undefined;
}

/** Lays out the drills, and does with the chosen one what the person asks for. */
export async function chooseDrill(does: {
  readonly open: (choice: PlanChoice) => void;
  readonly alone: (choice: PlanChoice, seat: Seat) => void;
}): Promise<Problem> {
  const { openDrillChoice } = await import('./panels/drillChoice.ts');
  openDrillChoice(does);
  return undefined;
}

/** Pages in place of the start page, each fetched by whoever opens it: how it is laid, and which button of the start page has the focus after it. */
const PAGES = {
  logbook: { from: 'logbook', load: async () => (await import('./logbook/logbookPage.ts')).layLogbook },
  workbench: { from: 'workbench', load: async () => (await import('./workbench/workbenchPage.ts')).layWorkbench },
  hall: { from: 'hall', load: async () => (await import('./hall/hallPage.ts')).layHall },
  vote: { from: 'hall', load: async () => (await import('./hall/votePage.ts')).layVote },
  about: { from: 'about', load: async () => (await import('./trust/trustPage.ts')).layTrust },
  network: { from: 'open', load: async () => (await import('./panels/networkPage.ts')).layNetwork },
} as const;

/** Opens one of them; what its address says beside its name stays. */
export async function openPage(name: keyof typeof PAGES): Promise<Problem> {
  const { from, load } = PAGES[name];
  const { search, hash } = location;
  const code = name === 'vote' ? codeInAddress(name, location) : undefined;
  const end = new URLSearchParams(search).has(name) ? search + hash : `?${name}`;
  return layInPlace(await load(), code === undefined ? end : codeHash('vote', code), from);
}

/** A page of its own; left, the start page is there again, with the focus on the button `from`. */
function layInPlace(
  lay: (holder: HTMLElement, leave: () => void) => { end(): void },
  search: string,
  from: string,
): Problem {
  const start = document.getElementById('start');
  const holder = document.getElementById('desk');
  if (start === null || holder === null) throw new Error('The page has no start or no desk');
  const startTitle = document.title;
  const leave = () => {
    laid.end();
    holder.replaceChildren();
    document.title = startTitle;
    way.end();
    showStart(start, '', undefined);
    document.getElementById(from)?.focus();
  };
  start.hidden = true;
  const way = openWayBack(search, leave);
  const laid = lay(holder, leave);
  return undefined;
}

/** Opens this person's settings. */
export function showSettings(): Problem {
  openSettings();
  return undefined;
}

/** A table on the server, for a crew; for a landing of the opener's choice if there is one. */
export async function openTable(given: string, choice?: PlanChoice): Promise<Problem> {
  const opened = await openSharedTable({ name: ownName(given), choice });
  return opened.ok ? lay(opened.value) : opened.error.reason;
}

/** A table on the server for a drill, which the opener runs. */
export async function openDrill(given: string, choice: PlanChoice): Promise<Problem> {
  const opened = await openSharedTable({ name: ownName(given), choice, facilitates: true });
  return opened.ok ? lay(opened.value) : opened.error.reason;
}

/** What somebody joins a table as. */
export type JoinedAs = 'crew' | 'observer' | 'room screen';

/** The table with this code; the seat that this tab had there before a reload, if any. */
export async function joinTable(code: string, given: string, role: JoinedAs): Promise<Problem> {
  const resumed = await resumeSharedTable();
  if (resumed?.ok === true && sameCode(resumed.value.code, code)) return lay(resumed.value);
  if (resumed?.ok === true) resumed.value.leave();
  const joined = await joinSharedTable({ name: ownName(given), code, role });
  return joined.ok ? lay(joined.value) : joined.error.reason;
}

/** `alone`: the same table, where it runs in this page; it is written down when the page goes while it lies. */
async function lay(link: TableLink, alone?: LocalTable): Promise<Problem> {
  const view = await firstView(link);
  if (view === undefined) return link.closedBecause ?? STATUS.closed;
  const start = document.getElementById('start');
  const holder = document.getElementById('desk');
  const startTitle = document.title;
  if (start === null || holder === null) throw new Error('The page has no start or no desk');
  start.hidden = true;
  const address = link.code === undefined ? '' : codeHash('table', link.code);
  const keep = () => alone?.keep();
  let next: PlanChoice | undefined;
  const onLeave = (words = LEAVING.left(link.code)) => {
    removeEventListener('pagehide', keep);
    if (link.kind === 'local') forgetFlight();
    holder.replaceChildren();
    document.title = startTitle;
    if (next === undefined) {
      way.end();
      showStart(start, words, link.code);
    } else {
      way.handOn();
      goTo(addressOf(next, location.search));
      void flyChosen(next, link.view?.you.seat ?? 'flying');
    }
  };
  const { choice } = view.plan;
  const another = () => {
    next = { ...choice, seed: drawSeed() };
    table.leave();
  };
  const canBeOther = alone !== undefined && choice.sensorTrouble !== 'none';
  const layOut = (shown: TableView) => {
    document.title = TABLE.title(shown.plan.title);
    const actions = { onLeave, onOtherPlan: (changed: TableView) => (table = layOut(changed)) };
    const page = pageFor(shown.you.role);
    if (page === 'control') return layControlPage(holder, link, shown, actions);
    if (page === 'room') return layRoomPage(holder, link, shown, actions);
    return layTable(holder, link, shown, actions, canBeOther ? another : undefined);
  };
  let table = layOut(view);
  addEventListener('pagehide', keep);
  const way = openWayBack(address, () => {
    if (table.mayLeave()) table.leave();
    else way.stay();
  });
  return undefined;
}

/** Back on the start page, with what happened in words; the code of a shared table stands in its field. */
function showStart(start: HTMLElement, words: string, code: string | undefined): void {
  start.hidden = false;
  const status = document.getElementById('start-status');
  if (status !== null) status.textContent = words;
  const field = document.getElementById('code');
  if (field instanceof HTMLInputElement && code !== undefined) field.value = code;
  document.getElementById('fly')?.focus();
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
